/**
 * The price that leaves a margin on a cost.
 *
 * Source: price = cost ÷ (1 − margin); definition of the margin as a share of
 *   the price.
 * Accuracy: exact to double precision; not rounded.
 * Range: cost 0 or more, margin from 0 to less than 1.
 */
import { faults, type Fault } from "../faults";

/**
 * @param cost in the currency's main unit
 * @param margin share of the price, 0.2 for 20 %
 * @returns price in the unit of the cost
 */
export const sellPrice = (cost: number, margin: number): number | Fault =>
  margin < 1 ? cost / (1 - margin) : faults.marginTooHigh(margin);
