/** What prices invite beyond their figures, from the cable that is cut to what a discount leaves. */
import type { Earlier, Slip } from "../exercise";

export interface Pricing {
  readonly runs: readonly number[];
  readonly slack: number;
  /** Percent. */
  readonly waste: number;
  readonly reel: number;
  readonly reelPrice: number;
  readonly others: number;
  /** Percent of the price. */
  readonly margin: number;
  readonly tax: number;
  readonly discount: number;
}

/** @param cut the cable with slack on each run and waste on all of it */
export const cutSlips = <N extends Pricing>(cut: (n: N) => number): Slip<N>[] => [
  {
    name: "slack added once instead of on each run",
    wrong: (n) => cut({ ...n, slack: n.slack / n.runs.length }),
  },
  { name: "slack and waste left out", wrong: ({ runs }) => runs.reduce((all, run) => all + run, 0) },
  { name: "last run left out", wrong: (n) => cut({ ...n, runs: n.runs.slice(0, -1) }) },
  {
    name: "last run left out",
    wrong: (n) => cut({ ...n, runs: [...n.runs.slice(0, -1), 0] }),
    seldom: true,
  },
  {
    name: "waste taken as metres",
    wrong: (n) => cut({ ...n, waste: 0 }) + n.waste,
    seldom: true,
  },
  {
    name: "waste on the runs alone, not on the slack",
    wrong: (n) => cut({ ...n, slack: 0 }) + n.runs.length * n.slack,
    seldom: true,
  },
  {
    name: "waste added for each run",
    wrong: (n) => cut({ ...n, waste: n.runs.length * n.waste }),
    seldom: true,
  },
  {
    name: "slack between the runs only",
    wrong: (n) => cut({ ...n, slack: (n.slack * (n.runs.length - 1)) / n.runs.length }),
    seldom: true,
  },
  {
    name: "longest run taken for each",
    wrong: (n) => cut({ ...n, runs: n.runs.map(() => Math.max(...n.runs)) }),
    seldom: true,
  },
];

export const reelPriceSlips: readonly Slip<Pricing>[] = [
  {
    name: "part of a reel priced instead of whole reels",
    wrong: ({ reelPrice, others, reel }, { cable }) => (cable! / reel) * reelPrice + others,
  },
  { name: "only one reel priced", wrong: ({ reelPrice, others }) => reelPrice + others },
  {
    name: "one reel too few priced",
    wrong: ({ reelPrice, others }, { reels }) => (reels! - 1) * reelPrice + others,
  },
  { name: "reels left out", wrong: ({ others }) => others },
  {
    name: "metres multiplied by the price of a reel",
    wrong: ({ reelPrice, others }, { cable }) => cable! * reelPrice + others,
    seldom: true,
  },
  {
    name: "other parts taken for each reel",
    wrong: ({ reelPrice, others }, { reels }) => reels! * (reelPrice + others),
    seldom: true,
  },
  {
    name: "a reel priced for each run",
    wrong: ({ reelPrice, others, runs }) => runs.length * reelPrice + others,
    seldom: true,
  },
  {
    name: "reels and price added instead of multiplied",
    wrong: ({ reelPrice, others }, { reels }) => reels! + reelPrice + others,
    seldom: true,
  },
  {
    name: "divided by the reels instead of multiplied",
    wrong: ({ reelPrice, others }, { reels }) => reelPrice / reels! + others,
    seldom: true,
  },
  {
    name: "price of a reel taken for that of a metre",
    wrong: ({ reelPrice, others, reel }, { reels }) => reels! * reel * reelPrice + others,
    seldom: true,
  },
];

