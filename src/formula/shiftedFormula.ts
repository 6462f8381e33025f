/**
 * A formula moved by rows and columns, as a cell below shares it: Excel stores
 * a formula that was filled down once, with the cells that share it, and the
 * library that reads files hands the others over without a text. Relative
 * references move, absolute ones stay; one that leaves the sheet becomes `#REF!`.
 */
import { LAST_COLUMN, LAST_ROW } from "./address";
import { withReferences } from "./withReferences";
import type { Corner } from "./reference";

export function shiftedFormula(formula: string, rows: number, columns: number): string {
  const moved = (corner: Corner): Corner | undefined => {
    const row = corner.rowFixed || corner.row === undefined ? corner.row : corner.row + rows;
    const column =
      corner.columnFixed || corner.column === undefined ? corner.column : corner.column + columns;
    const lies = isWithin(row, LAST_ROW) && isWithin(column, LAST_COLUMN);
    return lies
      ? { ...corner, ...(row !== undefined && { row }), ...(column !== undefined && { column }) }
      : undefined;
  };
  return withReferences(formula, ({ from, to }) => {
    const first = moved(from);
    const last = to && moved(to);
    return first && (last || !to) ? { from: first, ...(last && { to: last }) } : undefined;
  });
}

const isWithin = (index: number | undefined, last: number): boolean =>
  index === undefined || (index >= 0 && index <= last);
