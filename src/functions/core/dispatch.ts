/**
 * Calls a declared function with what a host hands over: reads the arguments,
 * combines columns row by row as a spreadsheet's own functions do, and keeps a
 * fault in the cell where it belongs.
 */
import { faults, isFault, type Fault } from "../../engine/faults";
import { isBlank, isMatrix, type Argument, type Cell, type Matrix } from "./cells";
import type { Declaration } from "./declare";
import type { EachParameter, Parameter } from "./parameters";

/** Stands for an omitted argument; told from a blank cell by identity. */
const OMITTED: Matrix = [[null]];

interface Each {
  readonly parameter: EachParameter<unknown>;
  readonly index: number;
  readonly matrix: Matrix;
}

interface Size {
  readonly rows: number;
  readonly columns: number;
}

/**
 * @param declaration the function
 * @param args what the host hands over: a cell or a matrix of rows for each
 *   parameter in order; trailing ones may be left out, `null` is an omitted one
 * @returns one cell, or a matrix of rows that spills
 */
export function dispatch(declaration: Declaration, args: readonly Argument[]): Cell | Matrix {
  const parameters: readonly Parameter<unknown>[] = declaration.parameters;
  if (args.length > parameters.length && parameters.at(-1)?.shape !== "repeated") {
    return faults.tooManyArguments(declaration.name, args.length, parameters.length);
  }
  try {
    return evaluate(
      declaration,
      parameters,
      parameters.map((_, index) => asMatrix(args[index])),
      args,
    );
  } catch (error) {
    // Only a mistake of ours gets here; it must not take the sheet down with it.
    return faults.broken(declaration.name, error instanceof Error ? error.message : String(error));
  }
}

function asMatrix(argument: Argument | undefined): Matrix {
  if (argument === undefined || argument === null) return OMITTED;
  if (!isMatrix(argument)) return [[argument]];
  return argument.length === 0 || argument[0]!.length === 0 ? OMITTED : argument;
}

function evaluate(
  declaration: Declaration,
  parameters: readonly Parameter<unknown>[],
  matrices: readonly Matrix[],
  args: readonly Argument[],
): Cell | Matrix {
  const ragged = matrices.findIndex((matrix) => matrix.some((row) => row.length !== widthOf(matrix)));
  if (ragged >= 0) return faults.ragged(parameters[ragged]!.name);
  const whole = readWholeArguments(parameters, matrices, args);
  if (isFault(whole)) return whole;

  const each = parameters.flatMap((parameter, index): Each[] =>
    parameter.shape === "each" ? [{ parameter, index, matrix: matrices[index]! }] : [],
  );
  const size: Size = {
    rows: Math.max(1, ...each.map(({ matrix }) => matrix.length)),
    columns: Math.max(1, ...each.map(({ matrix }) => widthOf(matrix))),
  };
  const misshapen = shapeFault(declaration, each);
  if (misshapen) return misshapen;

  const blankMayPass = each.length === parameters.length || size.rows > 1 || size.columns > 1;
  const at = (row: number, column: number): unknown => {
    if (blankMayPass && each.length > 0 && isBlankAt(each, row, column, size)) return "";
    const values = [...whole];
    for (const one of each) {
      const value = readOne(one, row, column, size);
      if (isFault(value)) return value;
      values[one.index] = value;
    }
    return declaration.compute(...(values as never[]));
  };
  const cell = (outcome: unknown): Cell => checked(declaration, outcome);

  switch (declaration.result.shape) {
    case "cell":
      if (size.rows === 1 && size.columns === 1) return cell(at(0, 0));
      return grid(size, (row, column) => cell(at(row, column)));
    case "row":
      return Array.from({ length: size.rows }, (_, row) => {
        const outcome = at(row, 0);
        const width = declaration.result.columns?.length ?? 1;
        return Array.isArray(outcome)
          ? outcome.map(cell)
          : Array.from({ length: width }, () => cell(outcome));
      });
    case "column": {
      const outcome = at(0, 0);
      if (!Array.isArray(outcome)) return cell(outcome);
      return listIsRow(parameters, matrices) ? [outcome.map(cell)] : outcome.map((value) => [cell(value)]);
    }
    case "table": {
      const outcome = at(0, 0);
      return Array.isArray(outcome) ? outcome.map((row: unknown[]) => row.map(cell)) : cell(outcome);
    }
  }
}

