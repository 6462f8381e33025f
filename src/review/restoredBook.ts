/** The workbook with the template's own names and formulas back in their places, for what it should come to. */
import { address } from "../formula/address";
import type { Book } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import { expectedFormulas } from "./expectedFormulas";
import { namesPutBack } from "./namesPutBack";

/** @returns a copy without results; the inputs are as they were typed */
export function restoredBook(stored: Book, definition: WorkbookDefinition): Book {
  const { book } = namesPutBack(stored, definition);
  const sheets = new Map(book.sheets.map((sheet) => [sheet.name, { ...sheet, cells: { ...sheet.cells } }]));
  for (const { sheet: name, place, formula, fills } of expectedFormulas(book, definition).formulas) {
    const cells = sheets.get(name)?.cells;
    if (!cells) continue;
    for (let row = fills.top; row <= fills.bottom; row++) {
      for (let column = fills.left; column <= fills.right; column++) {
        const at = address(row, column);
        const { look } = cells[at] ?? {};
        if (cells[at]) cells[at] = look === undefined ? {} : { look };
      }
    }
    const at = address(place.row, place.column);
    const rows = fills.bottom - fills.top + 1;
    const columns = fills.right - fills.left + 1;
    cells[at] = {
      ...cells[at],
      formula,
      ...(rows > 1 || columns > 1 ? { spill: { rows, columns } } : {}),
    };
  }
  return { ...book, sheets: [...sheets.values()] };
}