export const priceSlips: readonly Slip<Pricing>[] = [
  { name: "labour left out", wrong: ({ margin }, { materials }) => materials! / (1 - margin / 100) },
  { name: "materials left out", wrong: ({ margin }, { labour }) => labour! / (1 - margin / 100) },
  {
    name: "margin taken as money",
    wrong: ({ margin }, { materials, labour }) => materials! + labour! + margin,
    seldom: true,
  },
  {
    name: "margin on the materials only",
    wrong: ({ margin }, { materials, labour }) => materials! / (1 - margin / 100) + labour!,
    seldom: true,
  },
  {
    name: "margin on the labour only",
    wrong: ({ margin }, { materials, labour }) => materials! + labour! / (1 - margin / 100),
    seldom: true,
  },
  {
    name: "labour subtracted instead of added",
    wrong: ({ margin }, { materials, labour }) => (materials! - labour!) / (1 - margin / 100),
    seldom: true,
  },
  {
    name: "tax reckoned in already",
    wrong: ({ margin, tax }, { materials, labour }) =>
      ((materials! + labour!) / (1 - margin / 100)) * (1 + tax / 100),
    seldom: true,
  },
];

export const taxSlips: readonly Slip<Pricing>[] = [
  {
    name: "tax on the cost instead of the price",
    wrong: ({ tax }, { price, materials, labour }) => price! + ((materials! + labour!) * tax) / 100,
  },
  {
    name: "tax on the cost, margin left out",
    wrong: ({ tax }, { materials, labour }) => (materials! + labour!) * (1 + tax / 100),
  },
  { name: "tax taken as money", wrong: ({ tax }, { price }) => price! + tax, seldom: true },
  {
    name: "tax on the profit only",
    wrong: ({ tax }, { price, materials, labour }) => price! + ((price! - materials! - labour!) * tax) / 100,
    seldom: true,
  },
  {
    name: "tax on the materials only",
    wrong: ({ tax }, { price, materials }) => price! + (materials! * tax) / 100,
    seldom: true,
  },
  {
    name: "tax on the labour only",
    wrong: ({ tax }, { price, labour }) => price! + (labour! * tax) / 100,
    seldom: true,
  },
  {
    name: "margin and tax added up in one",
    wrong: ({ tax, margin }, { materials, labour }) => (materials! + labour!) * (1 + (margin + tax) / 100),
    seldom: true,
  },
];

type Left = (cost: number, price: number, numbers: Pricing, labour: number) => number;
const marginOf = (cost: number, price: number): number => (100 * (price - cost)) / price;
const lowered = (price: number, { discount }: Pricing): number => price * (1 - discount / 100);

/** Margins left after a discount that come of another reckoning. */
const LEFT: readonly (readonly [string, Left, boolean?])[] = [
  ["discount subtracted from the margin", (_, __, { margin, discount }) => margin - discount],
  ["share of the cost instead of the price", (c, p, n) => (100 * (lowered(p, n) - c)) / c],
  ["share of the old price", (c, p, n) => (100 * (lowered(p, n) - c)) / p],
  ["discount added to the margin", (_, __, { margin, discount }) => margin + discount, true],
  ["discount taken off the margin", (_, __, { margin, discount }) => margin * (1 - discount / 100), true],
  ["profit in money given", (c, p, n) => lowered(p, n) - c, true],
  ["discount taken off the cost as well", (c, p, n) => marginOf(lowered(c, n), lowered(p, n)), true],
  ["discount taken off the cost only", (c, p, n) => marginOf(lowered(c, n), p), true],
  ["price with tax taken", (c, p, n) => marginOf(c, lowered(p, n) * (1 + n.tax / 100)), true],
  ["labour left out of the cost", (c, p, n, labour) => marginOf(c - labour, lowered(p, n)), true],
  ["discount taken as money", (c, p, n) => marginOf(c, p - n.discount), true],
  ["share of the cost given", (c, p, n) => 100 - marginOf(c, lowered(p, n)), true],
];

export const discountSlips: readonly Slip<Pricing>[] = LEFT.map(([name, wrong, seldom = false]) => ({
  name,
  wrong: (n: Pricing, { materials, labour, price }: Earlier) =>
    wrong(materials! + labour!, price!, n, labour!),
  seldom,
}));
