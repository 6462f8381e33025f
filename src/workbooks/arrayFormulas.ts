/**
 * Which native formulas have to be stored as arrays. In a plain one Excel cuts
 * a range down to the cell in the formula's own row wherever it wants one value;
 * our engine never does, so a formula that would be cut is stored as a dynamic
 * array, as Excel itself stores what is typed there. So is one that calls what
 * may return cells: in a plain one Excel shows an `@` before it (Microsoft,
 * "Implicit intersection operator"). What is not known, or not understood, is
 * stored as an array, which is never wrong.
 */
import { parseRange } from "../formula/address";
import { callsUs } from "../formula/callsUs";
import { functionsIn } from "../formula/functionsIn";
import { isCut, type IsMany } from "../formula/isCut";
import { zoneOf } from "../formula/reference";
import type { Book, BookCell } from "./book";

/** Each gives cells wherever it stands, of which a plain formula takes one; IF and CHOOSE only where they are handed several. */
const GIVES_CELLS: ReadonlySet<string> = new Set(["INDEX", "INDIRECT", "OFFSET"]);

/** The reach of an array with one result. */
const ONE_CELL = { rows: 1, columns: 1 } as const;

/** Marks the formulas of a book that have one result and are arrays all the same. */
export function markArrays({ names, sheets }: Pick<Book, "names" | "sheets">): void {
  const arrayOf = arrayFormulas({ names });
  for (const { cells } of sheets) {
    for (const cell of Object.values(cells)) {
      const spill = cell.formula !== undefined && !cell.spill ? arrayOf(cell.formula) : undefined;
      if (spill) cell.spill = spill;
    }
  }
}

/**
 * @param names the workbook's names
 * @returns what to say of a formula whose result fills one cell: the reach of
 *   an array, or undefined for a plain formula and for a call of ours, which is
 *   stored as an array anyway
 */
export function arrayFormulas({ names }: Pick<Book, "names">): (formula: string) => BookCell["spill"] {
  const ranges = new Map(names.map(({ name, range }) => [name.toUpperCase(), range]));
  const isMany: IsMany = (node) => {
    const zone =
      node.kind === "name" ? parseRange(ranges.get(node.name.toUpperCase()) ?? "") : zoneOf(node.cells);
    return !zone || zone.top < zone.bottom || zone.left < zone.right;
  };
  const isArray = (formula: string): boolean => mayReturnCells(formula) || isCut(formula, isMany);
  return (formula) => (callsUs(formula) || !isArray(formula) ? undefined : ONE_CELL);
}

const mayReturnCells = (formula: string): boolean =>
  [...functionsIn(formula)].some((name) => GIVES_CELLS.has(name));
