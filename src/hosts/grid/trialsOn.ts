/** A model in which a book's cells are changed for a while, to see what the book would come to. */
import { parseAddress } from "../../formula/address";
import type { Undoing } from "../../review/finding";
import { withChanges } from "../../review/withChanges";
import type { Book } from "../../workbooks/book";
import { asOne } from "./asOne";
import type { GridLibrary, GridModel } from "./library";
import { contentOf, sheetId } from "./toDocument";
import { withResults } from "./withResults";

/** @param model a model of `book`, of which nobody else makes use */
export function trialsOn(
  library: GridLibrary,
  model: GridModel,
  book: Book,
): (changes: readonly Undoing[]) => Book {
  const ids = new Map(book.sheets.map(({ name }, index) => [name, sheetId(index)]));
  let before: readonly Undoing[] = [];
  return (changes) => {
    const changed = withChanges(book, changes);
    asOne(model, (dispatch) => {
      // Those of the last trial hold again what they held.
      for (const { place } of [...before, ...changes]) {
        const sheet = ids.get(place.sheet);
        const at = parseAddress(place.cell);
        if (sheet === undefined || !at) continue;
        const cell = changed.sheets.find(({ name }) => name === place.sheet)?.cells[place.cell];
        dispatch("UPDATE_CELL", {
          sheetId: sheet,
          row: at.row,
          col: at.column,
          content: contentOf(cell ?? {}) ?? "",
        });
      }
    });
    before = changes;
    return withResults(library, model, changed);
  };
}
