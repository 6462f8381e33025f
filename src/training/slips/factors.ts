/** What the parts of a product invite. */
import type { Family } from "../exercise";

/** A number by which something is multiplied. */
export const factor: Family = (value, what) => [
  { name: `${what} left out`, as: 1, seldom: true },
  { name: `divided by the ${what} instead of multiplied`, as: 1 / value, seldom: true },
  { name: `${what} squared`, as: value * value, seldom: true },
];

/** A current in milliamperes. */
export const milliamperes: Family = (value) => [
  { name: "milliamperes taken for amperes", as: 1000 * value },
  { name: "milliamperes divided by 100", as: 10 * value, seldom: true },
];

/** A current in amperes. */
export const amperes: Family = (value) => [{ name: "amperes taken for milliamperes", as: value / 1000 }];

/** A frequency in megahertz. */
export const megahertz: Family = (value) => [
  { name: "GHz taken for MHz", as: value / 1000 },
  { name: "Hz taken for MHz", as: 1e6 * value, seldom: true },
];

/** A power in watts. */
export const watts: Family = (value) => [
  { name: "milliwatts taken for watts", as: 1000 * value, seldom: true },
];

/** A loop resistance, for 100 m or of a run. */
export const loop: Family = (value) => [
  { name: "one way taken for the loop", as: value / 2 },
  { name: "there and back counted twice", as: 2 * value },
];

/** A figure for 100 m. */
export const perHundred: Family = (value) => [
  { name: "not divided by 100", as: 100 * value },
  { name: "divided by 1000 instead of 100", as: value / 10, seldom: true },
];
