/**
 * The price that leaves a margin on a cost.
 *
 * Source: price = cost ÷ (1 − margin); definition of the margin as a share of
 *   the price.
 * Accuracy: the double nearest to the exact price, see exact.ts: 2.01 at a
 *   margin of =1/3 is 3.015. Not rounded.
 * Range: cost 0 or more, margin from 0 to less than 1.
 */
import { faults, type Fault } from "../faults";
import { Exact } from "./exact";

/**
 * @param cost in the currency's main unit
 * @param margin share of the price, 0.2 for 20 %
 * @returns price in the unit of the cost
 */
export const sellPrice = (cost: number, margin: number): number | Fault =>
  margin < 1
    ? Exact.of(cost)
        .dividedBy(Exact.of(1).minus(Exact.of(margin)))
        .toNumber()
    : faults.marginTooHigh(margin);
