/** Where pages end: worked out by hand from the papers' sizes and the sheets' own heights. */
import type { Book, BookSheet, Look } from "../../src/workbooks/book";
import { LOOKS } from "../../src/workbooks/looks";
import { pageBreaks } from "../../src/workbooks/pageBreaks";
import { withPageBreaks, withPrint } from "../../src/workbooks/printFoot";
import { bookOf, emptySheet } from "../support/books";

const HEADING_LOOK = 0;
const looks: Look[] = [LOOKS.heading, LOOKS.label];
const ROW_POINTS = 20;
/** A4 upright, 842 points less 1.2 inch, holds 37 rows of 20 points and no more. */
const ROWS_A4 = Math.floor((842 - 1.2 * 72) / ROW_POINTS);

/** A sheet of parts of so many rows each, narrow enough to print at its own size; row 1 repeats. */
function sheetOf(parts: readonly number[], print: Partial<NonNullable<BookSheet["print"]>> = {}): BookSheet {
  const sheet = { ...emptySheet("Sheet"), cells: {}, rowHeights: {}, columnWidths: { 0: 20 } } as BookSheet;
  let row = 1;
  for (const rows of parts) {
    sheet.cells[`A${row + 1}`] = { value: "heading", look: HEADING_LOOK };
    for (let line = 1; line < rows; line++) sheet.cells[`A${row + line + 1}`] = { value: "line", look: 1 };
    row += rows;
  }
  for (let at = 0; at < row; at++) sheet.rowHeights[at] = ROW_POINTS;
  sheet.print = {
    orientation: "portrait",
    paper: "a4",
    area: `A1:A${row}`,
    repeatFrom: 1,
    repeatTo: 1,
    ...print,
  };
  return sheet;
}

test("what fits a page is left alone", () => {
  expect(pageBreaks(sheetOf([ROWS_A4 - 11, 10]), looks)).toEqual([]);
});

test("a part that would be parted begins a page of its own", () => {
  expect(pageBreaks(sheetOf([ROWS_A4 - 11, 11]), looks)).toEqual([ROWS_A4 - 10]);
});

test("a heading never ends a page, even of a part longer than any page, whose pages end when they are full", () => {
  // Row 1 stands again at the head of each page.
  const full = ROWS_A4 - 1;
  const first = ROWS_A4 - 2;
  expect(pageBreaks(sheetOf([ROWS_A4 - 3, 200]), looks)).toEqual(
    [0, 1, 2, 3, 4, 5].map((pages) => first + pages * full),
  );
});

test("a page that is less than half full is filled up instead", () => {
  expect(pageBreaks(sheetOf([10, ROWS_A4 - 5]), looks)).toEqual([ROWS_A4]);
});

test("Letter is shorter upright than A4, and the end moves with it", () => {
  const sheet = sheetOf([ROWS_A4 - 11, 10], { paper: "letter" });
  expect(pageBreaks(sheet, looks)).toEqual([ROWS_A4 - 10]);
});

test("a wide sheet is made smaller, so that a page holds more of it", () => {
  const wide = { ...sheetOf([ROWS_A4 - 11, 11]), columnWidths: { 0: 160 } };
  expect(pageBreaks(wide, looks)).toEqual([]);
});

test("on other paper the old ends of pages are gone; a sheet without headings keeps its own", () => {
  const cards = sheetOf([ROWS_A4, 11], { breaks: [7] });
  for (const at of Object.keys(cards.cells)) cards.cells[at] = { value: "line", look: 1 };
  const book = { ...bookOf(sheetOf([ROWS_A4 - 11, 10], { paper: "letter" }), cards), looks };
  const breaks = (one: Book) => one.sheets.map(({ print }) => print!.breaks);
  const onLetter = withPageBreaks(book);
  expect(breaks(onLetter)).toEqual([[ROWS_A4 - 10], [7]]);
  expect(breaks(withPageBreaks(withPrint(onLetter, { paper: "a4" })))).toEqual([[], [7]]);
});

test("repeated rows that leave no room on a page end none, and the search for the ends comes to its own", () => {
  const sheet = sheetOf([ROWS_A4 + 3, 11], { repeatTo: ROWS_A4 + 1 });
  expect(pageBreaks(sheet, looks)).toEqual([]);
});

test("one page is one page, and a sheet without headings has no ends of ours", () => {
  expect(pageBreaks(sheetOf([ROWS_A4, 11], { onePage: true }), looks)).toBeUndefined();
  expect(pageBreaks(sheetOf([ROWS_A4, 11]), [LOOKS.label, LOOKS.label])).toBeUndefined();
});
