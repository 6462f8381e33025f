/** What the cells of a template's workbook are called, in the template's own words. */
import { acrossHead } from "../workbooks/names";
import { columnLetters, parseRange, type Place } from "../formula/address";
import type { Book } from "../workbooks/book";
import type { Part, WorkbookDefinition } from "../workbooks/definition";

/** @returns a label for each name of the template that is a column, a field or a line of a grid */
function labelsOf(definition: WorkbookDefinition): ReadonlyMap<string, string> {
  const parts: readonly Part[] = definition.sheets.flatMap((sheet) => sheet.parts);
  return new Map(
    parts.flatMap((part): [string, string][] => {
      switch (part.kind) {
        case "fields":
          return part.fields.map(({ name, label }) => [name, label]);
        case "grid":
          return part.rows.map(({ name, label }) => [name, label]);
        case "block":
          return part.columns.flatMap(({ key, head, across }): [string, string][] => [
            [`${part.name}_${key}`, head],
            ...(across ?? []).map((one): [string, string] => [
              `${part.name}_${key}_${one.key}`,
              acrossHead(head, one.head),
            ]),
          ]);
        default:
          return [];
      }
    }),
  );
}

export type LabelAt = (sheet: string, place: Place) => string;

/**
 * @param definition the book's template; undefined for a workbook that is not ours
 * @returns the label of a cell's column or field, or the letters of its column
 */
export function labelsIn(book: Pick<Book, "names">, definition: WorkbookDefinition | undefined): LabelAt {
  const labels = definition ? labelsOf(definition) : new Map<string, string>();
  const zones = book.names.flatMap(({ name, sheet, range }) => {
    const label = labels.get(name);
    const zone = parseRange(range);
    return label !== undefined && zone ? [{ label, sheet, zone }] : [];
  });
  // The narrowest name says most: one of four corners rather than all of them.
  zones.sort((a, b) => a.zone.right - a.zone.left - (b.zone.right - b.zone.left));
  return (sheet, { row, column }) =>
    zones.find(
      (one) =>
        one.sheet === sheet &&
        one.zone.top <= row &&
        row <= one.zone.bottom &&
        one.zone.left <= column &&
        column <= one.zone.right,
    )?.label ?? `column ${columnLetters(column)}`;
}
