/**
 * What is typed or pasted where nothing is asked for, beside the template or on a sheet of one's own: no rule says
 * whether a number is meant, so only how this workbook's people write tells.
 */
import { isoDate } from "../sheetDate";
import { asFigures } from "./plainText";
import { readDate } from "./readDate";
import { readNumeral } from "./readNumeral";
import { DATES } from "./typedKind";
import type { Writing } from "./writing";

const LIKE_A_DATE = /^\d{1,2} ?([-./]) ?\d{1,2} ?\1 ?(?:\d{4}|\d\d)\.?$|^\d{4}\. ?\d{1,2}\. ?\d{1,2}\.?$/;
const LIKE_A_NUMBER = /^([+-]?[\d.,' ]*\d[\d.,]*) ?(%?)$/;

/**
 * @returns the content that means the same in every language: a decimal point, a date with its year first, an
 *   apostrophe before a date that the calendar of these people does not have; undefined where it is neither a number
 *   nor a date
 */
export function jotted(text: string, writing: Writing): string | undefined {
  const plain = asFigures(text);
  if (LIKE_A_DATE.test(plain)) {
    const date = readDate(plain, DATES, { writing });
    // Left to the library, the month of another country would be taken.
    return "value" in date ? isoDate(date.value) : `'${text}`;
  }
  const [, figures, percent] = LIKE_A_NUMBER.exec(plain) ?? [];
  if (figures === undefined) return undefined;
  const numeral = readNumeral(figures, { context: { writing }, apostrophes: writing.group === "'" });
  if (!numeral) return undefined;
  if ("value" in numeral) return `${numeral.value}${percent}`;
  return numeral.foreign ? undefined : `${numeral.grouped}${percent}`;
}

/** A sentence of ours on numbers, with its decimal signs as they are written here; what it quotes stays. */
export const sentenceInSigns = (sentence: string, decimal: string): string =>
  sentence.replace(/“[^”]*”|(?<=\d)\.(?=\d)/g, (found) => (found === "." ? decimal : found));

/** A content with a decimal point as it is typed. */
export const inSigns = (content: string, decimal: string): string =>
  /^[+-]?\d+\.\d/.test(content) && Number.isFinite(Number(content.replace(/%$/, "")))
    ? content.replace(".", decimal)
    : content;
