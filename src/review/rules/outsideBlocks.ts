import { parseAddress, parseRange } from "../../formula/address";
import { AreasFound } from "../../formula/areasFound";
import type { Book, BookSheet } from "../../workbooks/book";
import { blankBook } from "../blankBook";
import type { Finding } from "../finding";
import type { Rule } from "../rule";

export const outsideBlocks: Rule = {
  id: "outside the block",
  reason: "A row under the thin closing row is seen by nobody's sum.",
  example: "Three outlets were typed below the last prepared row of Rooms.",
  find: ({ read, definition, earlier, differences }) => {
    if (!definition) return [];
    // Its words stand where another version had them; only the ends of its blocks tell.
    if (earlier) return belowBlocks(read);
    const fresh = blankBook(definition);
    // A value in the place of a formula is told as that.
    const typedOver = new Set(
      differences.flatMap(({ place }) => (place ? [`${place.sheet}!${place.cell}`] : [])),
    );
    return read.sheets.flatMap((sheet) => {
      const template = fresh.sheets.find(({ name }) => name === sheet.name);
      return template
        ? strays(
            sheet,
            template,
            read.names.filter(({ name, sheet: at }) => at === sheet.name && !name.endsWith("_below")),
            (cell) => typedOver.has(`${sheet.name}!${cell}`),
          )
        : [];
    });
  },
};

/** What lies in a block's closing row or under it. */
const belowBlocks = (read: Book): Finding[] =>
  read.names.flatMap(({ name, sheet, range }) => {
    const zone = name.endsWith("_below") ? parseRange(range) : undefined;
    const cells = read.sheets.find((one) => one.name === sheet)?.cells;
    if (!zone || !cells) return [];
    const filled = Object.entries(cells).filter(([cell, { value, formula }]) => {
      const { row, column } = parseAddress(cell)!;
      const inside = zone.top <= row && row <= zone.bottom && zone.left <= column && column <= zone.right;
      return inside && value !== undefined && value !== "" && formula === undefined;
    });
    const [first] = filled;
    return first ? [stray(sheet, first[0], first[1].value, filled.length)] : [];
  });

function strays(
  sheet: BookSheet,
  template: BookSheet,
  names: readonly { range: string }[],
  isNamed: (cell: string) => boolean,
): Finding[] {
  // Rows are added above the template's own words, columns are not: each may stand as often as it was printed.
  const printed = new Map<string, number>();
  for (const [cell, { value }] of Object.entries(template.cells))
    if (value !== undefined) {
      const key = keyOf(cell, value);
      printed.set(key, (printed.get(key) ?? 0) + 1);
    }
  const zones = new AreasFound(
    names.flatMap(({ range }) => {
      const zone = parseRange(range);
      return zone ? [[{ sheet: sheet.name, zone }, undefined] as const] : [];
    }),
  );
  const rows = new Map<number, { cell: string; value: unknown; count: number }>();
  for (const [cell, { value, formula }] of Object.entries(sheet.cells)) {
    if (value === undefined || value === "" || formula !== undefined || isNamed(cell)) continue;
    const { row, column } = parseAddress(cell)!;
    if (zones.any({ sheet: sheet.name, zone: { top: row, left: column, bottom: row, right: column } }))
      continue;
    const key = keyOf(cell, value);
    const left = printed.get(key) ?? 0;
    if (left > 0) {
      printed.set(key, left - 1);
      continue;
    }
    const known = rows.get(row);
    rows.set(row, {
      cell: known?.cell ?? cell,
      value: known?.value ?? value,
      count: (known?.count ?? 0) + 1,
    });
  }
  return [...rows.values()].map(({ cell, value, count }) => stray(sheet.name, cell, value, count));
}

const keyOf = (cell: string, value: unknown): string =>
  `${parseAddress(cell)!.column} ${typeof value} ${String(value)}`;

const isSpace = (value: unknown): boolean => typeof value === "string" && value.trim() === "";

const stray = (sheet: string, cell: string, value: unknown, count: number): Finding => ({
  weight: "doubtful",
  place: { sheet, cell },
  message: isSpace(value)
    ? "A space was typed outside every block: a longer text left of it no longer runs over and is cut."
    : `“${String(value)}”${count > 1 ? ` and ${count - 1} more ${count === 2 ? "cell" : "cells"} of its row` : ""} ${count > 1 ? "stand" : "stands"} outside every block.`,
  expected: "Rows between the two thin rows of a block.",
  effect: "It is neither counted nor priced.",
  remedy: "Move it into the block: add rows there and enter it again.",
});
