/** What the ways of a splitter invite: 10·log10(N). */
import type { Family } from "../exercise";

export const ways: Family = (count) => {
  const decibels = 10 * Math.log10(count);
  // As the count of ways that would give these decibels.
  const as = (name: string, dB: number, seldom = false) => ({ name, as: 10 ** (dB / 10), seldom });
  return [
    as("20·log10 for 10·log10", 2 * decibels),
    as("natural logarithm for log10", 10 * Math.log(count)),
    as("10 before the logarithm left out", decibels / 10),
    as("logarithm left out", 10 * count),
    as("logarithm left out", count, true),
    as("3 dB for each way", 3 * count, true),
    as("logarithm to the base 2", 10 * Math.log2(count), true),
    as("share of one way taken, a minus before the logarithm", -decibels, true),
    as("only the loss beyond the ideal taken", 0, true),
    { name: "one way too few", as: count - 1, seldom: true },
  ];
};
