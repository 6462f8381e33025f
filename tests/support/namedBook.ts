/** A computed book of names and values alone, for what only reads one. */
import { address, rangeOf } from "../../src/formula/address";
import type { Book, BookResult } from "../../src/workbooks/book";
import { bookOf, emptySheet } from "./books";

type Value = BookResult | undefined;

/**
 * @param named the values of each name from the top, one below the other; a row of its own where it is a list
 * @returns a book with one sheet, "Values", on which the names stand side by side
 */
export function namedBook(named: Readonly<Record<string, readonly (Value | readonly Value[])[]>>): Book {
  const sheet = emptySheet("Values");
  const book = bookOf(sheet);
  let left = 0;
  for (const [name, values] of Object.entries(named)) {
    const rows = values.map((value) =>
      Array.isArray(value) ? (value as readonly Value[]) : [value as Value],
    );
    const width = Math.max(...rows.map((row) => row.length));
    rows.forEach((row, down) =>
      row.forEach((value, across) => {
        if (value !== undefined) sheet.results[address(down, left + across)] = value;
      }),
    );
    const zone = { top: 0, left, bottom: rows.length - 1, right: left + width - 1 };
    book.names.push({ name, sheet: sheet.name, range: rangeOf(zone) });
    left += width;
  }
  return book;
}
