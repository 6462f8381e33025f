/**
 * What every sheet of the reference needs of a job: its filled rows, its lists by name. A figure that cannot be worked
 * out is NaN: the workbook must show an error there, whichever. A blank is "".
 */
import { withItsType } from "./roomTypes";

export type Value = number | string;
export type Row = Readonly<Record<string, Value>>;
export interface Job {
  readonly fields: Row;
  readonly blocks: Readonly<Record<string, readonly Row[]>>;
}

/** What a cell must hold; words of a sentence by a pattern, a time to the minute by a rule of its own. */
export type Expected = Value | RegExp | { readonly about: string; readonly holds: (got: unknown) => boolean };

/**
 * What the cells of a workbook must hold, by their defined names: of a block's column a value for each of its rows
 * from the first, of one cell the value, of columns or cells side by side a list for each row.
 */
export type Cells = Record<string, Expected | readonly Expected[] | readonly (readonly Expected[])[]>;

/** The rows as they were typed. */
export const enteredRows = ({ blocks }: Job, block: string): readonly Row[] => blocks[block] ?? [];
const outlets = new WeakMap<Job, readonly Row[]>();
/** The rows as they count: an outlet has what its type says where its row is blank. */
export function rowsOf(job: Job, block: string): readonly Row[] {
  if (block !== "rooms") return enteredRows(job, block);
  let rows = outlets.get(job);
  if (!rows) outlets.set(job, (rows = enteredRows(job, block).map((row) => withItsType(job, row))));
  return rows;
}
export const isFilled = (row: Row, key: string): boolean => (row[key] ?? "") !== "";
export const filledRows = (job: Job, block: string, key: string): readonly Row[] =>
  rowsOf(job, block).filter((row) => isFilled(row, key));

/** A name is the same in capitals, and with blanks around it. */
export const plain = (name: Value | undefined): string =>
  String(name ?? "")
    .trim()
    .toLowerCase();
export const isSame = (a: Value | undefined, b: Value | undefined): boolean =>
  plain(a) !== "" && plain(a) === plain(b);

/** The first row of that name. */
export const named = (rows: readonly Row[], key: string, name: Value | undefined): Row | undefined =>
  rows.find((row) => isSame(row[key], name));

/** A figure of a row; NaN where there is no row, or no number. */
export const figure = (row: Row | undefined, key: string): number => {
  const value = row?.[key];
  return typeof value === "number" ? value : NaN;
};
/** A figure that counts as 0 where it is blank. */
export const orNought = (row: Row, key: string): number => (isFilled(row, key) ? figure(row, key) : 0);

export const field = ({ fields }: Job, name: string): number => figure(fields, name);
export const word = ({ fields }: Job, name: string): string => String(fields[name] ?? "");

/** One value for each row of a block, a blank one for each empty row. */
export const eachRow = <T extends Expected | readonly Expected[]>(
  rows: readonly Row[],
  key: string,
  of: (row: Row, index: number) => T,
  blank: T,
): T[] => rows.map((row, index) => (isFilled(row, key) ? of(row, index) : blank));

export const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
export const corners = (of: (corner: number) => number): number[] => [0, 1, 2, 3].map(of);

/** What the head of every sheet says of so many checks that fail. */
export const verdictOf = (failed: number): string => {
  if (failed === 0) return "all checks pass";
  return failed === 1 ? "1 check needs attention" : `${failed} checks need attention`;
};
