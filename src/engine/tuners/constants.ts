/** Limits and counts of single-cable distribution. */

/** User bands on one output of a head unit: N ≤ 32 (EN 50607:2015, scope). */
export const MOST_USER_BANDS = 32;
/** The same for a head unit of the basic kind (EN 50494; introduction of CLC/TS 50607). */
export const MOST_USER_BANDS_BASIC = 8;

/** Tuners by kind of receiver; one tuner takes one user band (EN 50494). */
export const TUNERS_BY_KIND: ReadonlyMap<string, number> = new Map([
  ["receiver", 1],
  // Common practice, no source: a recorder of two tuners counts as two.
  ["recorder, 2 tuners", 2],
]);
