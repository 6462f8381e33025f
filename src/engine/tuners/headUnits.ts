/**
 * The least number of head units for a number of tuners.
 *
 * Source: one tuner takes one user band; at most 32 bands on one output
 *   (EN 50607:2015, scope), 8 for the basic kind (EN 50494).
 * Accuracy: exact. It splits tuners at will; where rooms may not be split,
 *   `allot` can need more.
 * Range: whole numbers, capacity 1 to 32.
 */

/**
 * @param tuners number of tuners
 * @param capacity tuners that one head unit serves
 * @returns number of head units
 */
export const headUnits = (tuners: number, capacity: number): number => Math.ceil(tuners / capacity);
