/**
 * Computes a book for those who read its figures alone. What it looks like is
 * kept out of the spreadsheet library, which spends a third of its time on it,
 * and comes back as it was.
 */
import type { Book, BookCell, BookSheet } from "../../workbooks/book";
import { recalculate } from "./recalculate";

/** @returns the same book with every formula computed anew */
export function recalculateValues(book: Book): Book {
  const { sheets } = recalculate({ ...book, looks: [], sheets: book.sheets.map(bare) });
  const computed = new Map(sheets.map((sheet) => [sheet.name, sheet]));
  return { ...book, sheets: book.sheets.map((sheet) => withFigures(sheet, computed.get(sheet.name))) };
}

function bare(sheet: BookSheet): BookSheet {
  const cells: Record<string, BookCell> = {};
  for (const [at, { value, formula, spill }] of Object.entries(sheet.cells)) {
    if (formula !== undefined) cells[at] = { formula, spill };
    else if (value !== undefined) cells[at] = { value };
  }
  return { ...sheet, cells, marks: [], validations: [], columnWidths: {}, rowHeights: {} };
}

function withoutSpill(cell: BookCell): BookCell {
  const bare = { ...cell };
  delete bare.spill;
  return bare;
}

function withFigures(sheet: BookSheet, computed: BookSheet | undefined): BookSheet {
  const cells = { ...sheet.cells };
  for (const [at, cell] of Object.entries(sheet.cells)) {
    if (cell.formula === undefined) continue;
    const { spill } = computed?.cells[at] ?? {};
    cells[at] = spill ? { ...cell, spill } : withoutSpill(cell);
  }
  return { ...sheet, cells, results: computed?.results ?? {} };
}
