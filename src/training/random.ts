/**
 * Random numbers that are the same on every machine: integer arithmetic only.
 *
 * Source: xoshiro128** 1.1, Blackman & Vigna, "Scrambled linear pseudorandom
 *   number generators" (2018), its state filled by SplitMix64 as its authors
 *   advise; both reference programs are in the public domain. Held to the
 *   reference programs' outputs in tests.
 */
import { fnv1a } from "../workbooks/fnv1a";

const WORDS = 0x1_0000_0000;

export interface Random {
  /** A whole number from 0 to `count` − 1, each as likely. */
  below(count: number): number;
  /** A whole number from `min` to `max`, both included. */
  whole(min: number, max: number): number;
  /** One of `min`, `min` + `step`, … up to `max`, as the nearest number to its decimal text. */
  stepped(min: number, max: number, step: number): number;
  pick<T>(of: readonly T[]): T;
}

/** The words of xoshiro128** from a state of four words that are not all 0. */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = state;
  return () => {
    const times5 = Math.imul(b, 5);
    const result = Math.imul((times5 << 7) | (times5 >>> 25), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = (d << 11) | (d >>> 21);
    return result;
  };
}

/** Four words of state from one 64-bit seed: two outputs of SplitMix64, low word first. */
export function splitMix(seed: bigint): [number, number, number, number] {
  let at = seed;
  const next = (): bigint => {
    at = BigInt.asUintN(64, at + 0x9e3779b97f4a7c15n);
    let mixed = at;
    mixed = BigInt.asUintN(64, (mixed ^ (mixed >> 30n)) * 0xbf58476d1ce4e5b9n);
    mixed = BigInt.asUintN(64, (mixed ^ (mixed >> 27n)) * 0x94d049bb133111ebn);
    return mixed ^ (mixed >> 31n);
  };
  const low = (word: bigint): number => Number(word & 0xffffffffn);
  const [first, second] = [next(), next()];
  return [low(first), low(first >> 32n), low(second), low(second >> 32n)];
}

/** @param text what the numbers belong to: the same text gives the same numbers */
export const randomFrom = (text: string): Random => randomAgain(text)();

/** @returns what begins the same numbers anew with each call */
export function randomAgain(text: string): () => Random {
  const state = splitMix(fnv1a(text));
  return () => randomOf(xoshiro128(state));
}

function randomOf(word: () => number): Random {
  const below = (count: number): number => {
    // The words beyond the last whole multiple would favour the small numbers.
    const fair = WORDS - (WORDS % count);
    let drawn = word();
    while (drawn >= fair) drawn = word();
    return drawn % count;
  };
  const whole = (min: number, max: number): number => min + below(max - min + 1);
  return {
    below,
    whole,
    stepped: (min, max, step) => {
      const decimals = decimalsOf(step);
      const scale = 10 ** decimals;
      const [from, by] = [Math.round(min * scale), Math.round(step * scale)];
      const steps = Math.floor((Math.round(max * scale) - from) / by);
      return Number(`${from + by * below(steps + 1)}e-${decimals}`);
    },
    pick: (of) => of[below(of.length)]!,
  };
}

const decimalsOf = (step: number): number => (String(step).split(".")[1] ?? "").length;
