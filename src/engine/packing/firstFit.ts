/**
 * First fit: each item goes into the first bin with room for it.
 *
 * Source: Johnson et al., SIAM J. Computing 3 (1974) 299-325, where the items
 *   sorted from large to small (first-fit decreasing) are studied too; the
 *   tournament tree that finds the bin is the usual one.
 * Accuracy: exact for integer sizes. Work: n log n.
 * Range: sizes above 0 and at most the capacity.
 */

/**
 * @param sizes the items in the order in which they are placed
 * @param capacity what one bin holds, in the unit of the sizes
 * @returns for each item the number of its bin, from 0 in the order of opening
 */
export function firstFit(sizes: readonly number[], capacity: number): number[] {
  let leaves = 1;
  while (leaves < sizes.length) leaves *= 2;
  // Node n holds the most room of any bin below it; its children are 2n and 2n + 1.
  const room = new Float64Array(2 * leaves).fill(capacity);
  return sizes.map((size) => {
    let node = 1;
    while (node < leaves) {
      node *= 2;
      if (room[node]! < size) node += 1;
    }
    const bin = node - leaves;
    room[node] = room[node]! - size;
    for (node >>= 1; node >= 1; node >>= 1) {
      room[node] = Math.max(room[2 * node]!, room[2 * node + 1]!);
    }
    return bin;
  });
}
