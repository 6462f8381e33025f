/**
 * The kinds of argument that a function can declare. Each knows its help text,
 * its unit and limits, and how to read one cell (or a whole range) into what
 * the engine takes, or into a fault. Reading refuses; it never repairs.
 */
import { faults, isFault, type Fault, type Limits } from "../../engine/faults";
import { isBlank, type Argument, type Cell, type Matrix } from "./cells";

interface Described {
  /** As it is shown in help and sentences: lower case, underscores. */
  readonly name: string;
  /** One sentence for the function's help. */
  readonly help: string;
}

export type ParameterKind = "number" | "text" | "slot" | "date" | "table";

interface Common extends Described {
  readonly kind: ParameterKind;
  readonly optional: boolean;
  /** Shown in the help as "default"; what `read` gives for a blank. */
  readonly defaultValue?: number | string;
  readonly limits?: Limits;
  readonly choices?: readonly string[];
  /** What to give, for the sentence about a missing value. */
  readonly wanted: string;
}

/** A parameter that takes one value a row; a column is combined row by row. */
export interface EachParameter<T> extends Common {
  readonly shape: "each";
  readonly read: (cell: Cell) => T | Fault;
}

/** A parameter that takes a whole list or table at once. */
export interface WholeParameter<T> extends Common {
  readonly shape: "list" | "table";
  readonly readWhole: (matrix: Matrix) => T | Fault;
}

/** The last parameter, when it may be given any number of times. */
export interface RepeatedParameter<T> extends Common {
  readonly shape: "repeated";
  readonly readRest: (args: readonly Argument[]) => T;
}

export type Parameter<T> = EachParameter<T> | WholeParameter<T> | RepeatedParameter<T>;

/** The values that a tuple of parameters hands to the body. */
export type ValuesOf<P extends readonly Parameter<unknown>[]> = {
  [K in keyof P]: P[K] extends Parameter<infer T> ? T : never;
};

/** One entry of a list argument: blank rows stay in place as `null`. */
export type ListEntry<T> = T | null | Fault;

export interface NumberSpec extends Described, Limits {
  /** Ends the sentence of an out-of-range fault; no full stop. */
  readonly advice?: string;
}

export function number(spec: NumberSpec): EachParameter<number> {
  const { name, help, advice } = spec;
  const limits: Limits = {
    min: spec.min,
    max: spec.max,
    aboveMin: spec.aboveMin,
    integer: spec.integer,
    unit: spec.unit,
  };
  return {
    shape: "each",
    kind: "number",
    optional: false,
    name,
    help,
    limits,
    wanted: `a number${spec.unit ? ` in ${spec.unit}` : ""}`,
    read: (cell) => {
      if (isFault(cell)) return cell;
      if (typeof cell === "string") {
        const comma = /^\s*([+-]?\d+),(\d+)\s*$/.exec(cell);
        if (comma) return faults.decimalComma(name, cell, `${comma[1]}.${comma[2]}`);
      }
      if (typeof cell !== "number" || !Number.isFinite(cell)) return faults.notANumber(name, cell, limits);
      if (
        (spec.min !== undefined && (spec.aboveMin ? cell <= spec.min : cell < spec.min)) ||
        (spec.max !== undefined && cell > spec.max) ||
        (spec.integer && !Number.isInteger(cell))
      ) {
        return faults.outOfRange(name, cell, limits, advice);
      }
      return cell === 0 ? 0 : cell;
    },
  };
}

export interface TextSpec extends Described {
  /** What to give, for the sentence about a missing value: "a cable's name". */
  readonly wanted?: string;
}

/** Text, trimmed. A number is taken as text: people name a room or a branch 12. */
export function text({ name, help, wanted = "text" }: TextSpec): EachParameter<string> {
  return {
    shape: "each",
    kind: "text",
    optional: false,
    name,
    help,
    wanted,
    read: (cell) => {
      if (isFault(cell)) return cell;
      if (typeof cell === "number" && Number.isFinite(cell)) return String(cell);
      if (typeof cell !== "string") return faults.notText(name, cell, wanted);
      return cell.trim();
    },
  };
}

/** One of a few words, whatever their case. */
export function choice<const C extends string>(
  spec: Described & { readonly choices: readonly C[] },
): EachParameter<C> {
  const { name, help, choices } = spec;
  return {
    shape: "each",
    kind: "text",
    optional: false,
    name,
    help,
    choices,
    wanted: `one of ${choices.join(", ")}`,
    read: (cell) => {
      if (isFault(cell)) return cell;
      const wanted = typeof cell === "string" ? cell.trim().toLowerCase() : null;
      return choices.find((word) => word.toLowerCase() === wanted) ?? faults.notAChoice(name, cell, choices);
    },
  };
}

const SLOT_TEXT = /^(\d{1,3}(?:\.\d+)?)\s*°?\s*([EW])$/i;

