/** A book with what only its grid knows of how it is shown, for whoever puts the sheets on paper. */
import { address, rangeOf, type Zone } from "../../formula/address";
import { lookIndex, type Book, type BookSheet } from "../../workbooks/book";
import type { GridModel } from "./library";

type ShownGetters = GridModel["getters"] & {
  isRowHidden(sheetId: string, row: number): boolean;
  isColHidden(sheetId: string, column: number): boolean;
  getMerges(sheetId: string): Zone[];
};

/**
 * @param model a model
 * @param book what `fromModel` made of it
 * @returns the book with hidden rows and columns of no size, with merged cells, and with the number formats that
 *   the grid itself gives to results
 */
export function shownOnGrid(model: GridModel, book: Book): Book {
  const getters = model.getters as ShownGetters;
  const looks = [...book.looks];
  const sheets = book.sheets.map((sheet): BookSheet => {
    const id = getters.getSheetIdByName(sheet.name);
    if (id === undefined) return sheet;
    const rowHeights = { ...sheet.rowHeights };
    for (let row = 0; row < sheet.rowCount; row++) if (getters.isRowHidden(id, row)) rowHeights[row] = 0;
    const columnWidths = { ...sheet.columnWidths };
    for (let column = 0; column < sheet.columnCount; column++)
      if (getters.isColHidden(id, column)) columnWidths[column] = 0;
    const merges = getters.getMerges(id).map(rangeOf);
    return {
      ...sheet,
      rowHeights,
      columnWidths,
      cells: withFormats(getters, id, sheet, looks),
      ...(merges.length > 0 && { merges }),
    };
  });
  return { ...book, looks, sheets };
}

/** A formula over money or dates shows money or dates, without a format of its own. */
function withFormats(
  getters: ShownGetters,
  sheetId: string,
  { cells }: BookSheet,
  looks: Book["looks"],
): BookSheet["cells"] {
  const formatted = { ...cells };
  for (const position of getters.getEvaluatedCellsPositions(sheetId)) {
    const { format, value } = getters.getEvaluatedCell(position);
    if (format === undefined || typeof value !== "number") continue;
    const at = address(position.row, position.col);
    const look = looks[formatted[at]?.look ?? -1];
    if (look?.format === format) continue;
    formatted[at] = { ...formatted[at], look: lookIndex({ looks }, { ...look, format }) };
  }
  return formatted;
}
