/**
 * Loss from a tap's input to its output, past the branch that it feeds.
 *
 * L = −10·log10(1 − 10^(−T/10)) + excess, with T the loss to the branch.
 *
 * Source: what the branch takes is missing on the way through.
 * Accuracy: exact for the ideal part; real taps lose 0.5 to 1.5 dB more (from
 *   memory), which is the maker's figure to give.
 * Range: tap values above 0 dB.
 */
import type { Decibels } from "../quantity";

/**
 * @param tap dB from input to branch
 * @param excess dB beyond the ideal
 * @returns dB from input to output, positive
 */
export const tapThroughLoss = (tap: Decibels, excess: Decibels): Decibels =>
  // log1p and not log: a tap of 60 dB takes a millionth, which 1 − x would round.
  (-10 * Math.log1p(-(10 ** (-tap / 10)))) / Math.LN10 + excess;
