/**
 * Rain attenuation of a slant path that is exceeded for a small part of an
 * average year.
 *
 * Source, accuracy: as printedRainFade.ts.
 * Range: 0.001 to 5 % of the year, up to 55 GHz, elevation from 5°. Where the
 *   fade is large, at low latitudes above all, the scaling to rarer parts of the
 *   year turns and gives less fade for a rarer case, which cannot be: refused
 *   from there on, and with it one of ITU Study Group 3's examples: 29 GHz at
 *   3° north, 96.675 dB at 0.001 %, where 0.0013 % has more already.
 */
import { faults, type Fault } from "../faults";
import type { Decibels } from "../quantity";
import { printedRainFade, type RainPath } from "./printedRainFade";

const LEAST_PERCENT = 0.001;
const MOST_PERCENT = 5;

/** @returns dB exceeded for the percentage of the year; 0 without rain or above the rain; a fault for too rare a part */
export function rainFade(path: RainPath): Decibels | Fault {
  const { decibels, turned } = printedRainFade(path);
  return turned ? faults.rainTooRare(path.percent, rarest(path)) : decibels;
}

/** The rarest part of the year that the method reaches, by halving, rounded up to two digits: the curve turns once. */
function rarest(path: RainPath): number {
  let [low, high] = [Math.log(LEAST_PERCENT), Math.log(MOST_PERCENT)];
  for (let halving = 0; halving < 40; halving++) {
    const middle = (low + high) / 2;
    if (printedRainFade({ ...path, percent: Math.exp(middle) }).turned) low = middle;
    else high = middle;
  }
  const digit = 10 ** (Math.floor(high / Math.LN10) - 1);
  return Number((Math.ceil(Math.exp(high) / digit) * digit).toPrecision(2));
}
