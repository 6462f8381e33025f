/**
 * What is printed of every demonstration, cell by cell: nothing cut, nothing
 * drawn over its neighbour, nothing too small to read. Widths are those of the
 * font that LibreOffice takes where the usual one is missing, which is wider.
 */
import { copyOf } from "../../src/hosts/file/copy/copyOf";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { textWidth } from "../../src/pictures/textWidth";
import { address, parseRange } from "../../src/formula/address";
import type { Book, BookSheet, Look } from "../../src/workbooks/book";
import { withPrint } from "../../src/workbooks/printFoot";
import { readFile } from "node:fs/promises";
import path from "node:path";

const TEMPLATES = [
  "multi-room-demonstration",
  "multi-room-apartment-block",
  "single-drop-demonstration",
  "alignment-card-demonstration",
  "quote-review-demonstration",
  "training-sheet-demonstration",
  "training-key-demonstration",
];
const PAPERS = ["a4", "letter"] as const;
/** Of the font in points, where a look names none. */
const USUAL_SIZE = 10;
const DIGIT = textWidth("0", USUAL_SIZE);
/** A line with its leading: DejaVu Sans has 1.164 of its size. */
const LEADING = 1.164;
/** A text may be so much wider than it was taken for before a letter is lost. */
const TOLERANCE = 1.02;
/** Below this, in points on paper, an impatient reader gives up (common practice, no source). */
const LEAST_TYPE = 5;
/** The office's own sheet, with the longest notes; on Letter it is smaller than it should be. */
const SMALLER: Readonly<Record<string, number>> = { Terms: 4.8 };
/** Printable width in points: A4 and Letter less 0.4 inch on either side. */
const ACROSS = {
  a4: { portrait: 537, landscape: 784 },
  letter: { portrait: 554, landscape: 734 },
} as const;

const copies = new Map<string, Book>();
async function printedBook(template: string): Promise<Book> {
  const known = copies.get(template);
  if (known) return known;
  const file = path.join(__dirname, "../../templates", `${template}.xlsx`);
  const book = recalculate(await readXlsx(await readFile(file)));
  const made = copyOf(book, "sealed", { now: new Date("2026-11-25T12:00:00Z"), version: "0" });
  copies.set(template, made);
  return made;
}

/** A printed sheet: its zone, its widths, and what its cells show. */
function paperOf({ cells, results, columnWidths, print }: BookSheet, looks: readonly Look[]) {
  const zone = parseRange(print?.area ?? "")!;
  const shown = (row: number, column: number) => {
    const at = address(row, column);
    const value = results[at] ?? cells[at]?.value;
    return value === "" ? undefined : value;
  };
  const look = (row: number, column: number): Look => looks[cells[address(row, column)]?.look ?? -1] ?? {};
  const width = (column: number): number => (columnWidths[column] ?? 8.43) * DIGIT;
  return { zone, shown, look, width };
}

function linesNeeded(text: string, width: number, size: number, bold: boolean): number {
  let lines = 1;
  let line = "";
  for (const word of text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer, size, bold) > width * TOLERANCE) {
      lines++;
      line = word;
    } else line = longer;
  }
  return lines;
}

function faultsOf(sheet: BookSheet, looks: readonly Look[]): string[] {
  const { zone, shown, look, width } = paperOf(sheet, looks);
  const faults: string[] = [];
  for (let row = zone.top; row <= zone.bottom; row++) {
    // It is hidden, and prints nowhere.
    if (sheet.rowHeights[row] === 0) continue;
    for (let column = zone.left; column <= zone.right; column++) {
      const value = shown(row, column);
      const where = `${sheet.name}!${address(row, column)}`;
      const { bold = false, size = USUAL_SIZE, wrap, align, format } = look(row, column);
      if (typeof value === "number" && format === undefined && String(value).length > 9) {
        faults.push(`${where} shows ${value}`);
      }
      if (typeof value !== "string") continue;
      if (wrap) {
        const lines = linesNeeded(value, width(column), size, bold);
        const height = sheet.rowHeights[row] ?? size * 1.3;
        if (lines * size * LEADING > height * TOLERANCE) {
          faults.push(`${where} needs ${lines} lines in ${height} points: ${value}`);
        }
        continue;
      }
      let room = width(column);
      for (
        let next = column + 1;
        align !== "right" && next <= zone.right && shown(row, next) === undefined;
        next++
      )
        room += width(next);
      for (
        let before = column - 1;
        align === "right" && before >= zone.left && shown(row, before) === undefined;
        before--
      )
        room += width(before);
      if (align === "center") room = width(column);
      const needed = textWidth(value, size, bold);
      if (needed > room * TOLERANCE) {
        faults.push(`${where} is ${Math.round(needed)} wide in ${Math.round(room)}: ${value}`);
      }
    }
  }
  const empty = (row: number): boolean => {
    for (let column = zone.left; column <= zone.right; column++) {
      // A box is there to be written in.
      if (shown(row, column) !== undefined || look(row, column).edges?.left) return false;
    }
    return true;
  };
  if (empty(zone.bottom)) faults.push(`${sheet.name} prints an empty last row`);
  return faults;
}

describe.each(TEMPLATES)("%s on paper", (template) => {
  test("no text is cut or drawn over its neighbour, no figure has digits that nobody asked for", async () => {
    const { sheets, looks } = await printedBook(template);
    const printed = sheets.filter(({ print }) => print?.area !== undefined);
    expect(printed.length).toBeGreaterThan(0);
    expect(printed.flatMap((sheet) => faultsOf(sheet, looks))).toEqual([]);
  });

  test.each(PAPERS)("every sheet can be read on %s", async (paper) => {
    const { sheets } = withPrint(await printedBook(template), { paper });
    const sizes = sheets.flatMap((sheet) => {
      if (!sheet.print?.area) return [];
      const { zone, width } = paperOf(sheet, []);
      let points = 0;
      for (let column = zone.left; column <= zone.right; column++) points += width(column);
      const scale = Math.min(1, ACROSS[paper][sheet.print.orientation] / points);
      return [[sheet.name, scale * USUAL_SIZE] as const];
    });
    expect(sizes.filter(([name, size]) => size < (SMALLER[name] ?? LEAST_TYPE))).toEqual([]);
  });
});
