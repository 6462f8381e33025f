/**
 * Loss of splitters one behind another, from the first input to the last output.
 *
 * L = Σ (10·log10(N) + excess); the order does not change it.
 *
 * Source and accuracy: see {@link splitterLoss}. Reflections between the parts
 *   ripple around this sum by 20·log10(1 + |ρ1·ρ2|), which is left out.
 */
import { faults, type Fault } from "../faults";
import type { Decibels } from "../quantity";
import { splitterLoss } from "./splitterLoss";

/**
 * @param ways of each splitter; `null` where the row is blank
 * @param excess dB of each splitter; `null` counts as 0
 * @returns dB, positive; a fault when an entry has an excess but no ways
 */
export function cascadeLoss(
  ways: readonly (number | null)[],
  excess: readonly (Decibels | null)[],
): Decibels | Fault {
  let sum = 0;
  for (const [row, count] of ways.entries()) {
    const extra = excess[row] ?? null;
    if (count !== null) sum += splitterLoss(count, extra ?? 0);
    else if (extra !== null) return faults.waysMissing(row + 1);
  }
  return sum;
}
