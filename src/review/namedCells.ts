/** The cells of a named column or field, with where they lie. */
import { address, parseRange } from "../formula/address";
import type { Book, BookResult } from "../workbooks/book";
import { remembered } from "../workbooks/remembered";
import type { FindingPlace } from "./finding";

export interface NamedCell {
  readonly place: FindingPlace;
  /** Counted from the top of the name. */
  readonly index: number;
  readonly value: BookResult | undefined;
  /** A person typed it. */
  readonly typed: boolean;
}

/** @returns the first column of a name, top to bottom, its thin rows included; empty for an unknown name */
export const namedCells = (book: Book, name: string): readonly NamedCell[] =>
  remembered(book, `cells of ${name}`, () => cellsOf(book, name));

function cellsOf(book: Book, name: string): NamedCell[] {
  const found = book.names.find((one) => one.name === name);
  const sheet = book.sheets.find((one) => one.name === found?.sheet);
  const zone = found && parseRange(found.range);
  if (!sheet || !zone) return [];
  return Array.from({ length: zone.bottom - zone.top + 1 }, (_, index) => {
    const cell = address(zone.top + index, zone.left);
    const own = sheet.cells[cell];
    return {
      place: { sheet: sheet.name, cell },
      index,
      value: sheet.results[cell] ?? own?.value,
      typed: own?.formula === undefined && own?.value !== undefined,
    };
  });
}

export const isBlank = (value: BookResult | undefined): value is undefined | "" =>
  value === undefined || (typeof value === "string" && value.trim() === "");

/** The cells that hold something. */
export const filledCells = (book: Book, name: string): NamedCell[] =>
  namedCells(book, name).filter(({ value }) => !isBlank(value));

/** As people compare: without case and outer blanks. */
export const plainWord = (value: BookResult | undefined): string => lookupWord(value).trim();

/** As lookups compare: without case; a blank at an end is a letter as any. */
export const lookupWord = (value: BookResult | undefined): string =>
  isBlank(value) ? "" : String(value).toLowerCase();

export const figure = (value: number): string => String(Number(value.toPrecision(7)));

/** The blocks of the Parts sheet that carry prices. */
export const PRICED_BLOCKS = [
  "cables",
  "passives",
  "units",
  "supplies",
  "plates",
  "feeds",
  "resistors",
  "fittings",
] as const;

/** Whether there is a job in the workbook, rather than only what a template starts from. */
export const hasJob = (book: Book): boolean => filledCells(book, "rooms_outlet").length > 0;
