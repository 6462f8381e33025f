/**
 * The margin on the price that a markup on cost leaves.
 *
 * Source: price = cost·(1 + m) = cost/(1 − g), so g = m/(1 + m); definitions.
 * Accuracy: exact to double precision.
 * Range: markup 0 or more.
 */

/**
 * @param markup share of the cost
 * @returns margin, a share of the price
 */
export const marginOfMarkup = (markup: number): number => markup / (1 + markup);
