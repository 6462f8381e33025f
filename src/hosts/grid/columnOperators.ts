/**
 * Makes plain operators, IF and IFERROR over whole columns faster.
 *
 * The library (19.3.7) works out for every row again which argument is which,
 * and makes several lists for it. Here a call whose arguments are single values
 * and columns of one height goes straight down the rows with the library's own
 * function. Every other call, and every row whose answer is not a plain value,
 * is left to the library's own way. A condition that is an error in one row is an
 * error in that row, as in Excel; the library's own IF gives it for the whole column.
 */
import type { GridLibrary } from "./library";

interface Value {
  readonly value: unknown;
  readonly message?: string;
}
type Column = readonly (Value | undefined)[];
type Compute = (this: unknown, ...args: unknown[]) => unknown;

/** What the library knows of a function beside its typed interface. */
interface Registry {
  readonly mapping: Record<string, Compute>;
  get(name: string): {
    readonly args: readonly { readonly acceptErrors?: boolean }[];
    readonly compute: Compute;
  };
}

/** Each answers for a row from the row's values alone. */
const BY_ROW = ["ADD", "MINUS", "MULTIPLY", "DIVIDE", "EQ", "NE", "GT", "GTE", "LT", "LTE"];
/** These do so when their first argument is a column; otherwise they pass their others on whole. */
const BY_FIRST = ["IF", "IFERROR"];

/** Goes before the library's own functions; prepareLibrary sees to it that this is done once. */
export function registerColumnOperators(library: GridLibrary): void {
  const { mapping, get } = library.registries.functionRegistry as unknown as Registry;
  const errors = library.registries.errorTypes;
  for (const name of [...BY_ROW, ...BY_FIRST]) {
    const original = mapping[name]!;
    const { args, compute } = get.call(library.registries.functionRegistry, name);
    const refuses = args.map(({ acceptErrors }) => !acceptErrors);
    const isError = (cell: unknown): boolean => {
      const value = (cell as Value | undefined)?.value;
      return typeof value === "string" && errors.has(value);
    };
    mapping[name] = function (this: unknown, ...given: unknown[]) {
      const columns = given.map(columnOf);
      const rows = heightOf(given, columns);
      if (rows === undefined || (BY_FIRST.includes(name) && !columns[0])) return original.apply(this, given);
      const answers = new Array<unknown>(rows);
      const inRow = given.map(singleOf);
      for (let row = 0; row < rows; row++) {
        let refused = -1;
        // The first of them in the end.
        for (let index = inRow.length - 1; index >= 0; index--) {
          const column = columns[index];
          if (column) inRow[index] = column[row];
          if (refuses[index] && isError(inRow[index])) refused = index;
        }
        answers[row] =
          refused >= 0 ? inRow[refused] : (answer.call(this, inRow) ?? original.apply(this, inRow));
      }
      return [answers];
    };
    /** Undefined for what the library finishes: whatever has a message, or is thrown. */
    function answer(this: unknown, inRow: readonly unknown[]): unknown {
      try {
        const result = compute.apply(this, inRow as unknown[]);
        if (typeof result !== "object" || result === null) return { value: result };
        return "value" in result && (result as Value).message === undefined ? result : undefined;
      } catch {
        return undefined;
      }
    }
  }
}

const isMatrix = (given: unknown): given is Column[] => Array.isArray(given) && Array.isArray(given[0]);
/** The rows of an argument that is one column of several. */
const columnOf = (given: unknown): Column | undefined =>
  isMatrix(given) && given.length === 1 && given[0]!.length > 1 ? given[0] : undefined;
const singleOf = (given: unknown): unknown =>
  isMatrix(given) && given.length === 1 && given[0]!.length === 1 ? given[0]![0] : given;

/** Undefined when an argument is anything but a single value or a column, or columns differ. */
function heightOf(given: readonly unknown[], columns: readonly (Column | undefined)[]): number | undefined {
  let height: number | undefined;
  for (const [index, column] of columns.entries()) {
    if (!column) {
      if (isMatrix(singleOf(given[index]))) return undefined;
    } else if (column.length !== (height ??= column.length)) return undefined;
  }
  return height;
}
