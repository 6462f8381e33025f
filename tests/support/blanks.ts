/**
 * A blank cell in a range as Excel's builds hand it to a function of an add-in:
 * null, an empty text, or, on older desktop builds, 0 (issue threads of
 * OfficeDev/office-js, #4702 and #5262).
 */
import type { Argument, Cell, Matrix } from "../../src/functions/core/cells";

export const BLANKS = [null, "", 0] as const;
export type Blank = (typeof BLANKS)[number];

/** @returns the argument with every blank of a range as that */
export const withBlanksAs = (blank: Blank, argument: Argument): Argument =>
  Array.isArray(argument)
    ? (argument as Matrix).map((row) => row.map((cell): Cell => (cell === null ? blank : cell)))
    : argument;
