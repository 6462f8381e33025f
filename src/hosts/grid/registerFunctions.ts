/**
 * Registers every sheet function with the spreadsheet library: one call with
 * whole columns, help and choices while typing, our sentence on a fault.
 */
import { faults, isFault, type Fault } from "../../engine/faults";
import type { Argument, Cell, Matrix } from "../../functions/core/cells";
import type { SheetFunction } from "../../functions/core/declare";
import { NAMESPACE } from "../../formula/namespace";
import type { Parameter } from "../../functions/core/parameters";
import type { GridLibrary } from "./library";
import { inSheetWordsAtCell } from "./inSheetWordsAtCell";

/** A cell as the library hands it to a function and takes it back. */
interface GridValue {
  readonly value: number | string | boolean | null;
  readonly message?: string;
}
/** The library's matrices are arrays of columns. */
type GridMatrix = readonly (readonly (GridValue | undefined)[])[];
type GridArgument = GridValue | GridMatrix | undefined;

/** @param library the spreadsheet library; prepareLibrary hands in each once */
export function registerFunctions(library: GridLibrary, functions: readonly SheetFunction[]): void {
  // Excel's word for a wrong argument is not among the library's own errors.
  library.registries.errorTypes.add("#VALUE!");
  const errors = library.registries.errorTypes;
  for (const sheetFunction of functions) {
    library.addFunction(`${NAMESPACE}.${sheetFunction.name}`, {
      description: sheetFunction.summary,
      category: `Rigsheet: ${sheetFunction.group}`,
      args: sheetFunction.parameters.map((parameter) => argumentOf(library, parameter)),
      compute: function (this: unknown, ...args: unknown[]) {
        const outcome = sheetFunction.call(args.map((arg) => fromGrid(arg as GridArgument, errors)));
        return toGrid(inSheetWordsAtCell(this, sheetFunction, outcome)) as never;
      },
    });
  }
}

function argumentOf(
  library: GridLibrary,
  parameter: Parameter<unknown>,
): ReturnType<GridLibrary["helpers"]["arg"]> {
  const { name, optional, defaultValue, choices, shape } = parameter;
  const given = defaultValue === undefined ? "" : `, default=${defaultValue}`;
  const count = shape === "repeated" ? ", repeating" : optional ? `, optional${given}` : "";
  return library.helpers.arg(
    `${name} (any, range<any>${count})`,
    argumentHelp(parameter),
    choices?.map((value) => ({ value, label: value })),
  );
}

/** The help of one argument with its unit, limits and default. */
export function argumentHelp({ help, limits, defaultValue, shape }: Parameter<unknown>): string {
  const range =
    limits?.min !== undefined && limits.max !== undefined ? ` ${limits.min} to ${limits.max}` : "";
  const unit = limits?.unit ? ` ${limits.unit}` : "";
  const bounds = range || unit ? ` [${`${range}${unit}`.trim()}]` : "";
  const whole = shape === "list" || shape === "table" ? " Takes the whole list at once." : "";
  const given = defaultValue === undefined ? "" : ` Default: ${defaultValue}.`;
  return `${help}${bounds}${whole}${given}`;
}

function fromGrid(argument: GridArgument, errors: ReadonlySet<string>): Argument {
  if (argument === undefined) return null;
  if (!Array.isArray(argument)) return cellFromGrid(argument as GridValue, errors);
  const columns = argument as GridMatrix;
  const rows = columns[0]?.length ?? 0;
  return Array.from({ length: rows }, (_, row) => columns.map((column) => cellFromGrid(column[row], errors)));
}

function cellFromGrid(cell: GridValue | undefined, errors: ReadonlySet<string>): Cell {
  const value = cell?.value ?? null;
  if (typeof value === "string" && errors.has(value)) return faultFromGrid(value, cell?.message);
  return value;
}

function faultFromGrid(code: string, message: string | undefined): Fault {
  if (message && (code === "#VALUE!" || code === "#N/A")) return { kind: "fault", code, message };
  return faults.errorCell("A cell that this formula reads", code);
}

function toGrid(outcome: Cell | Matrix): GridValue | GridValue[][] {
  if (!Array.isArray(outcome)) return cellToGrid(outcome as Cell);
  const rows = outcome as Matrix;
  const width = rows[0]?.length ?? 0;
  return Array.from({ length: width }, (_, column) => rows.map((row) => cellToGrid(row[column] ?? "")));
}

const cellToGrid = (cell: Cell): GridValue =>
  isFault(cell) ? { value: cell.code, message: cell.message } : { value: cell ?? "" };
