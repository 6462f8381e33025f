/** Rows of a computed block by the names of its columns; columns that a workbook lacks are simply blank. */
import { isBookError, type Book, type BookResult } from "../workbooks/book";
import { namedColumn } from "../workbooks/named";

export interface Row {
  /** What the cell holds; `undefined` where it is blank. */
  readonly at: (column: string) => BookResult | undefined;
}

/**
 * @param block the block's name, for example `rooms`
 * @param key the column that says whether a row is filled
 */
export function filledRows(book: Book, block: string, key: string): readonly Row[] {
  const columns = new Map<string, readonly (BookResult | undefined)[]>();
  const valuesOf = (column: string): readonly (BookResult | undefined)[] => {
    let values = columns.get(column);
    if (!values) columns.set(column, (values = namedColumn(book, `${block}_${column}`)));
    return values;
  };
  return valuesOf(key).flatMap((_, index): Row[] => {
    const at = (column: string): BookResult | undefined => {
      const value = valuesOf(column)[index];
      return value === "" ? undefined : value;
    };
    return at(key) === undefined ? [] : [{ at }];
  });
}

export const numberOf = (value: BookResult | undefined): number | undefined =>
  typeof value === "number" && Number.isFinite(value) ? value : undefined;

/** Plain text; an error has none. */
export const textOf = (value: BookResult | undefined): string =>
  value === undefined || isBookError(value) ? "" : String(value).trim();

/** A figure with a fixed number of places, or a question mark in its place. */
export const figure = (value: number | undefined, places = 1): string =>
  value === undefined ? "?" : value.toFixed(places);
