/**
 * What passes between a spreadsheet and our functions, whichever the host.
 * A matrix is an array of rows. Hosts convert to and from this at their edge.
 */
import type { Fault } from "../../engine/faults";

/** One cell: `null` is blank or an omitted argument; `""` counts as blank too. */
export type Cell = number | string | boolean | null | Fault;
export type Matrix = readonly (readonly Cell[])[];
/** An argument as a host hands it over. */
export type Argument = Cell | Matrix;

export const isMatrix = (value: Argument | undefined): value is Matrix => Array.isArray(value);

export const isBlank = (cell: Cell | undefined): cell is null | "" | undefined =>
  cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "");
