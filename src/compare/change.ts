/** What differs between two revisions of a job, in the template's own words. */
import type { JobInputs } from "../workbooks/definition";

export type Value = number | string;
export type Row = Readonly<Record<string, Value>>;

/** One cell that differs; null where it is blank. */
export interface CellChange {
  readonly label: string;
  readonly before: string | null;
  readonly after: string | null;
}

export interface Change {
  readonly kind: "field" | "added" | "removed" | "changed" | "renamed" | "formula";
  readonly sheet: string;
  /** The heading of the fields or of the table. */
  readonly part: string;
  /** The row's own name (outlet, id, name), or the field's label. */
  readonly row: string;
  readonly cells: readonly CellChange[];
}

/** An input that changed, and how the older job takes it on. */
export interface InputChange extends Change {
  /** Name of the field, or of the block. */
  readonly of: string;
  /** Of a new name: the column that is called so. */
  readonly column?: string;
  /** Of a row: as it was under today's names, and as it is. */
  readonly before?: Row;
  readonly after?: Row;
  readonly applied: (job: JobInputs) => JobInputs;
}
