/** What a copy says of itself on its About sheet. */
import { labelsIn } from "../../../review/labels";
import { address, rangeOf, parseRange } from "../../../formula/address";
import { lookIndex, type Book, type BookSheet, type Look } from "../../../workbooks/book";
import { LOOKS } from "../../../workbooks/looks";
import { templateOf } from "../../../workbooks/templates";
import type { Area } from "../../../formula/readAreas";
import { isCopyLine } from "./copyNames";

/** Lines run on beside their cell, so each must fit the printed page. */
const LINE_CHARACTERS = 110;
/** Between the sheet's intro and its first heading a template leaves this row free. */
const FREE_ROW = 2;

/** @returns the name of the workbook's About sheet, if it has one */
export function aboutSheetOf(book: Book): string | undefined {
  const defined = templateOf(book.template)?.definition.sheets.find(({ kind }) => kind === "about")?.name;
  return book.sheets.find(({ name }) => name === (defined ?? "About"))?.name;
}

/** "Rooms: Tuners; User bands": the sheets of some areas, each with the headings of its columns. */
export function headingsOf(book: Book, areas: readonly Area[]): string[] {
  const labelAt = labelsIn(book, templateOf(book.template)?.definition);
  return book.sheets.flatMap(({ name }) => {
    const here = areas.filter(({ sheet }) => sheet === name);
    const labels = new Set(
      here.map(({ zone }) => {
        const label = labelAt(name, { row: zone.top, column: zone.left });
        // What spills sideways has a head for each of its columns: the word before the colon is for all.
        return zone.right > zone.left ? label.split(":")[0]! : label;
      }),
    );
    return labels.size > 0 ? [`${name}: ${[...labels].join("; ")}`] : [];
  });
}

/**
 * @param first the line that also stands at the top of the page
 * @returns the book with the lines at the end of its About sheet, or on a sheet of their own in front
 */
export function withLines(book: Book, first: string, lines: readonly string[]): Book {
  const name = aboutSheetOf(book);
  const looks = [...book.looks];
  const sheet = book.sheets.find((one) => one.name === name) ?? freshSheet(book);
  const filled = added(sheet, looks, first, lines);
  return {
    ...book,
    looks,
    sheets:
      name === undefined
        ? [filled, ...book.sheets]
        : book.sheets.map((one) => (one.name === name ? filled : one)),
  };
}

function added(sheet: BookSheet, looks: Look[], first: string, lines: readonly string[]): BookSheet {
  const cells = { ...sheet.cells };
  const put = (row: number, look: Look, value: string): void => {
    cells[address(row, 0)] = { value, look: lookIndex({ looks }, look) };
  };
  const area = parseRange(sheet.print?.area ?? "");
  // One row stays empty above the section.
  let row = (area ? area.bottom : lastRow(sheet)) + 2;
  const free = address(FREE_ROW, 0);
  const before = cells[free]?.value;
  if (row > FREE_ROW && (cells[free] === undefined || isCopyLine(String(before)))) {
    put(FREE_ROW, LOOKS.strongLabel, `${first} See the end of this page.`);
  }
  put(row++, LOOKS.heading, "About this copy");
  for (const line of [first, ...lines].flatMap(broken)) put(row++, LOOKS.label, line);
  const print = sheet.print && {
    ...sheet.print,
    ...(area && { area: rangeOf({ ...area, bottom: row - 1 }) }),
  };
  return { ...sheet, cells, print, rowCount: Math.max(sheet.rowCount, row + 1) };
}

const lastRow = (sheet: BookSheet): number =>
  Math.max(-2, ...Object.keys(sheet.cells).map((at) => parseRange(at)?.bottom ?? -2));

/** Broken at blanks; what follows the first piece is set in a little. */
function broken(line: string): string[] {
  const pieces: string[] = [];
  for (const word of line.split(" ")) {
    const last = pieces.at(-1);
    if (last !== undefined && `${last} ${word}`.length <= LINE_CHARACTERS)
      pieces[pieces.length - 1] = `${last} ${word}`;
    else pieces.push(pieces.length === 0 ? word : `    ${word}`);
  }
  return pieces;
}

function freshSheet({ sheets }: Book): BookSheet {
  const taken = new Set(sheets.map(({ name }) => name.toLowerCase()));
  let name = "About this copy";
  for (let next = 2; taken.has(name.toLowerCase()); next++) name = `About this copy ${next}`;
  return {
    name,
    cells: {},
    results: {},
    rowCount: 1,
    columnCount: 4,
    columnWidths: { 0: LINE_CHARACTERS },
    rowHeights: {},
    frozenRows: 0,
    frozenColumns: 0,
    validations: [],
    marks: [],
    protected: true,
    print: {
      orientation: "portrait",
      paper: sheets.find(({ print }) => print)?.print?.paper ?? "a4",
      footLeft: name,
    },
  };
}
