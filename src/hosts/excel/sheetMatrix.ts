/** A sheet's cells as the two matrices that Excel takes for a whole range. */
import { parseAddress, rangeOf } from "../../formula/address";
import type { BookCell, BookSheet, Look } from "../../workbooks/book";
import { asTyped } from "./asTyped";

export interface SheetMatrix {
  /** From A1 to the last cell that holds or shows something. */
  readonly range: string;
  /** Formulas and typed values; `null` leaves a cell as it is. */
  readonly formulas: (string | number | boolean | null)[][];
  readonly numberFormats: (string | null)[][];
}

export function sheetMatrix({ cells }: BookSheet, looks: readonly Look[]): SheetMatrix | undefined {
  const places = Object.entries(cells).flatMap(([at, cell]) => {
    const place = parseAddress(at);
    return place ? [{ ...place, cell }] : [];
  });
  if (places.length === 0) return undefined;
  const bottom = places.reduce((most, { row }) => Math.max(most, row), 0);
  const right = places.reduce((most, { column }) => Math.max(most, column), 0);
  const empty = <T>(): (T | null)[][] =>
    Array.from({ length: bottom + 1 }, () => new Array<T | null>(right + 1).fill(null));
  const formulas = empty<string | number | boolean>();
  const numberFormats = empty<string>();
  for (const { row, column, cell } of places) {
    formulas[row]![column] = entered(cell);
    numberFormats[row]![column] = (cell.look === undefined ? undefined : looks[cell.look]?.format) ?? null;
  }
  return { range: rangeOf({ top: 0, left: 0, bottom, right }), formulas, numberFormats };
}

function entered({ value, formula }: BookCell): string | number | boolean | null {
  if (formula !== undefined) return `=${formula}`;
  if (value === undefined || value === "") return null;
  return asTyped(value);
}
