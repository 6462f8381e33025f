import type { Solved } from "./solved";

const counted = new WeakMap<Solved, Int32Array>();

/** @returns by point of the tree how many rows are on its ports */
export function portsUsed(solved: Solved): Int32Array {
  const before = counted.get(solved);
  if (before) return before;
  const { count, parent } = solved.found.tree;
  const used = new Int32Array(count);
  for (const above of parent) if (above >= 0) used[above]! += 1;
  counted.set(solved, used);
  return used;
}
