/**
 * What one sheet function is. Everything that a host, the help, the pane or a
 * test needs to know of a function comes from its declaration.
 */
import type { Fault } from "../../engine/faults";
import type { Step } from "../../engine/working/steps";
import type { Argument, Cell, Matrix } from "./cells";
import { dispatch } from "./dispatch";
import type { Parameter, ValuesOf } from "./parameters";

export type Group =
  | "Sightline"
  | "Signal"
  | "Power"
  | "Tuners"
  | "Distribution"
  | "Bonding and mounting"
  | "Estimate"
  | "About";

export interface Example {
  /** As a person types it, without the equals sign: `RIG.AZIMUTH(35,-100,-90)`. */
  readonly formula: string;
  /** From the source, never from our own output. */
  readonly result: number | string | readonly (readonly (number | string)[])[];
  /** Greatest difference allowed for a number, in the result's unit. */
  readonly tolerance?: number;
  /** Where the result comes from. */
  readonly source: string;
}

export type ResultShape =
  /** One value a row, combined with the other columns row by row. */
  | "cell"
  /** Several values side by side, a row of them for each row of the arguments. */
  | "row"
  /** A column as long as the list arguments. */
  | "column"
  /** A block of its own size. */
  | "table";

export interface Result {
  readonly shape: ResultShape;
  /** What comes back, in words. */
  readonly help: string;
  readonly unit?: string;
  /** For `row` and `table`: what each column holds, with its unit. */
  readonly columns?: readonly string[];
}

/** What a body may return; the dispatcher checks that numbers are finite. */
export type Outcome = number | string | boolean | Fault;

interface Described<P extends readonly Parameter<unknown>[]> {
  /** Without the namespace: capitals and digits, three characters or more. */
  readonly name: string;
  readonly group: Group;
  /** One sentence, shown while typing. */
  readonly summary: string;
  readonly parameters: P;
  /** The equation or rule, in one or a few lines of plain text. */
  readonly equation: string;
  /** Standard, paper or handbook with clause; or "from memory"; or "common practice, no source". */
  readonly source: string;
  /** How close the answer is, and the range in which that holds. */
  readonly accuracy: string;
  /** Questions that the function answers, in an estimator's words. */
  readonly tasks: readonly string[];
  readonly examples: readonly Example[];
  readonly seeAlso: readonly string[];
  /** Conditions beyond the argument limits in which the function gives a fault, a sentence each. */
  readonly faultsWhen?: readonly string[];
  /** Shown where the work can hurt someone. */
  readonly caution?: string;
}

interface Body<P extends readonly Parameter<unknown>[], S extends ResultShape, R> {
  readonly result: Result & { readonly shape: S };
  readonly compute: (...values: ValuesOf<P>) => R | Fault;
  /** The calculation step by step, for SHOWWORK; its last value is the function's own. */
  readonly working?: (...values: ValuesOf<P>) => readonly Step[] | Fault;
}

export type Declared<P extends readonly Parameter<unknown>[]> = Described<P> &
  (
    | Body<P, "cell", Outcome>
    | Body<P, "row", readonly Outcome[]>
    | Body<P, "column", readonly (Outcome | null)[]>
    | Body<P, "table", readonly (readonly (Outcome | null)[])[]>
  );

/** A declaration whose parameter types are forgotten, so that all functions share one type. */
export interface Declaration extends Described<readonly Parameter<unknown>[]> {
  readonly result: Result;
  readonly compute: (...values: never[]) => unknown;
  readonly working?: (...values: never[]) => readonly Step[] | Fault;
}

/** A declaration that can be called with what a host hands over. */
export interface SheetFunction extends Declaration {
  readonly call: (args: readonly Argument[]) => Cell | Matrix;
}

/** Turns a declaration into a callable sheet function. */
export function declare<const P extends readonly Parameter<unknown>[]>(
  declaration: Declared<P>,
): SheetFunction {
  const erased = declaration as unknown as Declaration;
  return { ...erased, call: (args) => dispatch(erased, args) };
}
