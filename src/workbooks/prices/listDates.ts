/** The dates of a price list: the order of day and month is judged by the whole column, as numbers are. */
import { readDate } from "../typed/readDate";
import type { Reading } from "../typed/reading";
import { DATES } from "../typed/typedKind";
import type { Writing } from "../typed/writing";
import { type ImportedCell, textOf } from "../imported/table";
import { isoDate, sheetDate } from "../sheetDate";
import { plainWords } from "./plainWords";

export type DateOrder = "dmy" | "mdy";

const PARTED = /^(\d{1,2})[-./](\d{1,2})[-./](?:\d{4}|\d\d)$/;

/** @returns undefined where no cell tells; "mixed" where cells tell different things */
export function dateOrder(cells: Iterable<ImportedCell>): DateOrder | "mixed" | undefined {
  const orders = new Set<DateOrder>();
  for (const cell of cells) {
    const found = typeof cell === "string" ? PARTED.exec(cell.trim()) : null;
    if (!found) continue;
    if (Number(found[1]) > 12) orders.add("dmy");
    if (Number(found[2]) > 12) orders.add("mdy");
  }
  return orders.size > 1 ? "mixed" : [...orders][0];
}

const writingFor = (order: DateOrder | undefined): Writing | undefined =>
  order && { label: "", tag: "", decimal: ".", group: ",", order, points: order === "dmy" };

const TIME = /[ T]\d{1,2}:\d\d(?::\d\d(?:\.\d+)?)?Z?$/;
const MONTH_ONLY = /^(\d{1,2})[./-](\d{4})$/;
const OPEN =
  /^(?:-+|–|open|until further notice|bis auf weiteres|offen|n\/?a|unlimited|unbegrenzt|jusqu'a nouvel ordre|indefinido|onbeperkt)$/;

/** @returns undefined for a blank cell, and for one that says that there is no end */
export function readListDate(
  cell: ImportedCell | undefined,
  order: DateOrder | undefined,
  isEnd = false,
): Reading<number | undefined> {
  if (cell === undefined || cell === "") return { value: undefined };
  if (typeof cell === "object") {
    const { number, shown } = cell;
    const whole = Math.floor(number);
    if (shown === undefined && whole >= DATES.min && whole <= DATES.max) return { value: whole };
    return readListDate(shown ?? isoDate(whole), order, isEnd);
  }
  const text = textOf(cell).replace(TIME, "");
  if (text === "" || OPEN.test(plainWords(text))) return { value: undefined };
  const month = MONTH_ONLY.exec(text);
  if (month && Number(month[1]) >= 1 && Number(month[1]) <= 12) {
    const [of, year] = [Number(month[1]), Number(month[2])];
    return { value: isEnd ? sheetDate(year, of + 1, 0) : sheetDate(year, of, 1) };
  }
  // With points the day stands first wherever nothing in the column says otherwise.
  const known = order ?? (/^\d{1,2}\. ?\d/.test(text) ? "dmy" : undefined);
  return readDate(text, DATES, { ...(known && { writing: writingFor(known)! }) });
}

const DATE =
  "(\\d{4}-\\d{1,2}-\\d{1,2}|\\d{1,2} ?[./-] ?\\d{1,2} ?[./-] ?(?:\\d{4}|\\d\\d)(?!\\d)|\\d{1,2}(?:st|nd|rd|th|\\.|er)? ?(?:de )?\\p{L}{3,}\\.?,? ?(?:de )?\\d{4}|\\p{L}{3,}\\.? \\d{1,2}(?:st|nd|rd|th)?,? \\d{4})";
const UNTIL = new RegExp(
  `(?:until|till|\\bto\\b|through|thru|expir\\w*(?: on)?|ends?(?: on)?|bis(?: zum| einschließlich)?|jusqu'?(?:au|à)|jusqu’au|\\bau\\b|hasta(?: el)?|\\bal\\b|\\btot(?: en met)?|t/m|[-–—])\\s*:?\\s*${DATE}`,
  "iu",
);
const FROM = new RegExp(
  `(?:from|as (?:of|at|from)|effective(?: from)?|starting|since|dated?|\\bon\\b|ab(?: dem)?|vom|von|stand(?: vom)?|gültig seit|seit|per|à partir du|a partir du|depuis(?: le)?|\\bdu\\b|en date du|desde(?: el)?|a partir del?|del?|vanaf|van|ingaande|per|datum|fecha|date)\\s*:?\\s*${DATE}`,
  "iu",
);
const ANY = new RegExp(DATE, "iu");
const END_OF_YEAR =
  /(?:until|till|bis|hasta|tot|jusqu'à|through) (?:end of|ende|fin(?: de)?|eind|la fin(?: de)?|finales de) (20\d\d)/iu;

export interface TitleDates {
  readonly from?: string;
  readonly until?: string;
  readonly untilYear?: number;
}

/** What the words around a table say of how long its prices hold; the dates as they were written. */
export function datesInTitle(text: string): TitleDates {
  const end = END_OF_YEAR.exec(text);
  const until = UNTIL.exec(text);
  const before = until ? text.replace(until[0], " ") : text;
  const named = FROM.exec(before);
  const bare = named ?? (until && until.index > 0 ? ANY.exec(text.slice(0, until.index)) : ANY.exec(before));
  return {
    ...(bare && { from: bare[1]! }),
    ...(until && { until: until[1]! }),
    ...(end && { untilYear: Number(end[1]) }),
  };
}
