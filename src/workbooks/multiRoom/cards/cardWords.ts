/** Figures of a computed book in the words of a card. */
import { isBookError, type Book, type BookResult } from "../../book";
import { namedColumn, namedValue } from "../../named";
import { isoDate } from "../../sheetDate";
import { estimate } from "../names";

/** Where a figure is missing or in error, a hand writes it in. */
const UNKNOWN = "?";

export const text = (value: BookResult | undefined): string =>
  value === undefined || isBookError(value) ? "" : String(value);

export const one = (value: BookResult | undefined, digits = 1): string =>
  typeof value === "number" ? value.toFixed(digits) : UNKNOWN;

/** `66.5 to 68.3`, or one figure where both are alike. */
export function range(from: BookResult | undefined, to: BookResult | undefined): string {
  const [low, high] = [one(from), one(to)];
  return low === high ? low : `${low} to ${high}`;
}

/** Reads columns of a block by key, and fields by name. */
export function readerOf(book: Book, block: string) {
  const columns = new Map<string, (BookResult | undefined)[]>();
  return {
    at: (row: number, key: string): BookResult | undefined => {
      const name = `${block}_${key}`;
      const known = columns.get(name) ?? namedColumn(book, name);
      columns.set(name, known);
      return known[row];
    },
    field: (name: string): BookResult | undefined => namedValue(book, name),
  };
}

/** The rows of a block that hold a name, with their place in it. */
export const filledRows = (book: Book, name: string): number[] =>
  namedColumn(book, name).flatMap((value, row) => (text(value).trim() === "" ? [] : [row]));

/** What tells a card that was cut off which job it belongs to. */
export function jobMark(book: Book): string {
  const [quote, revision] = [
    text(namedValue(book, estimate.site.quote.name)),
    text(namedValue(book, estimate.site.revision.name)),
  ];
  const job = quote || text(namedValue(book, estimate.site.job.name)).slice(0, 24);
  return revision === "" ? job : `${job}, rev. ${revision}`;
}

export const dateIn = (book: Book, name: string): string => {
  const value = namedValue(book, name);
  return typeof value === "number" && value >= 1 ? isoDate(value) : "no date";
};

/** A line of a card's half is as wide as that: what runs further is cut. */
const LONGEST = 56;
export const cut = (line: string): string =>
  line.length > LONGEST ? `${line.slice(0, LONGEST - 1)}…` : line;

/** In two lines at most, broken at a blank. */
export function inTwoLines(line: string): [string, string] {
  if (line.length <= LONGEST) return [line, ""];
  const blank = line.lastIndexOf(" ", LONGEST);
  const at = blank > 0 ? blank : LONGEST;
  return [line.slice(0, at), cut(line.slice(at).trim())];
}
