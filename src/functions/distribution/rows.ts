/**
 * A table read by its columns: each cell by the parameter of its column, so
 * that a row comes out typed, or with the first fault that is in it.
 */
import { faults, isFault, type Fault } from "../../engine/faults";
import { isBlank, type Cell, type Matrix } from "../core/cells";
import { text, type EachParameter } from "../core/parameters";

/** Columns by name, in their order on the sheet. */
export type Columns = Readonly<Record<string, EachParameter<unknown>>>;

type ValueOf<P> = P extends EachParameter<infer T> ? T : never;
export type ValuesOf<C extends Columns> = { readonly [K in keyof C]: ValueOf<C[K]> };

export interface ReadRow<C extends Columns> {
  /** Of the table, from 0. */
  readonly index: number;
  /** Where there is a fault, what could not be read is undefined. */
  readonly values: ValuesOf<C>;
  readonly fault: Fault | null;
}

/** A column that serves other readers of the sheet. */
export const IGNORED: EachParameter<undefined> = {
  ...text({ name: "ignored", help: "" }),
  optional: true,
  read: () => undefined,
};

/** Price, supplier, priced on, valid until. */
export const PRICE = { price: IGNORED, supplier: IGNORED, priced: IGNORED, until: IGNORED } as const;

/**
 * @param table as it stands on a sheet; columns at its end may be left out and are then blank
 * @returns its rows that are not blank
 */
export function readTable<const C extends Columns>(
  name: string,
  table: Matrix | undefined,
  columns: C,
): ReadRow<C>[] | Fault {
  return (
    tooWide(name, table, columns) ??
    (table ?? []).flatMap((cells, index) => readRow(cells, index, columns) ?? [])
  );
}

/** Columns that a sentence names before it only counts them. */
const MOST_NAMED = 9;

/** @returns a fault where a table has more columns than it is read by */
export function tooWide(name: string, table: Matrix | undefined, columns: Columns): Fault | null {
  const names = Object.values(columns).map((column) => column.name);
  const width = table?.[0]?.length ?? 0;
  if (width <= names.length) return null;
  const shown = names.length > MOST_NAMED ? "" : `: ${names.join(", ")}`;
  return faults.badShape(name, table!.length, width, `at most ${names.length} columns${shown}`);
}

/** @returns one row; null where it is blank */
export function readRow<const C extends Columns>(
  cells: readonly Cell[],
  index: number,
  columns: C,
): ReadRow<C> | null {
  const values: Record<string, unknown> = {};
  let fault: Fault | null = null;
  let isEmpty = true;
  Object.entries(columns).forEach(([key, column], place) => {
    const cell = cells[place] ?? null;
    const blank = isBlank(cell);
    if (!blank && column !== IGNORED) isEmpty = false;
    const value = blank && !column.optional ? faults.missing(column.name, column.wanted) : column.read(cell);
    if (isFault(value)) fault ??= value;
    else values[key] = value;
  });
  return isEmpty ? null : { index, values: values as ValuesOf<C>, fault };
}
