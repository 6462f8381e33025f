/**
 * Every printed sheet and every card of the demonstrations as a PDF, read by
 * poppler: all that the cells show stands on the pages, within their margins,
 * and no word over another.
 */
import { readFile } from "node:fs/promises";
import path from "node:path";
import { copyOf } from "../../../src/hosts/file/copy/copyOf";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { address, parseRange } from "../../../src/formula/address";
import { isBookError, type Book, type BookSheet } from "../../../src/workbooks/book";
import { withPageBreaks, withPrint } from "../../../src/workbooks/printFoot";
import { overlapping, outside, readPdf } from "../../support/pdfPages";
import { withPoppler } from "../../support/tools";
import { tries } from "../../support/tries";
import { printed, shown } from "./printedType";

const TEMPLATES = [
  ["multi-room-demonstration", "sealed"],
  ["multi-room-demonstration", "cards"],
  ["multi-room-hostel", "sealed"],
  ["multi-room-hostel", "cards"],
  ["single-drop-demonstration", "sealed"],
  ["alignment-card-demonstration", "sealed"],
  ["quote-review-demonstration", "sealed"],
  ["training-sheet-demonstration", "sealed"],
  ["training-key-demonstration", "sealed"],
  ["standards-demonstration", "sealed"],
] as const;
/** In points: 0.4 inch at the sides and 0.5 above; the foot stands in the 0.7 inch below. */
const MARGINS = { left: 28.8, right: 28.8, top: 36, bottom: 12 };

const read = new Map<string, Promise<Book>>();
const bookOf = (template: string): Promise<Book> => {
  const file = path.join(__dirname, "../../../templates", `${template}.xlsx`);
  if (!read.has(template)) read.set(template, readFile(file).then(readXlsx).then(recalculate));
  return read.get(template)!;
};

/** The words of all cells in the sheet's print area, as they show; a number's without the sign of a nought. */
function wordsOf({ cells, results, rowHeights, print }: BookSheet, { looks }: Book): string[] {
  const { top, bottom, left, right } = parseRange(print!.area!)!;
  const words: string[] = [];
  for (let row = top; row <= bottom; row++) {
    // It is hidden, and prints nowhere.
    if (rowHeights[row] === 0) continue;
    for (let column = left; column <= right; column++) {
      const at = address(row, column);
      const value = results[at] ?? cells[at]?.value;
      if (value === undefined || isBookError(value)) continue;
      const format = looks[cells[at]?.look ?? -1]?.format;
      const text = typeof value === "string" ? value : shown(value, format).replace(/^-(?=[0.,]+%?$)/, "");
      words.push(...text.split(/\s+/).filter(Boolean));
    }
  }
  return words;
}

/** A long word may be broken, and a minus stand by itself: what counts is every sign, in any order of the words. */
const signsOf = (words: readonly string[]): Map<string, number> => {
  const signs = new Map<string, number>();
  for (const sign of words.join("").normalize("NFKC")) signs.set(sign, (signs.get(sign) ?? 0) + 1);
  return signs;
};

/** A quick run tries one paper for each, the other for the next. */
const papersOf = (index: number): readonly ("a4" | "letter")[] =>
  tries(0, 1) === 1 ? ["a4", "letter"] : [index % 2 === 0 ? "a4" : "letter"];

describe.each(TEMPLATES.map(([template, kind], index) => [template, kind, index] as const))(
  "%s, %s",
  (template, kind, at) => {
    for (const paper of papersOf(at))
      withPoppler(
        `${paper}: all that shows is there, nothing outside, nothing over its neighbour`,
        async () => {
          const copy = withPageBreaks(
            withPrint(copyOf(await bookOf(template), kind, { now: new Date(0), version: "0" }), { paper }),
          );
          const sheets = copy.sheets.filter(({ print }) => print?.area !== undefined);
          expect(sheets.length).toBeGreaterThan(0);
          for (const sheet of sheets) {
            const { bytes, unset } = await printed({ ...copy, sheets: [sheet] });
            expect(unset).toEqual([]);
            const { pages } = readPdf(bytes);
            const onPaper = pages.flatMap(({ words }) => words.map(({ text }) => text));
            const wanted = wordsOf(sheet, copy);
            const missing = [...new Set(wanted)].filter(
              (word) =>
                word.length < 12 && !onPaper.includes(word.normalize("NFKC")) && !onPaper.includes(word),
            );
            const signs = signsOf(onPaper);
            const fewer = [...signsOf(wanted)].filter(([sign, count]) => (signs.get(sign) ?? 0) < count);
            expect({ sheet: sheet.name, missing, fewer }).toEqual({
              sheet: sheet.name,
              missing: [],
              fewer: [],
            });
            for (const [index, page] of pages.entries())
              expect({
                page: `${sheet.name}, ${index + 1}`,
                outside: outside(page, MARGINS),
                over: overlapping(page),
                across: Math.round(page.width),
              }).toEqual({
                page: `${sheet.name}, ${index + 1}`,
                outside: [],
                over: [],
                across: { a4: { portrait: 595, landscape: 842 }, letter: { portrait: 612, landscape: 792 } }[
                  paper
                ][sheet.print!.orientation],
              });
          }
        },
      );
  },
);
