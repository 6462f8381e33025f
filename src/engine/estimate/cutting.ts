/** How the length of a run becomes the length that is cut for it: common practice, no source. */

/** The length that a run is thought to have, or the longest that it may have. */
export const CUT_AT = ["likely", "longest"] as const;

export interface Cutting {
  readonly at: (typeof CUT_AT)[number];
  /** Share by which a run may turn out longer, where nothing is said of its longest. */
  readonly tolerance: number;
}

/**
 * @param length of the run
 * @param longest that it may have, where that is known
 * @returns the length that is cut, before slack and waste; never less than the run
 */
export const lengthTaken = (length: number, longest: number | null, { at, tolerance }: Cutting): number =>
  at === "likely" ? length : Math.max(length, longest ?? length * (1 + tolerance));

/** 0.1 of 30 is 3.0000000000000004 in binary: no fourth run is cut for that. */
const DECIMALS = 1e9;

/**
 * @param runs how many there are
 * @param share of them that is wanted once more
 * @returns how many spare ones; at least one of any, where a share is given
 */
export const spareCount = (runs: number, share: number): number =>
  Math.ceil(Math.round(runs * share * DECIMALS) / DECIMALS);
