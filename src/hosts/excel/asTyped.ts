import type { BookValue } from "../../workbooks/book";

/** Text that no program takes for a number, a date, a formula or a truth value: letters and no digit. */
const PLAIN_TEXT = /^\p{L}[^\d]*$/u;
const TRUTH = /^(true|false)$/i;

/** A value as a person would type it: an apostrophe keeps text as text. */
export function asTyped(value: BookValue): BookValue {
  if (typeof value !== "string") return value;
  return PLAIN_TEXT.test(value) && !TRUTH.test(value) ? value : `'${value}`;
}
