/**
 * Calls of our functions as Excel makes them: from the sheet, through what the
 * add-in has associated, with blanks and errors in whichever way they arrive.
 */
import { isFault } from "../../../src/engine/faults";
import { allFunctions } from "../../../src/functions/all";
import type { Argument, Cell, Matrix } from "../../../src/functions/core/cells";
import type { ArrivingBlank, BlankKind, Oddities } from "./oddities";

const BLANK_MARK = "\u0001blank ";
/** A blank cell of a kind of its own, as the engine hands it over. */
export const markedBlank = (kind: BlankKind): string => `${BLANK_MARK}${kind}`;

export interface Caller {
  readonly oddities: Oddities;
  readonly associated: ReadonlyMap<string, (...args: unknown[]) => unknown>;
  /** Whether functions answer already. */
  isBusy(): boolean;
}

let caller: Caller | undefined;
let inside = false;

const real = new Map<string, (args: readonly Argument[]) => Cell | Matrix>();

/** While the work computes a sheet, our functions are called as this Excel calls them. */
export function calledBy<T>(by: Caller, work: () => T): T {
  takeOver();
  const before = caller;
  caller = by;
  try {
    return work();
  } finally {
    caller = before;
  }
}

function takeOver(): void {
  if (real.size > 0) return;
  for (const one of allFunctions) {
    const { call } = one;
    real.set(one.name, call);
    Object.assign(one, {
      call: (args: readonly Argument[]) => {
        if (!caller || inside) return call(args);
        inside = true;
        try {
          return asCalled(caller, one.name, one.parameters.at(-1)?.shape === "repeated", args);
        } finally {
          inside = false;
        }
      },
    });
  }
}

const errorOf = (code: string): Cell => ({ kind: "fault", code, message: "" }) as unknown as Cell;

function asCalled(by: Caller, name: string, repeats: boolean, args: readonly Argument[]): Cell | Matrix {
  const { oddities, associated } = by;
  if (oddities.noFunctions) return errorOf("#NAME?");
  if (oddities.answering && by.isBusy()) return errorOf(oddities.answering.code);
  if (name === "VERSION" && oddities.functionsVersion !== undefined) return oddities.functionsVersion;
  const isRange = (arg: Argument): boolean => Array.isArray(arg) && (arg.length > 1 || arg[0]!.length > 1);
  const refused =
    oddities.errorInRange === "refused" &&
    args.some((arg) => isRange(arg) && (arg as Matrix).flat().some(isFault));
  if (refused) return errorOf("#VALUE!");
  const arriving = args.map((arg): unknown => {
    const range = isRange(arg);
    const rows: Matrix = Array.isArray(arg) ? (arg as Matrix) : [[arg as Cell]];
    return rows.map((row) => row.map((cell) => arrived(cell, range, oddities)));
  });
  const ours = associated.get(name);
  let outcome: Cell | Matrix;
  if (oddities.elsewhere || !ours) outcome = real.get(name)!(arriving as Argument[]);
  else {
    const count = allFunctions.find((one) => one.name === name)!.parameters.length;
    const given: unknown[] = arriving.slice(0, repeats ? count - 1 : count);
    while (given.length < (repeats ? count - 1 : count)) given.push(null);
    if (repeats) given.push(arriving.slice(count - 1));
    outcome = fromCall(ours(...given, { functionName: name }));
  }
  return oddities.spillsNot && Array.isArray(outcome) ? ((outcome as Matrix)[0]?.[0] ?? "") : outcome;
}

function arrived(cell: Cell, range: boolean, oddities: Oddities): unknown {
  const blank = (kind: BlankKind): ArrivingBlank => {
    const usual = (range ? oddities.blankInRange : oddities.blankAlone) ?? null;
    return oddities.blankKinds && kind in oddities.blankKinds ? oddities.blankKinds[kind]! : usual;
  };
  if (cell === null) return blank("untouched");
  if (typeof cell === "string" && cell.startsWith(BLANK_MARK))
    return blank(cell.slice(BLANK_MARK.length) as BlankKind);
  if (!isFault(cell)) return cell;
  if (oddities.errorInRange === "blank" && range) return null;
  const code = /the error (#[^.]+)\./.exec(cell.message)?.[1] ?? cell.code;
  return oddities.errorInRange === "text" ? code : { code };
}

function fromCall(rows: unknown): Matrix {
  return (rows as unknown[][]).map((row) =>
    row.map((value) =>
      typeof value === "object" && value !== null
        ? ({ kind: "fault", ...codeOf(value) } as unknown as Cell)
        : (value as Cell),
    ),
  );
}

const codeOf = (value: object): { code: string; message: string } => {
  const { code, message } = value as { code: string; message?: string };
  return { code, message: message ?? "" };
};