const widthOf = (matrix: Matrix): number => matrix[0]!.length;

const grid = ({ rows, columns }: Size, make: (row: number, column: number) => Cell): Matrix =>
  Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (_, column) => make(row, column)));

/** The values of the list, table and repeated arguments in their places; the others are left undefined. */
function readWholeArguments(
  parameters: readonly Parameter<unknown>[],
  matrices: readonly Matrix[],
  args: readonly Argument[],
): unknown[] | Fault {
  const values: unknown[] = [];
  for (const [index, parameter] of parameters.entries()) {
    values.push(undefined);
    if (parameter.shape === "each") continue;
    if (parameter.shape === "repeated") {
      values[index] = parameter.readRest(args.slice(index));
      continue;
    }
    const matrix = matrices[index]!;
    if (matrix === OMITTED) {
      if (parameter.optional) continue;
      return faults.missing(parameter.name, parameter.wanted);
    }
    const value = parameter.readWhole(matrix);
    if (isFault(value)) return value;
    values[index] = value;
  }
  return values;
}

/** Only a function with one value a row can be stretched over columns or over both. */
function shapeFault({ result }: Declaration, each: readonly Each[]): Fault | undefined {
  if (result.shape === "cell") return undefined;
  const columnAllowed = result.shape === "row";
  const culprit = each.find(({ matrix }) => widthOf(matrix) > 1 || (matrix.length > 1 && !columnAllowed));
  return (
    culprit &&
    faults.badShape(
      culprit.parameter.name,
      culprit.matrix.length,
      widthOf(culprit.matrix),
      columnAllowed ? "a value or one column" : "a single value",
    )
  );
}

/** A 1-row or 1-column argument is stretched; `undefined` lies beyond a shorter column. */
const cellAt = (matrix: Matrix, row: number, column: number): Cell | undefined =>
  matrix[matrix.length === 1 ? 0 : row]?.[widthOf(matrix) === 1 ? 0 : column];

/**
 * A place is blank when every required argument that changes from row to row
 * is blank there; single values that serve all rows do not make a row count.
 */
function isBlankAt(each: readonly Each[], row: number, column: number, size: Size): boolean {
  const required = each.filter(({ parameter }) => !parameter.optional);
  const counted = required.length > 0 ? required : each;
  const down = size.rows > 1 ? counted.filter(({ matrix }) => matrix.length > 1) : [];
  const across = size.columns > 1 ? counted.filter(({ matrix }) => widthOf(matrix) > 1) : [];
  const deciding = down.length > 0 ? down : across.length > 0 ? across : counted;
  return deciding.every(({ matrix }) => isBlank(cellAt(matrix, row, column)));
}

function readOne({ parameter, matrix }: Each, row: number, column: number, size: Size): unknown {
  const cell = cellAt(matrix, row, column);
  if (cell === undefined) {
    return matrix.length > 1 && matrix.length < size.rows
      ? faults.shortColumn(parameter.name, matrix.length, size.rows)
      : faults.shortColumn(parameter.name, widthOf(matrix), size.columns);
  }
  if (isBlank(cell) && !parameter.optional) return faults.missing(parameter.name, parameter.wanted);
  return parameter.read(cell);
}

/** The result of a list function lies as its first list does. */
function listIsRow(parameters: readonly Parameter<unknown>[], matrices: readonly Matrix[]): boolean {
  const first = matrices[parameters.findIndex(({ shape }) => shape === "list")];
  return first !== undefined && first.length === 1 && widthOf(first) > 1;
}

function checked(declaration: Declaration, outcome: unknown): Cell {
  if (outcome === null) return "";
  if (typeof outcome === "number") {
    if (!Number.isFinite(outcome)) return faults.noResult(declaration.name);
    return outcome === 0 ? 0 : outcome;
  }
  if (typeof outcome === "string" || typeof outcome === "boolean" || isFault(outcome)) return outcome;
  return faults.broken(declaration.name, "a result of no known kind");
}
