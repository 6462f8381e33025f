/** Formulas that every list of the distribution has. */
import { chain, f, text, type Formula, type Named } from "../../formula/build";
import { rooms } from "./names/rooms";
import { site } from "./names/site";

/** Words of rows that do not pass, beside the usual ones. */
export const ALERTS = ["bad", "too many", "left open", "passes power", "unused"] as const;

/** What stands in a check's column where nothing is wrong. */
const GOOD = ["ok", "not judged", ""] as const;

const isGood = (check: Named): Formula =>
  f`IFERROR(${chain(
    "+",
    GOOD.map((word) => f`(${check}=${text(word)})`),
  )}>0,FALSE)`;

/**
 * @param row whether the row could be worked out; where nothing is said of it, it could not
 * @param checks the others, as they count
 * @returns the word of the first check that a row does not pass, or ok; blank in a blank row
 */
export const verdictOf = (name: Named, row: Named, checks: readonly Named[]): Formula =>
  f`IF(${name}="","",IF(IFERROR(${row}="",FALSE),"bad",${[row, ...checks].reduceRight<Formula>(
    (others, check) => f`IF(${isGood(check)},${others},${check})`,
    text("ok"),
  )}))`;

/**
 * @param absent a formula, true where there is no cable
 * @param own the column of the row's own cable; the usual one where it is blank
 */
export const cableUsed = (absent: Formula, own: Named): Formula =>
  f`IF(${absent},"",IF(${own}="",IF(${site.usual_cable}="","",${site.usual_cable}),${own}))`;

/** An outlet whose row is bad has no level. */
export const ofALevel = (formula: Formula): Formula => f`IF(${rooms.level.low_hot}="","",${formula})`;

/** As (a + b - |a - b|) / 2: an error in a condition would spoil the whole column. */
export const lesser = (one: Formula | Named, other: Formula | Named): Formula =>
  f`(${one}+${other}-ABS(${one}-${other}))/2`;
