/** What the volts lost in a run and the longest run invite beyond their figures. */
import { COPPER_PER_C } from "../../engine/power/constants";
import type { Slip } from "../exercise";

interface Run {
  readonly loop: number;
  readonly hot: number;
  readonly supply: number;
  readonly least: number;
  readonly milliamperes: number;
}

const amperesOf = (n: Run): number => n.milliamperes / 1000;
const inHeat = (n: Run): number => 1 + COPPER_PER_C * (n.hot - 20);

export const cableDropSlips: readonly Slip<Run>[] = [
  { name: "divided instead of multiplied", wrong: (n, { hotOhms }) => hotOhms! / amperesOf(n) },
  {
    name: "amperes divided by ohms",
    wrong: (n, { hotOhms }) => amperesOf(n) / hotOhms!,
    seldom: true,
  },
  {
    name: "current squared, watts for volts",
    wrong: (n, { hotOhms }) => amperesOf(n) ** 2 * hotOhms!,
    seldom: true,
  },
  {
    name: "added instead of multiplied",
    wrong: (n, { hotOhms }) => amperesOf(n) + hotOhms!,
    seldom: true,
  },
  {
    name: "volts left given instead of volts lost",
    wrong: (n, { hotOhms }) => n.supply - amperesOf(n) * hotOhms!,
  },
  {
    name: "figure of 100 m taken for that of the run",
    wrong: (n) => amperesOf(n) * n.loop,
    seldom: true,
  },
  {
    name: "given in percent of the supply",
    wrong: (n, { hotOhms }) => ((amperesOf(n) * hotOhms!) / n.supply) * 100,
    seldom: true,
  },
  {
    name: "current reckoned from the supply's volts",
    wrong: (n, { hotOhms }) => n.supply / hotOhms!,
    seldom: true,
  },
];

/** @param longest in metres, on the hottest day */
export const longestRunSlips = <N extends Run>(longest: (n: N) => number): Slip<N>[] => [
  { name: "answer left in feet", wrong: (n) => longest(n) / 0.3048 },
  {
    name: "metres converted as if they were feet",
    wrong: (n) => longest(n) * 0.3048,
    seldom: true,
  },
  {
    name: "multiplied by the heat's factor instead of divided",
    wrong: (n) => longest(n) * inHeat(n) ** 2,
    seldom: true,
  },
  {
    name: "resistance of the run taken instead of that of 1 m",
    wrong: (n, { hotOhms }) => (n.supply - n.least) / (amperesOf(n) * hotOhms!),
    seldom: true,
  },
  {
    name: "resistance of the run taken instead of that of 1 m",
    wrong: (n, { ohms }) => (n.supply - n.least) / (amperesOf(n) * ohms! * inHeat(n)),
    seldom: true,
  },
  {
    name: "volts lost in 3 taken for those that may be lost",
    wrong: (n, { drop }) => (longest(n) * drop!) / (n.supply - n.least),
    seldom: true,
  },
  {
    name: "minimum volts taken for those that may be lost",
    wrong: (n) => (longest(n) * n.least) / (n.supply - n.least),
    seldom: true,
  },
  { name: "current left out", wrong: (n) => longest(n) * amperesOf(n) },
  {
    name: "multiplied by the current instead of divided",
    wrong: (n) => longest(n) * amperesOf(n) ** 2,
    seldom: true,
  },
];
