/**
 * Lines of cells as CSV that is safe to open: a spreadsheet program takes text
 * that begins with = + - @, a tab or a line end for a formula, so such text
 * gets an apostrophe in front, the programs' own sign for text. Numbers stay
 * numbers, negative ones too. readCsv takes the apostrophe off again.
 */
import { writeCsv as writeLines } from "hucre/csv";

/** After blanks too, and in the wide forms that some programs take for the same signs. */
const LIKE_FORMULA = /^[ \u00A0]*[=+\-@\t\r\n|\0\uFF1D\uFF0B\uFF0D\uFF20]/;

/** A number as its own shortest text: the library would round the smallest away. */
const safe = (cell: string | number): string =>
  typeof cell === "string" && LIKE_FORMULA.test(cell) ? `'${cell}` : String(cell);

/** @returns the text of the file, its last line ended */
export const writeCsv = (lines: readonly (readonly (string | number)[])[]): string =>
  `${writeLines(lines.map((line) => line.map(safe)))}\n`;

/** A cell's text as it was before writeCsv. */
export const withoutGuard = (cell: string): string =>
  cell.startsWith("'") && LIKE_FORMULA.test(cell.slice(1)) ? cell.slice(1) : cell;
