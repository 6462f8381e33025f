/**
 * The markup on cost that gives a margin on the price.
 *
 * Source: price = cost·(1 + m) = cost/(1 − g), so m = g/(1 − g); definitions.
 * Accuracy: exact to double precision.
 * Range: margin from 0 to less than 1.
 */
import { faults, type Fault } from "../faults";

/**
 * @param margin share of the price
 * @returns markup, a share of the cost
 */
export const markupOfMargin = (margin: number): number | Fault =>
  margin < 1 ? margin / (1 - margin) : faults.marginTooHigh(margin);
