/**
 * Loss from the top of a distribution to every one of its rows.
 *
 * The loss so far of a row is its own loss plus the loss so far of the row
 * that feeds it. Several columns (low and high end of the band, hot and cold)
 * are summed side by side, each by itself.
 *
 * Source: decibels along a path add.
 * Accuracy: exact; reflections between parts are left out.
 */
import { faults, isFault, type Fault } from "../faults";
import type { Decibels } from "../quantity";
import type { DistributionTree, Entry } from "./distributionTree";

/**
 * @param tree the rows in order from the top down
 * @param ids the name of each row, for sentences
 * @param ownLosses for each row, dB in each column; a gain is negative
 * @returns for each row, dB from the top in each column; `null` for a blank row
 */
export function treeLoss(
  tree: DistributionTree,
  ids: readonly Entry<string>[],
  ownLosses: readonly (readonly Entry<Decibels>[])[],
): (Decibels | null | Fault)[][] {
  const width = ownLosses[0]?.length ?? 0;
  const sums: (Decibels | null | Fault)[][] = tree.rows.map((row) =>
    Array.from({ length: width }, () => (isFault(row) ? row : null)),
  );
  for (let column = 0; column < width; column += 1) {
    /** For a row without a sum, the row whose own loss is at fault. */
    const culprit = new Map<number, string>();
    for (const row of tree.order) {
      const { parent } = tree.rows[row] as { parent: number };
      const id = ids[row] as string;
      const above = parent < 0 ? 0 : sums[parent]![column]!;
      const own = ownLosses[row]![column] ?? faults.missing(`Own loss of ${id}`, "a number in dB");
      if (isFault(above)) {
        const bad = culprit.get(parent)!;
        culprit.set(row, bad);
        sums[row]![column] = faults.treeBelowFault(id, bad);
      } else if (isFault(own)) {
        culprit.set(row, id);
        sums[row]![column] = own;
      } else {
        sums[row]![column] = above + own;
      }
    }
  }
  return sums;
}
