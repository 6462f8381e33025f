/**
 * A workbook made ready to be a sealed copy: no input rules, no conditional
 * formats (their look stays where it showed), no empty prepared rows, every
 * cell locked, and an error shown as the word "error", so that none is ever
 * printed as a code.
 */
import { address, parseRange } from "../../../formula/address";
import { isBookError, lookIndex, type Book, type BookSheet, type Look } from "../../../workbooks/book";
import { ALERT_LOOK } from "../../../workbooks/looks";
import { templateOf } from "../../../workbooks/templates";
import { withoutEmptyRows } from "./withoutEmptyRows";

/** What stands in the place of an error. */
export const ERROR_WORD = "error";

/** @param wanted the sheets to keep, by name; all of them where absent */
export function sealedBook(book: Book, wanted?: ReadonlySet<string>): Book {
  const kept = wanted ? book.sheets.filter(({ name }) => wanted.has(name)) : book.sheets;
  // A copy of the list, of which the indexes stay valid.
  const looks = book.looks.map(({ locked: _, ...look }): Look => look);
  const alert = (look: number | undefined, over: Look): number =>
    lookIndex({ looks }, { ...(look === undefined ? {} : looks[look]), ...over });
  const byHand = (templateOf(book.template)?.definition.sheets ?? []).flatMap(({ parts }) =>
    parts.flatMap((part) => (part.kind === "block" && part.byHand ? [part.name] : [])),
  );
  const sealed = kept.map((sheet) =>
    withoutEmptyRows(
      sealedSheet(sheet, looks, alert),
      book.names.filter((name) => name.sheet === sheet.name),
      byHand,
    ),
  );
  return {
    ...book,
    looks,
    sheets: sealed.map(({ sheet }) => sheet),
    names: sealed.flatMap(({ names }) => names),
  };
}

function sealedSheet(
  sheet: BookSheet,
  looks: readonly Look[],
  withLook: (look: number | undefined, over: Look) => number,
): BookSheet {
  const cells = { ...sheet.cells };
  const results = { ...sheet.results };
  for (const { range, words, look } of sheet.marks) {
    const zone = parseRange(range);
    if (!zone) continue;
    for (let row = zone.top; row <= zone.bottom; row++) {
      for (let column = zone.left; column <= zone.right; column++) {
        const at = address(row, column);
        const shown = results[at] ?? cells[at]?.value;
        if (typeof shown !== "string" || !words.includes(shown)) continue;
        cells[at] = { ...cells[at], look: withLook(cells[at]?.look, looks[look] ?? {}) };
      }
    }
  }
  for (const [at, result] of Object.entries(results)) {
    if (!isBookError(result)) continue;
    results[at] = ERROR_WORD;
    cells[at] = { ...cells[at], look: withLook(cells[at]?.look, ALERT_LOOK) };
  }
  return { ...sheet, cells, results, validations: [], marks: [], protected: true };
}
