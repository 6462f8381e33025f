/**
 * The markup on cost that gives a margin on the price.
 *
 * Source: price = cost·(1 + m) = cost/(1 − g), so m = g/(1 − g); definitions.
 * Accuracy: the double nearest to the exact share, see exact.ts.
 * Range: margin from 0 to less than 1.
 */
import { faults, type Fault } from "../faults";
import { Exact } from "./exact";

/**
 * @param margin share of the price
 * @returns markup, a share of the cost
 */
export const markupOfMargin = (margin: number): number | Fault =>
  margin < 1
    ? Exact.of(margin)
        .dividedBy(Exact.of(1).minus(Exact.of(margin)))
        .toNumber()
    : faults.marginTooHigh(margin);
