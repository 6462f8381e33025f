/** What head units have of the signal, each gathered in one pass. */
import { LEAD } from "../../engine/distribution/tree";
import type { Isolation } from "../../engine/distribution/isolation";
import { perSolved } from "./perSolved";

/** By head unit: the point at the end of its own cable, or its first output where it has none. */
export const leadsOfHeads = perSolved(({ found: { tree } }) => {
  const ends = tree.firstOutput.slice();
  tree.kind.forEach((kind, point) => {
    if (kind === LEAD) ends[tree.row[point]!] = point;
  });
  return ends;
});

/** By head unit: the two outlets of one of its outputs that are least apart. */
export const leastApart = perSolved(({ found: { tree, isolation } }) => {
  const least = new Map<number, Isolation>();
  for (const one of isolation) {
    const head = tree.row[one.output]!;
    if (one.decibels < (least.get(head)?.decibels ?? Infinity)) least.set(head, one);
  }
  return least;
});
