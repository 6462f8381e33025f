/** Reads a computed book by its defined names. */
import { address, parseRange, type Zone } from "../formula/address";
import type { Book, BookName, BookResult, BookSheet } from "./book";

/** Where a name leads; `undefined` for an unknown one. */
export function namedZone(book: Book, name: string): { sheet: BookSheet; zone: Zone } | undefined {
  const found = book.names.find((one) => one.name === name);
  const sheet = book.sheets.find((one) => one.name === found?.sheet);
  const zone = found && parseRange(found.range);
  return sheet && zone ? { sheet, zone } : undefined;
}

/** The values of a named range, row by row; `undefined` for an empty cell or an unknown name. */
export function namedRows(book: Book, name: string): (BookResult | undefined)[][] {
  const found = namedZone(book, name);
  if (!found) return [];
  const { sheet, zone } = found;
  const rows: (BookResult | undefined)[][] = [];
  for (let row = zone.top; row <= zone.bottom; row++) {
    const line: (BookResult | undefined)[] = [];
    for (let column = zone.left; column <= zone.right; column++) {
      const at = address(row, column);
      line.push(sheet.results[at] ?? sheet.cells[at]?.value);
    }
    rows.push(line);
  }
  return rows;
}

/** The one value of a named cell. */
export const namedValue = (book: Book, name: string): BookResult | undefined => namedRows(book, name)[0]?.[0];

/** Where the filled rows of a named block begin, below its thin row; a named cell is its own place. */
export function placeOfName(book: Book, name: string): { sheet: string; at: string } | undefined {
  const found = book.names.find((one) => one.name === name);
  const zone = found && parseRange(found.range);
  if (!found || !zone) return undefined;
  const row = zone.bottom > zone.top ? zone.top + 1 : zone.top;
  return { sheet: found.sheet, at: address(row, zone.left) };
}

/** The first column of a named range. */
export const namedColumn = (book: Book, name: string): (BookResult | undefined)[] =>
  namedRows(book, name).map(([first]) => first);

/** @returns whether a name is known to stand for one cell */
export function oneCellNames(names: readonly BookName[]): (name: string) => boolean {
  const zones = new Map(names.map(({ name, range }) => [name.toUpperCase(), parseRange(range)]));
  return (name) => {
    const zone = zones.get(name.toUpperCase());
    return zone !== undefined && zone.top === zone.bottom && zone.left === zone.right;
  };
}
