/** What the bands left over invite: head units·bands of each − tuners. */
import type { Slip } from "../exercise";

interface Capacity {
  readonly capacity: number;
}

export const freeBandSlips: readonly Slip<Capacity>[] = [
  {
    name: "bands in use on the last head unit given instead of those left",
    wrong: ({ capacity }, { tuners, units }) => tuners! - (units! - 1) * capacity,
  },
  { name: "bands of all head units given", wrong: (n, { units }) => units! * n.capacity },
  ...(
    [
      ["one head unit too few", -1],
      ["one head unit too many", 1],
    ] as const
  ).map(([name, more]): Slip<Capacity> => ({
    name,
    wrong: (n, { tuners, units }) => (units! + more) * n.capacity - tuners!,
    seldom: true,
  })),
  { name: "one head unit taken", wrong: (n, { tuners }) => n.capacity - tuners!, seldom: true },
  {
    name: "head units left out, tuners less what one serves",
    wrong: (n, { tuners }) => tuners! - n.capacity,
    seldom: true,
  },
  {
    name: "head units less the divided tuners",
    wrong: (n, { tuners, units }) => units! - tuners! / n.capacity,
    seldom: true,
  },
  {
    name: "added instead of multiplied",
    wrong: (n, { tuners, units }) => units! + n.capacity - tuners!,
    seldom: true,
  },
  {
    name: "a full last head unit taken for a free one",
    wrong: (n, { tuners, units }) => (units! * n.capacity === tuners! ? n.capacity : undefined),
    seldom: true,
  },
  {
    name: "tuners less bands",
    wrong: (n, { tuners, units }) => tuners! - units! * n.capacity,
    seldom: true,
  },
];
