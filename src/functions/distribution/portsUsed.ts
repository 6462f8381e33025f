import { perSolved } from "./perSolved";

/** By point of the tree how many rows are on its ports. */
export const portsUsed = perSolved(({ found: { tree } }) => {
  const used = new Int32Array(tree.count);
  for (const above of tree.parent) if (above >= 0) used[above]! += 1;
  return used;
});
