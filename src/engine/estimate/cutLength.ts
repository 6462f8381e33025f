/** Common practice, no source: a run is cut with its slack, and waste is a share of both. */

/**
 * @param length of the run; slack in the same unit
 * @param waste share added to the run and its slack, from 0 to 1
 * @returns the length that is cut from a reel, in the unit of the run
 */
export const cutLength = (length: number, slack: number, waste: number): number =>
  (length + slack) * (1 + waste);
