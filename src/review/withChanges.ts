/** A workbook in which some cells hold something else; their looks and notes stay. */
import type { Book } from "../workbooks/book";
import type { Undoing } from "./finding";

/** @returns a copy, not computed */
export function withChanges(book: Book, changes: readonly Undoing[]): Book {
  const changed = new Set(changes.map(({ place }) => place.sheet));
  const sheets = new Map(
    book.sheets.map((sheet) => [
      sheet.name,
      changed.has(sheet.name) ? { ...sheet, cells: { ...sheet.cells } } : sheet,
    ]),
  );
  for (const { place, value, formula } of changes) {
    const cells = sheets.get(place.sheet)?.cells;
    if (!cells) continue;
    const { look, note } = cells[place.cell] ?? {};
    cells[place.cell] = {
      ...(look !== undefined && { look }),
      ...(note !== undefined && { note }),
      ...(formula === undefined ? value !== undefined && { value } : { formula }),
    };
  }
  return { ...book, sheets: [...sheets.values()] };
}
