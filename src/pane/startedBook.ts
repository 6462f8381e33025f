/** A new workbook with the person's own settings in it. */
import { parseRange, address } from "../formula/address";
import type { Book } from "../workbooks/book";
import type { Template } from "../workbooks/templates";
import type { Preferences, StartedBook } from "./host";

export type Start = "empty" | "demonstration";

/** Names of the cells, in any template that has them, that take a setting. */
const SETTINGS: Readonly<Record<string, "lengthUnit" | "currency">> = {
  site_unit: "lengthUnit",
  site_currency: "currency",
};

/** The demonstration keeps its own unit and currency: its figures are in them. */
export function startedBook(template: Template, start: Start, preferences: Preferences): StartedBook {
  const book = template[start]();
  if (start === "demonstration") return { book, file: `${template.id}-demonstration.xlsx` };
  return takesSettings(book, preferences) ? { book } : { book, file: `${template.id}.xlsx` };
}

/** @returns whether anything in it is other than it was */
function takesSettings(book: Book, preferences: Preferences): boolean {
  let changed = false;
  for (const { name, sheet, range } of book.names) {
    const key = SETTINGS[name];
    const zone = parseRange(range);
    const cells = book.sheets.find((one) => one.name === sheet)?.cells;
    if (!key || !zone || !cells || preferences[key] === "") continue;
    const at = address(zone.top, zone.left);
    if (cells[at]?.value === preferences[key]) continue;
    cells[at] = { ...cells[at], value: preferences[key] };
    changed = true;
  }
  return changed;
}
