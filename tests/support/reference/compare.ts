/** Holds the cells of a computed workbook to what the reference says of them. */
import { address, parseRange } from "../../../src/workbooks/address";
import { isBookError, type Book, type BookResult } from "../../../src/workbooks/book";
import type { Cells, Expected } from "./job";

/** Decimals of a computed figure that may be noise, as a share of its size. */
const NOISE = 1e-9;

export interface Compared {
  /** Sheet!address of every cell that was compared. */
  readonly cells: ReadonlySet<string>;
  /** A sentence for each cell that differs. */
  readonly differences: readonly string[];
}

const shown = (value: BookResult | undefined): string =>
  isBookError(value) ? `${value.error} ${value.message ?? ""}` : JSON.stringify(value ?? "");

const inWords = (expected: Expected): string =>
  Number.isNaN(expected) ? "an error" : expected instanceof RegExp ? String(expected) : JSON.stringify(expected);

function isEqual(expected: Expected, got: BookResult | undefined, within: number): boolean {
  if (typeof expected === "number") {
    if (Number.isNaN(expected)) return isBookError(got);
    return typeof got === "number" && Math.abs(got - expected) <= Math.max(within, NOISE * Math.max(1, Math.abs(expected)));
  }
  if (expected instanceof RegExp) return typeof got === "string" && expected.test(got);
  if (typeof expected === "object") return expected.holds(got);
  return (got ?? "") === expected;
}

/** A cell without a name goes by its sheet and address. */
function placeAt(text: string): { sheet: string; range: string } | undefined {
  const [sheet, range] = text.split("!");
  return range === undefined ? undefined : { sheet: sheet!, range };
}

/** @param tolerances of figures whose second source is not exact, by name */
export function compare(book: Book, cells: Cells, tolerances: Readonly<Record<string, number>> = {}): Compared {
  const compared = new Set<string>();
  const differences: string[] = [];
  for (const [name, values] of Object.entries(cells)) {
    const place = book.names.find((one) => one.name === name) ?? placeAt(name);
    const zone = place && parseRange(place.range);
    const sheet = book.sheets.find((one) => one.name === place?.sheet);
    if (!zone || !sheet) {
      differences.push(`${name}: no such name in the workbook`);
      continue;
    }
    const table: readonly (readonly Expected[])[] = (Array.isArray(values) ? values : [values]).map(
      (row: Expected | readonly Expected[]) => (Array.isArray(row) ? (row as readonly Expected[]) : [row as Expected]),
    );
    // A block's names begin in the thin row of its formulas and end in the closing one: both show nothing.
    const isBlock = zone.bottom - zone.top + 1 > table.length;
    for (let row = zone.top; row <= zone.bottom; row++) {
      for (let column = zone.left; column <= zone.right; column++) {
        const at = address(row, column);
        const expected = table[row - zone.top - (isBlock ? 1 : 0)]?.[column - zone.left] ?? "";
        const got = sheet.results[at] ?? sheet.cells[at]?.value;
        compared.add(`${sheet.name}!${at}`);
        if (!isEqual(expected, got, tolerances[name] ?? 0))
          differences.push(
            `${sheet.name}!${at} (${name}, row ${row - zone.top}): expected ${inWords(expected)}, got ${shown(got)}`,
          );
      }
    }
  }
  return { cells: compared, differences };
}

/** Sheet!address of every cell that a formula fills. */
export const calculatedCells = (book: Book): string[] =>
  book.sheets.flatMap(({ name, cells, results }) =>
    [...new Set([...Object.keys(results), ...Object.keys(cells).filter((at) => cells[at]!.formula !== undefined)])].map(
      (at) => `${name}!${at}`,
    ),
  );
