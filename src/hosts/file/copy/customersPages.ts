/**
 * What a customer gets to read of a computed workbook. How many checks of the office fail is nothing for him, but
 * nobody should sign for it either: his page is marked as a draft. A list of which he has nothing has no heads.
 */
import { address, parseAddress, parseRange, type Zone } from "../../../formula/address";
import type { Book, BookSheet } from "../../../workbooks/book";
import { checks } from "../../../workbooks/checkNames";
import { DRAFT_WORDS } from "../../../workbooks/draft";
import { failingCount } from "../../../workbooks/failingCount";
import { templateOf } from "../../../workbooks/templates";
import { usualSheets } from "../../../workbooks/usualSheets";

/** @param isDraft where a check fails where absent */
export function customersPages(book: Book, isDraft = failingCount(book) !== 0): Book {
  const pages = usualSheets(book);
  if (!pages) return book;
  return {
    ...book,
    sheets: book.sheets.map((sheet) =>
      pages.includes(sheet.name)
        ? withoutEmptyLists(withHead(sheet, isDraft ? DRAFT_WORDS : ""), book)
        : sheet,
    ),
  };
}

function withHead(sheet: BookSheet, words: string): BookSheet {
  const heads = Object.entries(sheet.cells).filter(([, { formula }]) => formula === checks.verdict.name);
  return {
    ...sheet,
    results: { ...sheet.results, ...Object.fromEntries(heads.map(([at]) => [at, words])) },
  };
}

/** Lists of what other sheets have are not written into: an empty one is its heads and no more. */
function withoutEmptyLists(sheet: BookSheet, { names, template }: Book): BookSheet {
  const own = names.filter((name) => name.sheet === sheet.name);
  const parts = templateOf(template)?.definition.sheets.find(({ name }) => name === sheet.name)?.parts ?? [];
  const rowHeights = { ...sheet.rowHeights };
  for (const part of parts) {
    if (part.kind !== "block" || part.mirrors === undefined) continue;
    const columns = own.filter(({ name }) => name.startsWith(`${part.name}_`));
    const zones = columns.flatMap(({ range }) => parseRange(range) ?? []);
    const heading = headingRow(sheet, part.heading);
    if (heading === undefined || zones.some((zone) => showsAny(sheet, zone))) continue;
    const bottom = Math.max(...zones.map((zone) => zone.bottom));
    for (let row = heading; row <= bottom; row++) rowHeights[row] = 0;
  }
  return { ...sheet, rowHeights };
}

/** Somebody may have moved it. */
function headingRow({ cells }: BookSheet, heading: string): number | undefined {
  const found = Object.entries(cells).find(([, { value }]) => value === heading);
  return found && parseAddress(found[0])?.row;
}

function showsAny({ cells, results }: BookSheet, { top, left, bottom, right }: Zone): boolean {
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++) {
      const at = address(row, column);
      const shown = results[at] ?? cells[at]?.value;
      if (shown !== undefined && shown !== "") return true;
    }
  return false;
}
