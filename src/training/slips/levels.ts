/** What a level behind losses invites, beyond its single parts. */
import type { Earlier, Slip } from "../exercise";

type Of<N, T> = (numbers: N, earlier: Earlier) => T;

const sum = (of: readonly number[]): number => of.reduce((total, one) => total + one, 0);
const power = (dB: number): number => 10 ** (dB / 10);
/** Decibels added up as if they were powers. */
export const asPowers = (decibels: readonly number[]): number => 10 * Math.log10(sum(decibels.map(power)));
const product = (of: readonly number[]): number => of.reduce((total, one) => total * one, 1);

/** dBmV of 75 ohm below dBµV. */
const DBMV = 60;

/** @param losses at least two, in dB; the level in dBµV */
export const levelSlips = <N>(level: Of<N, number>, losses: Of<N, readonly number[]>): Slip<N>[] => {
  const slip = (
    name: string,
    wrong: (level: number, losses: readonly number[]) => number,
    seldom = true,
  ): Slip<N> => ({ name, wrong: (n, e) => wrong(level(n, e), losses(n, e)), seldom });
  return [
    slip("losses added instead of subtracted", (l, of) => l + sum(of), false),
    slip("losses multiplied instead of added", (l, of) => l - product(of), false),
    slip("losses added as powers", (l, of) => l - asPowers(of), false),
    slip("level and losses subtracted as powers", (l, of) => 10 * Math.log10(power(l) - power(sum(of)))),
    slip("only the losses given", (_, of) => sum(of)),
    slip("losses taken as percent of the level", (l, of) => l * (1 - sum(of) / 100)),
    slip("level divided by the losses", (l, of) => l / sum(of)),
    slip("given in dBmV", (l, of) => l - sum(of) - DBMV),
  ];
};

/** Of two losses one behind another. */
export const lossSumSlips = <N>(losses: Of<N, readonly number[]>): Slip<N>[] => {
  const slip = (name: string, wrong: (losses: readonly number[]) => number, seldom = false): Slip<N> => ({
    name,
    wrong: (n, e) => wrong(losses(n, e)),
    seldom,
  });
  return [
    slip("decibels added as powers", asPowers),
    slip("decibels multiplied instead of added", product),
    slip("mean taken instead of the sum", (of) => sum(of) / of.length, true),
  ];
};

/** Of what one loss is more than another. */
export const differenceSlips = <N>(more: Of<N, number>, less: Of<N, number>): Slip<N>[] => {
  const slip = (name: string, wrong: (more: number, less: number) => number, seldom = true): Slip<N> => ({
    name,
    wrong: (n, e) => wrong(more(n, e), less(n, e)),
    seldom,
  });
  return [
    slip("added instead of subtracted", (a, b) => a + b, false),
    slip("decibels subtracted as powers", (a, b) => 10 * Math.log10(power(a) - power(b)), false),
    slip("decibels added as powers", (a, b) => asPowers([a, b])),
    slip("multiplied instead of subtracted", (a, b) => a * b),
    slip("divided instead of subtracted", (a, b) => a / b),
    slip("given in percent of the smaller one", (a, b) => (100 * (a - b)) / b),
    slip("mean of the two given", (a, b) => (a + b) / 2),
  ];
};
