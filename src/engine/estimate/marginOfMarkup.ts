/**
 * The margin on the price that a markup on cost leaves.
 *
 * Source: price = cost·(1 + m) = cost/(1 − g), so g = m/(1 + m); definitions.
 * Accuracy: the double nearest to the exact share, see exact.ts.
 * Range: markup 0 or more.
 */
import { Exact } from "./exact";

/**
 * @param markup share of the cost
 * @returns margin, a share of the price
 */
export const marginOfMarkup = (markup: number): number =>
  Exact.of(markup)
    .dividedBy(Exact.of(1).plus(Exact.of(markup)))
    .toNumber();