/** An orbital slot: degrees east (−97) or text such as `97W`, `13E`; read into degrees east. */
export function slot({ name, help }: Described): EachParameter<number> {
  return {
    shape: "each",
    kind: "slot",
    optional: false,
    name,
    help,
    limits: { min: -180, max: 180, unit: "deg east" },
    wanted: "degrees east or text such as 97W",
    read: (cell) => {
      if (isFault(cell)) return cell;
      if (typeof cell === "number" && Math.abs(cell) <= 180) return cell === 0 ? 0 : cell;
      const found = typeof cell === "string" ? SLOT_TEXT.exec(cell.trim()) : null;
      const degrees = found ? Number(found[1]) : NaN;
      if (!found || !(degrees <= 180)) return faults.notASlot(name, cell);
      return found[2]!.toUpperCase() === "W" && degrees !== 0 ? -degrees : degrees;
    },
  };
}

const ISO_DATE = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?Z?)?$/;
const MS_PER_DAY = 86_400_000;
/** Day 0 of a sheet's date numbers, right for every date after February 1900. */
const SHEET_EPOCH_MS = Date.UTC(1899, 11, 30);
const FIRST_DECIMAL_YEAR = 1900;
const LAST_DECIMAL_YEAR = 2200;
/** 9999-12-31, the last date that a sheet knows. */
const LAST_SHEET_DATE = 2_958_465;

/** An instant in UTC from a sheet date, ISO text or a decimal year. */
export function date({ name, help }: Described): EachParameter<Date> {
  return {
    shape: "each",
    kind: "date",
    optional: false,
    name,
    help,
    wanted: "a date cell, text such as 2026-07-04, or a decimal year",
    read: (cell) => {
      if (isFault(cell)) return cell;
      if (typeof cell === "number") return dateFromNumber(cell) ?? faults.notADate(name, cell);
      if (typeof cell === "string") return dateFromIso(cell) ?? faults.notADate(name, cell);
      return faults.notADate(name, cell);
    },
  };
}

function dateFromNumber(value: number): Date | undefined {
  if (value >= FIRST_DECIMAL_YEAR && value < LAST_DECIMAL_YEAR) {
    const year = Math.floor(value);
    const start = Date.UTC(year, 0, 1);
    return new Date(start + (value - year) * (Date.UTC(year + 1, 0, 1) - start));
  }
  if (value >= LAST_DECIMAL_YEAR && value < LAST_SHEET_DATE + 1) {
    return new Date(SHEET_EPOCH_MS + value * MS_PER_DAY);
  }
  return undefined;
}

function dateFromIso(value: string): Date | undefined {
  const found = ISO_DATE.exec(value.trim());
  if (!found) return undefined;
  const [year, month, day, hour, minute, second] = found.slice(1).map((part) => Number(part ?? 0));
  const midnight = new Date(Date.UTC(year!, month! - 1, day!));
  const real = midnight.getUTCMonth() === month! - 1 && midnight.getUTCDate() === day;
  if (!real || year! < FIRST_DECIMAL_YEAR || hour! > 23 || minute! > 59 || second! >= 60) return undefined;
  return new Date(midnight.getTime() + ((hour! * 60 + minute!) * 60 + second!) * 1000);
}

/** Makes a parameter optional: a blank or omitted cell gives `defaultValue`. */
export function optional<T>(parameter: EachParameter<T>): EachParameter<T | undefined>;
export function optional<T extends number | string>(
  parameter: EachParameter<T>,
  defaultValue: T,
): EachParameter<T>;
export function optional<T>(parameter: WholeParameter<T>): WholeParameter<T | undefined>;
export function optional(parameter: Parameter<unknown>, defaultValue?: number | string): Parameter<unknown> {
  if (parameter.shape !== "each") {
    return { ...parameter, optional: true };
  }
  return {
    ...parameter,
    optional: true,
    defaultValue,
    read: (cell) => (isBlank(cell) ? defaultValue : parameter.read(cell)),
  };
}

/** A whole column (or row) as one argument; blank entries stay in place as `null`. */
export function list<T>(entry: EachParameter<T>): WholeParameter<ListEntry<T>[]> {
  return {
    ...entry,
    shape: "list",
    readWhole: (matrix) => {
      const columns = matrix[0]?.length ?? 0;
      if (matrix.length > 1 && columns > 1) {
        return faults.badShape(entry.name, matrix.length, columns, "one column or one row");
      }
      return matrix.flatMap((row) => row.map((cell) => (isBlank(cell) ? null : entry.read(cell))));
    },
  };
}

/** A whole block as one argument, handed on as it is. */
export function table(spec: Described & { readonly wanted: string }): WholeParameter<Matrix> {
  return { ...spec, shape: "table", kind: "table", optional: false, readWhole: (matrix) => matrix };
}

/** Whatever follows, as many arguments as there are, handed on as the host gave them. */
export function repeated(
  spec: Described & { readonly wanted: string },
): RepeatedParameter<readonly Argument[]> {
  return { ...spec, shape: "repeated", kind: "table", optional: true, readRest: (args) => args };
}
