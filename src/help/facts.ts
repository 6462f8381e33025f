/** What a help page says of a function, in words, whether it becomes HTML or plain text. */
import { isFault, limitsInWords, type Fault } from "../engine/faults";
import type { Cell, Matrix } from "../functions/core/cells";
import type { Example, Group, SheetFunction } from "../functions/core/declare";
import { NAMESPACE } from "../formula/namespace";
import type { Parameter } from "../functions/core/parameters";
import { exampleCall } from "./exampleCall";

export const GROUPS: readonly Group[] = [
  "Sightline",
  "Signal",
  "Power",
  "Tuners",
  "Distribution",
  "Bonding and mounting",
  "Estimate",
  "About",
];

/** The name of a function's page: azimuth.html. */
export const pageOf = (name: string): string => `${name.toLowerCase()}.html`;

export const fullName = (name: string): string => `${NAMESPACE}.${name}`;

/** `RIG.AZIMUTH(latitude, longitude, slot, [height_m])`. */
export function syntaxOf({ name, parameters }: SheetFunction): string {
  const words = parameters.map((one) => {
    const repeats = one.shape === "repeated" ? ", …" : "";
    return one.optional ? `[${one.name}${repeats}]` : one.name;
  });
  return `${fullName(name)}(${words.join(", ")})`;
}

/** How the function treats columns. */
export function columnsInWords({ parameters, result }: SheetFunction): string {
  const each = parameters.filter(({ shape }) => shape === "each");
  if (each.length === 0) {
    return result.shape === "cell"
      ? "One call gives one value."
      : "One call takes its lists whole and gives its rows at once.";
  }
  switch (result.shape) {
    case "cell":
      return "Takes single values and whole columns alike: columns are combined row by row, a single value serves all rows, and the result spills. A blank row stays blank, and a row with an error does not spoil its neighbours.";
    case "row":
      return "Takes single values and whole columns alike: each row of the columns gives a row of results, and a row with an error does not spoil its neighbours.";
    default:
      return "Arguments that take one value take a single value here, not a column.";
  }
}

export interface ArgumentFacts {
  readonly name: string;
  readonly help: string;
  readonly takes: string;
  readonly unit: string;
  readonly allowed: string;
  readonly whenLeftOut: string;
}

const TAKES: Readonly<Record<Parameter<unknown>["shape"], string>> = {
  each: "a value or a column",
  list: "a whole list",
  table: "a whole table",
  repeated: "as many as needed",
};

export function argumentFacts(parameter: Parameter<unknown>): ArgumentFacts {
  const { name, help, shape, limits, choices, optional, defaultValue, wanted } = parameter;
  const bounded = limits?.min !== undefined || limits?.max !== undefined || limits?.integer === true;
  return {
    name,
    help,
    takes: TAKES[shape],
    unit: limits?.unit ?? "",
    allowed: choices ? choices.join("; ") : bounded ? limitsInWords({ ...limits, unit: undefined }) : wanted,
    whenLeftOut: !optional
      ? "must be given"
      : defaultValue === undefined
        ? "may be left out"
        : String(defaultValue),
  };
}

export interface FaultFacts {
  readonly when: string;
  readonly code: string;
  readonly message: string;
}

/** A step beyond a limit, far enough to be told from it in the sentence. */
const beyond = (limit: number): number => (Number.isInteger(limit) ? 1 : Math.abs(limit) / 10);

/** Arguments that a parameter must refuse, with what they are. */
function wrongValues({ kind, limits, choices }: Parameter<unknown>): readonly (readonly [string, Cell])[] {
  if (choices) return [["is none of the choices", "something else"]];
  if (kind === "slot") return [["is not an orbital slot", "97X"]];
  if (kind === "date") return [["is not a date", "soon"]];
  if (kind !== "number") return [["is neither text nor a number", true]];
  const wrong: [string, Cell][] = [["is not a number", "ten"]];
  const { min, max, aboveMin, integer } = limits ?? {};
  if (min !== undefined) wrong.push(["is too small", aboveMin ? min : min - beyond(min)]);
  if (max !== undefined) wrong.push(["is too large", max + beyond(max)]);
  if (integer) wrong.push(["is not a whole number", (min ?? 0) + 0.5]);
  return wrong;
}

/** Reads one wrong cell as the function would; a list reads it as its only entry. */
function refusal(parameter: Parameter<unknown>, cell: Cell): Fault | undefined {
  const read =
    parameter.shape === "each"
      ? parameter.read(cell)
      : parameter.shape === "list"
        ? parameter.readWhole([[cell]])
        : undefined;
  const first: unknown = Array.isArray(read) ? read[0] : read;
  return isFault(first) ? first : undefined;
}

/** The error conditions of the arguments, each with the very sentence that the cell shows. */
export function faultFacts({ parameters }: SheetFunction): FaultFacts[] {
  return parameters.flatMap((parameter) =>
    wrongValues(parameter).flatMap(([what, cell]) => {
      const fault = refusal(parameter, cell);
      return fault ? [{ when: `${parameter.name} ${what}`, code: fault.code, message: fault.message }] : [];
    }),
  );
}

/** What holds for every function with arguments. */
export const COMMON_FAULTS: readonly string[] = [
  "An argument that must be given is missing: the cell names it and says what to give.",
  "A number is given as text with a decimal comma: the cell shows how to write it.",
  "A cell that the formula reads holds an error: its sentence is passed on.",
  "Columns differ in length: the rows beyond the shorter one show #N/A and say so.",
  "There are more arguments than the function takes.",
];

export interface ExecutedExample {
  readonly formula: string;
  readonly ours: readonly (readonly string[])[];
  readonly theirs: readonly (readonly string[])[];
  readonly tolerance: string;
  readonly source: string;
}

/** @returns the example with the value that the function gives now, beside the source's */
export function executed(
  one: SheetFunction,
  { formula, result, tolerance, source }: Example,
): ExecutedExample {
  return {
    formula,
    ours: shownRows(one.call(exampleCall(formula).args)),
    theirs: shownRows(result as Cell | Matrix),
    tolerance: tolerance === undefined || tolerance === 0 ? "the same" : `within ${tolerance}`,
    source,
  };
}

/** Digits of a number on a page; the functions themselves give every digit. */
const DIGITS = 8;

export function shownRows(value: Cell | Matrix): string[][] {
  const rows = Array.isArray(value) ? (value as Matrix) : [[value as Cell]];
  return rows.map((row) => row.map(shownCell));
}

function shownCell(cell: Cell): string {
  if (isFault(cell)) return `${cell.code}: ${cell.message}`;
  if (typeof cell === "number") return String(Number(cell.toPrecision(DIGITS)));
  return cell === null ? "" : String(cell);
}

/** The help page of a sheet of the main template. */
export const pageOfSheet = (sheet: string): string => `sheet-${sheet.toLowerCase().replace(/ /g, "-")}.html`;
