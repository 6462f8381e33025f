/** A book with what a model has computed for it, and all else as it was. */
import { parseAddress } from "../../formula/address";
import { arrayFormulas } from "../../workbooks/arrayFormulas";
import type { Book, BookCell } from "../../workbooks/book";
import { resultsOf, spillOf, unlockInputsAndCalls } from "./fromModel";
import type { GridLibrary, GridModel } from "./library";
import { sheetId } from "./toDocument";

/**
 * @param model a model of `book`, not edited since
 * @returns the book with its results and the reach of its spills; input cells and our own are unlocked
 */
export function withResults(library: GridLibrary, model: GridModel, book: Book): Book {
  const computed: Book = { ...book, looks: [...book.looks], sheets: [] };
  const arrayOf = arrayFormulas(book);
  for (const [index, sheet] of book.sheets.entries()) {
    const id = sheetId(index);
    // Most hold a value or a look only, and stay the very same.
    const cells = { ...sheet.cells };
    for (const [at, cell] of Object.entries(cells))
      if (cell.formula !== undefined || cell.spill) cells[at] = withSpill(model, id, at, cell, arrayOf);
    unlockInputsAndCalls(computed, cells, sheet.validations);
    computed.sheets.push({ ...sheet, cells, results: resultsOf(library, model, id, cells) });
  }
  return computed;
}

function withSpill(
  model: GridModel,
  id: string,
  at: string,
  { spill: _, ...cell }: BookCell,
  arrayOf: ReturnType<typeof arrayFormulas>,
): BookCell {
  const place = cell.formula === undefined ? undefined : parseAddress(at);
  const spill =
    place && (spillOf(model, { sheetId: id, row: place.row, col: place.column }) ?? arrayOf(cell.formula!));
  return spill ? { ...cell, spill } : cell;
}
