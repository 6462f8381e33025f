/**
 * Mean and deviation of a quantity from its low, likely and high estimate.
 *
 * Source: Malcolm, Roseboom, Clark & Fazar, Operations Research 7 (1959)
 *   646-669, the three estimates of PERT (from memory):
 *   mean = (low + 4·likely + high)/6, deviation = (high − low)/6.
 * Accuracy: an approximation to a beta distribution; low and high are taken as
 *   values that are passed only now and then, not as the worst imaginable.
 * Range: low ≤ likely ≤ high.
 */
import { faults, type Fault } from "../faults";

export interface ThreePoint {
  readonly mean: number;
  readonly deviation: number;
}

/**
 * @param low a good day's figure, in any unit
 * @param likely the figure to expect, in the same unit
 * @param high a bad day's figure, in the same unit
 * @returns mean and standard deviation in that unit
 */
export function threePoint(low: number, likely: number, high: number): ThreePoint | Fault {
  if (!(low <= likely && likely <= high)) return faults.notRising(low, likely, high);
  return { mean: (low + 4 * likely + high) / 6, deviation: (high - low) / 6 };
}
