/** What the cost and the total of a small job invite beyond their figures. */
import type { Earlier, Slip } from "../exercise";

interface Job {
  readonly capacity: number;
  readonly unitPrice: number;
  readonly parts: number;
  readonly hours: number;
  readonly rate: number;
}

/** @param cost of so many head units with all else */
export const jobCostSlips = <N extends Job>(cost: (n: N, units: number) => number): Slip<N>[] => [
  { name: "one head unit priced only", wrong: (n) => cost(n, 1) },
  { name: "head units left out", wrong: (n) => cost(n, 0) },
  {
    name: "part of a head unit priced instead of whole ones",
    wrong: (n, { tuners }) => (tuners === undefined ? undefined : cost(n, tuners / n.capacity)),
  },
  { name: "one head unit too few priced", wrong: (n, { units }) => cost(n, units! - 1) },
  {
    name: "a head unit priced for each tuner",
    wrong: (n, { tuners }) => (tuners === undefined ? undefined : cost(n, tuners)),
    seldom: true,
  },
  {
    name: "hours added as money",
    wrong: (n, { units }) => units! * n.unitPrice + n.parts + n.hours,
    seldom: true,
  },
  { name: "one hour only", wrong: (n, { units }) => cost({ ...n, hours: 1 }, units!), seldom: true },
  {
    name: "hours taken for minutes",
    wrong: (n, { units }) => cost({ ...n, hours: n.hours / 60 }, units!),
    seldom: true,
  },
  {
    name: "other parts taken for each head unit",
    wrong: (n, { units }) => cost({ ...n, parts: n.parts * units! }, units!),
    seldom: true,
  },
  {
    name: "labour taken for each head unit",
    wrong: (n, { units }) => cost({ ...n, hours: n.hours * units! }, units!),
    seldom: true,
  },
  {
    name: "half an hour read as 50 minutes",
    wrong: (n, { units }) =>
      n.hours % 1 === 0 ? undefined : cost({ ...n, hours: Math.floor(n.hours) + 50 / 60 }, units!),
    seldom: true,
  },
];

/** Prices that come of another reckoning, in cost, margin and tax in percent. */
const TOTAL: readonly (readonly [string, (cost: number, margin: number, tax: number) => number, boolean?])[] =
  [
    ["tax on the cost instead of the price", (c, m, t) => c / (1 - m / 100) + (c * t) / 100],
    ["tax on the profit only", (c, m, t) => c / (1 - m / 100) + ((c / (1 - m / 100) - c) * t) / 100, true],
    ["margin taken as money", (c, m, t) => (c + m) * (1 + t / 100), true],
    ["tax taken as money", (c, m, t) => c / (1 - m / 100) + t, true],
    ["margin and tax added up in one", (c, m, t) => c * (1 + (m + t) / 100), true],
    ["margin and tax taken off together", (c, m, t) => c / (1 - (m + t) / 100), true],
    ["margin and tax exchanged", (c, m, t) => (c / (1 - t / 100)) * (1 + m / 100), true],
  ];

export const jobTotalSlips: readonly Slip<{ readonly margin: number; readonly tax: number }>[] = TOTAL.map(
  ([name, wrong, seldom = false]) => ({
    name,
    wrong: ({ margin, tax }: { readonly margin: number; readonly tax: number }, e: Earlier) =>
      wrong(e.cost!, margin, tax),
    seldom,
  }),
);
