/**
 * The user's own cable table, checked row by row. A row that cannot be used
 * spoils only the rows of the job that name it, and only the half (loss or
 * loop resistance) that is at fault.
 */
import { faults, isFault, type Fault } from "../faults";
import type { Ohms } from "../quantity";
import { BUILT_IN_CABLES, builtInCable, type Cable, type CableBook, type LossCoefficients } from "./cable";
import { nameKey } from "./nameKey";

/** A figure that was given, left blank, or could not be read. */
export type Figure = number | null | Fault;

export interface CableRow {
  readonly name: string;
  /** A built-in type whose figures fill the blanks. */
  readonly like: string | null | Fault;
  readonly k1: Figure;
  readonly k2: Figure;
  readonly k0: Figure;
  /** Ohms per 100 m at 20 °C. */
  readonly loop: Figure;
}

/**
 * @param rows the table's rows that bear a name
 * @returns the cables by the key of their name; a name given twice is a fault
 */
export function cableBook(rows: readonly CableRow[]): CableBook {
  const book = new Map<string, Cable | Fault>();
  for (const row of rows) {
    const key = nameKey(row.name);
    book.set(key, book.has(key) ? faults.cableTwice(row.name) : cableOf(row));
  }
  return book;
}

function cableOf(row: CableRow): Cable | Fault {
  if (isFault(row.like)) return row.like;
  const like = row.like === null ? undefined : builtInCable(row.like);
  if (row.like !== null && !like) return faults.cableLikeUnknown(row.name, row.like, BUILT_IN_CABLES);
  return { name: row.name, loss: lossOf(row, like), loop: loopOf(row, like) };
}

function lossOf({ name, k1, k2, k0 }: CableRow, like: Cable | undefined): LossCoefficients | Fault {
  for (const figure of [k1, k2, k0]) if (isFault(figure)) return figure;
  if (k1 === null && k2 === null && k0 === null) {
    return like?.loss ?? faults.cableLacks(name, "k1, k2 and k0");
  }
  if (isFault(k1) || k1 === null) return faults.cableTermBlank(name, "k1");
  if (isFault(k2) || k2 === null) return faults.cableTermBlank(name, "k2");
  if (isFault(k0) || k0 === null) return faults.cableTermBlank(name, "k0");
  return { k1, k2, k0 };
}

const loopOf = ({ name, loop }: CableRow, like: Cable | undefined): Ohms | Fault =>
  loop ?? like?.loop ?? faults.cableLacks(name, "loop resistance");
