/**
 * Arguments as Excel hands them to a custom function, and what it takes back.
 * Every argument is declared as a matrix of any kind: a column comes in one
 * call, an omitted one as `null`, and an error cell as an object with a code.
 */
import { faults, isFault } from "../../engine/faults";
import type { Argument, Cell, Matrix } from "../../functions/core/cells";

/** What Excel takes back: rows of values, an error object in any single cell. */
export type ExcelMatrix = (number | string | boolean | CustomFunctions.Error)[][];

/** An error cell, as the custom-functions runtime or as Excel's data types write it. */
interface ExcelErrorCell {
  readonly code?: unknown;
  readonly message?: unknown;
  readonly basicValue?: unknown;
}

export function fromExcel(argument: unknown): Argument {
  if (!Array.isArray(argument)) return cellFromExcel(argument);
  return argument.map((row: unknown) => (Array.isArray(row) ? row.map(cellFromExcel) : [cellFromExcel(row)]));
}

function cellFromExcel(value: unknown): Cell {
  if (value === null || value === undefined) return null;
  if (typeof value === "number" || typeof value === "string" || typeof value === "boolean") return value;
  const { code, message, basicValue } = value as ExcelErrorCell;
  const shown = typeof code === "string" ? code : typeof basicValue === "string" ? basicValue : "#VALUE!";
  if (typeof message === "string" && message !== "" && (shown === "#VALUE!" || shown === "#N/A")) {
    return { kind: "fault", code: shown, message };
  }
  return faults.errorCell("A cell that this formula reads", shown);
}

export function toExcel(outcome: Cell | Matrix): ExcelMatrix {
  if (!Array.isArray(outcome)) return [[cellToExcel(outcome as Cell)]];
  const rows = outcome as Matrix;
  if (rows.length === 0) return [[""]];
  // Excel refuses rows of different lengths.
  const width = Math.max(1, ...rows.map((row) => row.length));
  return rows.map((row) => Array.from({ length: width }, (_, column) => cellToExcel(row[column] ?? null)));
}

function cellToExcel(cell: Cell): ExcelMatrix[number][number] {
  if (!isFault(cell)) return cell ?? "";
  const { notAvailable, invalidValue } = CustomFunctions.ErrorCode;
  return new CustomFunctions.Error(cell.code === "#N/A" ? notAvailable : invalidValue, cell.message);
}
