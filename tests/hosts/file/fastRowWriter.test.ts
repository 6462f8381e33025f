/**
 * Rows of plain values are written beside the library: they must lie in the
 * sheet as ECMA-376 part 1 wants them (18.3.1.73: rows and cells in ascending
 * order, each once) and say what the library's own rows say.
 */
import { Workbook } from "@cj-tech-master/excelts";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { address } from "../../../src/formula/address";
import type { BookCell, BookSheet } from "../../../src/workbooks/book";
import { bookOf, emptySheet } from "../../support/books";
import { cellXml, partOf } from "../../support/parts";

const SHEET = "xl/worksheets/sheet1.xml";
const LOOKS = [{ bold: true }, { fill: "DDEEFF" }, { format: "0.0" }];

const sheetOf = (cells: Record<string, BookCell>, more: Partial<BookSheet> = {}) => ({
  ...bookOf({ ...emptySheet("S"), cells, ...more }),
  looks: LOOKS,
});

/** Plain rows, broken by a note, a formula, a row of text in two lines and one that has only a height. */
function mixed(): Record<string, BookCell> {
  const cells: Record<string, BookCell> = {};
  for (let row = 0; row < 40; row++) {
    // From the right to the left: the order of the keys must not matter.
    cells[address(row, 3)] = { value: row % 2 === 0, look: 0 };
    cells[address(row, 1)] = { value: row / 3, look: 2 };
    cells[address(row, 0)] = { value: `row ${row}` };
    cells[address(row, 5)] = { look: 1 };
  }
  cells[address(10, 0)] = { value: "noted", note: "a note" };
  cells[address(20, 1)] = { formula: "SUM(B1:B3)" };
  cells[address(30, 0)] = { value: "two\nlines" };
  for (const column of [0, 1, 3, 5]) delete cells[address(25, column)];
  return cells;
}

test("rows and cells stand in ascending order, each once, whatever lies between them", async () => {
  const xml = partOf(
    await writeXlsx(
      sheetOf(mixed(), { rowHeights: { 5: 30, 25: 4, 30: 28 }, results: { B21: 1, A50: 7, C50: "x" } }),
    ),
    SHEET,
  );
  const rows = [...xml.matchAll(/<row r="(\d+)"/g)].map(([, row]) => Number(row));
  expect(rows).toEqual([...Array.from({ length: 40 }, (_, row) => row + 1), 50]);
  const cells = [...xml.matchAll(/<c r="([A-Z]+)(\d+)"/g)].map(
    ([, letters, row]) => Number(row) * 1000 + letters!.charCodeAt(0),
  );
  expect(cells).toEqual([...cells].sort((a, b) => a - b));
  expect(new Set(cells).size).toBe(cells.length);
  expect(xml).not.toContain("\uE000");
  expect(xml).toContain('<dimension ref="A1:F50"/>');
  expect(xml).toMatch(/<row r="6" ht="30" customHeight="1">/);
  expect(xml).toMatch(/<row r="26" ht="4" customHeight="1"\/>/);
});

test("what is written comes back: looks, blanks, truth values, heights", async () => {
  const book = sheetOf(mixed(), { rowHeights: { 5: 30, 30: 28 }, results: { B21: 1, A50: 7, C50: "x" } });
  const read = (await readXlsx(await writeXlsx(book))).sheets[0]!;
  const looked = Object.fromEntries(
    Object.entries(mixed()).map(([at, { look, ...cell }]) => [
      at,
      look === undefined ? cell : { ...cell, look: LOOKS[look] },
    ]),
  );
  const { looks } = await readXlsx(await writeXlsx(book));
  const readLooked = Object.fromEntries(
    Object.entries(read.cells).map(([at, { look, ...cell }]) => [
      at,
      look === undefined ? cell : { ...cell, look: looks[look] },
    ]),
  );
  // A result without a formula is a value for every other program.
  expect(readLooked).toEqual({ ...looked, A50: { value: 7 }, C50: { value: "x" } });
  expect(read.rowHeights).toEqual({ 5: 30, 30: 28 });
});

test.each([
  ["marks of XML", 'a & b < c > d "e"'],
  ["blanks at the ends", "  both  "],
  ["nothing", ""],
  ["more than one language", "élan 屋根 📡"],
  ["what looks like an escape", "_x000D_"],
  ["what looks like an error", "#REF!"],
  ["a tabulator", "a\tb"],
  ["what looks like a number", "1,5"],
  ["what looks like a formula", "=1+1"],
])("text with %s comes back to us and to another program", async (_, text) => {
  const bytes = await writeXlsx(sheetOf({ A1: { value: text }, B1: { value: 1.5 }, A2: { value: "end" } }));
  expect((await readXlsx(bytes)).sheets[0]!.cells.A1!.value).toBe(text);
  const other = new Workbook();
  await other.xlsx.load(bytes);
  const cell = other.getWorksheet("S")!.getCell("A1");
  if (text !== "#REF!" && text !== "_x000D_") expect(cell.text).toBe(text);
  expect(other.getWorksheet("S")!.getCell("A2").text).toBe("end");
});

test("-0, errors and numbers at the ends of their range", async () => {
  const values = [-0, Number.MAX_VALUE, Number.MIN_VALUE, 1e21, -1e-7, 0.1 + 0.2];
  const cells = Object.fromEntries(values.map((value, row) => [address(row, 0), { value }]));
  const bytes = await writeXlsx(sheetOf(cells, { results: { B1: { error: "#N/A" } } }));
  const read = (await readXlsx(bytes)).sheets[0]!;
  values.forEach((value, row) => expect(read.cells[address(row, 0)]!.value).toBe(value));
  expect(cellXml(partOf(bytes, SHEET), "B1")).toContain('t="e"');
});

test("a cell in the last corner of a sheet costs no more than any other", async () => {
  const bytes = await writeXlsx(sheetOf({ A1: { value: 1 }, XFD1048576: { value: 2 } }));
  expect(partOf(bytes, SHEET)).toContain('<c r="XFD1048576"><v>2</v></c>');
});
