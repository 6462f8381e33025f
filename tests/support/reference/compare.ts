/** Holds the cells of a computed workbook to what the reference says of them. */
import { address, parseAddress, parseRange } from "../../../src/formula/address";
import { isBookError, type Book, type BookResult, type BookSheet } from "../../../src/workbooks/book";
import type { Cells, Expected } from "./job";

/** Of a computed figure so much may be noise: a share of its size, or so much of something near 0. */
const NOISE = 1e-9;

export interface Compared {
  /** Sheet!address of every cell that was compared. */
  readonly cells: ReadonlySet<string>;
  /** Names of which a cell was held to a pattern or a rule, not to a value. */
  readonly loosely: ReadonlySet<string>;
  /** A sentence for each cell that differs. */
  readonly differences: readonly string[];
}

const shown = (value: BookResult | undefined): string =>
  isBookError(value) ? `${value.error} ${value.message ?? ""}` : JSON.stringify(value ?? "");

function inWords(expected: Expected): string {
  if (Number.isNaN(expected)) return "an error";
  if (expected instanceof RegExp) return String(expected);
  return typeof expected === "object" ? expected.about : JSON.stringify(expected);
}

function isEqual(expected: Expected, got: BookResult | undefined, within: number): boolean {
  if (typeof expected === "number") {
    if (Number.isNaN(expected)) return isBookError(got);
    const allowed = Math.max(within, NOISE * Math.max(1, Math.abs(expected)));
    return typeof got === "number" && Math.abs(got - expected) <= allowed;
  }
  if (expected instanceof RegExp) return typeof got === "string" && expected.test(got);
  if (typeof expected === "object") return expected.holds(got);
  return (got ?? "") === expected;
}

const isList = (
  value: Expected | readonly Expected[] | readonly (readonly Expected[])[],
): value is readonly Expected[] => Array.isArray(value);

/** A cell without a name goes by its sheet and address. */
function placeAt(text: string): { sheet: string; range: string } | undefined {
  const [sheet, range] = text.split("!");
  return range === undefined ? undefined : { sheet: sheet!, range };
}

const ROW_NAMES = ["outlet", "id", "name", "slot", "where", "kind", "what", "cause"];
/** The words beside a cell: of a block its column's head and its row's name, else what stands first in its row. */
function labelOf(book: Book, sheet: BookSheet, name: string, top: number | undefined, at: string): string {
  const { row, column } = parseAddress(at)!;
  const text = (where: string): string => {
    const found = sheet.cells[where]?.value ?? sheet.results[where] ?? "";
    return isBookError(found) ? found.error : String(found);
  };
  if (top === undefined) return text(address(row, 0));
  const block = name.slice(0, name.indexOf("_"));
  const named = ROW_NAMES.map((key) => book.names.find((one) => one.name === `${block}_${key}`)).find(
    Boolean,
  );
  const zone = named && parseRange(named.range);
  return `${text(address(top - 1, column))}${zone ? ` of ${text(address(row, zone.left))}` : ""}`;
}

/** @param tolerances of figures whose second source is not exact, by name */
export function compare(
  book: Book,
  cells: Cells,
  tolerances: Readonly<Record<string, number>> = {},
): Compared {
  const compared = new Set<string>();
  const loosely = new Set<string>();
  const differences: string[] = [];
  for (const [name, values] of Object.entries(cells)) {
    const place = book.names.find((one) => one.name === name) ?? placeAt(name);
    const zone = place && parseRange(place.range);
    const sheet = book.sheets.find((one) => one.name === place?.sheet);
    if (!zone || !sheet) {
      differences.push(`${name}: no such name in the workbook`);
      continue;
    }
    const table: readonly (readonly Expected[])[] = isList(values)
      ? values.map((row: Expected | readonly Expected[]) => (isList(row) ? row : [row]))
      : [[values as Expected]];
    // A block's names begin in the thin row of its formulas and end in the closing one: both show nothing.
    const isBlock = zone.bottom - zone.top + 1 > table.length;
    for (let row = zone.top; row <= zone.bottom; row++) {
      for (let column = zone.left; column <= zone.right; column++) {
        const at = address(row, column);
        const expected = table[row - zone.top - (isBlock ? 1 : 0)]?.[column - zone.left] ?? "";
        const got = sheet.results[at] ?? sheet.cells[at]?.value;
        compared.add(`${sheet.name}!${at}`);
        if (typeof expected === "object") loosely.add(name);
        if (!isEqual(expected, got, tolerances[name] ?? 0))
          differences.push(
            `${sheet.name}!${at}, ${name} (${labelOf(book, sheet, name, isBlock ? zone.top : undefined, at)}): expected ${inWords(expected)}, got ${shown(got)}`,
          );
      }
    }
  }
  return { cells: compared, loosely, differences };
}

/** Sheet!address of every cell that a formula fills. */
export const calculatedCells = (book: Book): string[] =>
  book.sheets.flatMap(({ name, cells, results }) =>
    [
      ...new Set([
        ...Object.keys(results),
        ...Object.keys(cells).filter((at) => cells[at]!.formula !== undefined),
      ]),
    ].map((at) => `${name}!${at}`),
  );
