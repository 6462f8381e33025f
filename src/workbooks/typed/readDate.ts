/**
 * A date as people type it, into a sheet's date number. Year first, or the month as a word, is the same
 * everywhere; points are day first but where the document's English is American; strokes follow the document.
 */
import { isoDate, sheetDate } from "../sheetDate";
import { monthOf } from "./months";
import { asFigures } from "./plainText";
import type { Reading, TypedContext } from "./reading";
import { sentences } from "./sentences";
import type { Writing } from "./writing";

type Day = readonly [year: number, month: number, day: number];

const MIDNIGHT = /[T ]0{1,2}:00(?::00(?:\.0+)?)?Z?$/;
const YEAR_FIRST = /^(\d{4}) ?([-./]) ?(\d{1,2}) ?\2 ?(\d{1,2})$/;
const COMPACT = /^((?:19|20)\d\d)(\d\d)(\d\d)$/;
const YEAR_LAST = /^(\d{1,2}) ?([-./]) ?(\d{1,2}) ?\2 ?(\d{4}|\d\d)$/;
const ORDINAL = "(?:st|nd|rd|th|er|\\.)?";
const DAY_AND_WORD = new RegExp(
  `^(\\d{1,2})${ORDINAL}[-/ ]*(?:de )?(\\p{L}+\\.?)[-/, ]*(?:de )?(\\d{4}|\\d\\d)$`,
  "iu",
);
const WORD_AND_DAY = new RegExp(`^(\\p{L}+\\.?) ?(\\d{1,2})${ORDINAL},? (\\d{4})$`, "iu");
/** Two digits of a year: no job of ours lies in the last century. */
const CENTURY = 2000;

export function readDate(
  text: string,
  { min, max }: { readonly min: number; readonly max: number },
  { writing }: TypedContext,
): Reading<number> {
  const plain = asFigures(text)
    .replace(MIDNIGHT, "")
    // As Croats and Hungarians end one.
    .replace(/(?<=[./] ?\d{4}|^\d{4}\. ?\d{1,2}\. ?\d{1,2})\.$/, "");
  const found = dayOf(text, plain, writing);
  if (found === undefined) return { refused: sentences.notDate(text) };
  if ("refused" in found) return found;
  const { value } = found;
  return value >= min && value <= max
    ? found
    : { refused: sentences.dateBeyond(text, isoDate(min), isoDate(max)) };
}

function dayOf(text: string, plain: string, writing: Writing | undefined): Reading<number> | undefined {
  const first = YEAR_FIRST.exec(plain);
  if (first) return onCalendar(text, [Number(first[1]), Number(first[3]), Number(first[4])]);
  const compact = COMPACT.exec(plain);
  if (compact) return onCalendar(text, compact.slice(1).map(Number) as unknown as Day);
  const named = DAY_AND_WORD.exec(plain);
  if (named) return withWord(text, named[3]!, named[2]!, named[1]!);
  const american = WORD_AND_DAY.exec(plain);
  if (american) return withWord(text, american[3]!, american[1]!, american[2]!);
  const last = YEAR_LAST.exec(plain);
  return last ? yearLast(text, last, writing) : undefined;
}

function withWord(text: string, year: string, word: string, day: string): Reading<number> | undefined {
  const month = monthOf(word);
  return month === undefined ? undefined : onCalendar(text, [yearOf(year), month, Number(day)]);
}

function yearLast(
  text: string,
  [, one, sign, two, last]: RegExpExecArray,
  writing: Writing | undefined,
): Reading<number> | undefined {
  // 26-11-27 may begin with its year.
  if (sign === "-" && last!.length < 4) return undefined;
  const year = yearOf(last!);
  const dayFirst: Day = [year, Number(two), Number(one)];
  const monthFirst: Day = [year, Number(one), Number(two)];
  const order = orderOf(sign!, writing);
  if (order !== undefined) {
    const chosen = order === "dmy" ? dayFirst : monthFirst;
    const other = order === "dmy" ? monthFirst : dayFirst;
    // To read the other order here would hide that 05/11 is read in this one.
    if (chosen[1] > 12 && exists(other) && sign === "/")
      return { refused: sentences.wrongOrder(text, isoDate(sheetDate(...other)), writing!.label) };
    return onCalendar(text, chosen);
  }
  const possible = [dayFirst, monthFirst].filter(exists);
  const days = [...new Set(possible.map((day) => sheetDate(...day)))];
  if (days.length === 0) return { refused: sentences.noSuchDay(text) };
  // Without a rule for strokes nothing but the other day's absence speaks for a day: enough with points, and with dashes.
  if (days.length === 1 && (sign !== "/" || writing === undefined)) return { value: days[0]! };
  return { refused: sentences.twoDates(text, days.map(isoDate), writing?.label) };
}

/** @returns undefined where either could stand first */
function orderOf(sign: string, writing: Writing | undefined): "dmy" | "mdy" | undefined {
  if (!writing) return undefined;
  if (sign === "/") return writing.order;
  return writing.points ? "dmy" : undefined;
}

const yearOf = (text: string): number => (text.length === 4 ? Number(text) : CENTURY + Number(text));

function exists([year, month, day]: Day): boolean {
  const date = new Date(Date.UTC(year, month - 1, day));
  return month >= 1 && month <= 12 && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

const onCalendar = (text: string, day: Day): Reading<number> =>
  exists(day) ? { value: sheetDate(...day) } : { refused: sentences.noSuchDay(text) };
