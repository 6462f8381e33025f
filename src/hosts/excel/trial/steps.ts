/** The ways of the trial's steps: what each has at hand, and how it waits for figures. */
import type { TrialLine, Verdict } from "../../../pane/trial";
import type { HeardCall } from "../heardCalls";

/** What a step works on. */
export interface Ground {
  /** Excel's own name of the trial's sheet, which stays when it is renamed; nothing else is written to. */
  readonly sheet: string;
  /** What our functions were called with since the trial began. */
  readonly heard: readonly HeardCall[];
  /** Calculation is not automatic: the trial's own sheet is calculated by itself. */
  manual: boolean;
  /** Why the functions do not answer; steps that need them are then not run. */
  silence: string | undefined;
  /** Why arrays can't be tried. */
  noSpill: string | undefined;
  /** Why changed inputs can't be tried. */
  oldValues: string | undefined;
  /** How the demonstrations came into the workbook: Excel's sentence about each file that it took, and how many were built. */
  readonly files: { readonly taken: string[]; built: number };
  /** Sheets of a demonstration that could not be taken out again. */
  leftIn: readonly string[];
}

export interface Step {
  readonly what: string;
  readonly needs?: "functions" | "spill";
  /** Of the Excel programming interface. */
  readonly needsApi?: string;
  readonly run: (context: Excel.RequestContext, ground: Ground) => Promise<Found>;
}

export type Found = Pick<TrialLine, "verdict" | "found" | "read">;

const found =
  (verdict: Verdict) =>
  (sentence: string, read?: string): Found => ({
    verdict,
    found: sentence,
    ...(read !== undefined && { read }),
  });

export const good = found("good");
export const look = found("look");
export const bad = found("bad");
export const notRun = found("not run");

export const sheetOf = ({ workbook }: Excel.RequestContext, { sheet }: Ground): Excel.Worksheet =>
  workbook.worksheets.getItem(sheet);

/** What Excel shows while a function of an add-in computes; the second in builds before 2019. */
const BUSY = ["#BUSY!", "#GETTING_DATA"];
export const PATIENCE_MS = 30_000;
const PAUSE_MS = 250;

export const isBusy = (value: unknown): boolean => BUSY.includes(String(value));

const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, PAUSE_MS));

export interface Settled {
  readonly values: unknown[][];
  /** By Excel's word for the kind, which is the same in every language. */
  readonly errors: boolean[][];
  readonly milliseconds: number;
  readonly done: boolean;
}

/** Values of a range once they are as wanted, or after a while as they stand then. */
export async function settled(
  context: Excel.RequestContext,
  range: Excel.Range,
  isDone: (values: unknown[][], errors: boolean[][]) => boolean = () => true,
  patience = PATIENCE_MS,
): Promise<Settled> {
  const began = performance.now();
  for (;;) {
    range.load("values,valueTypes");
    await context.sync();
    const values: unknown[][] = range.values;
    const errors = range.valueTypes.map((row) => row.map((type) => String(type) === "Error"));
    const done = !values.flat().some(isBusy) && isDone(values, errors);
    const milliseconds = Math.round(performance.now() - began);
    if (done || milliseconds >= patience) return { values, errors, milliseconds, done };
    await pause();
  }
}

/** Enters a formula into one cell of the trial's sheet, and reads so many rows from there. */
export function entered(
  context: Excel.RequestContext,
  ground: Ground,
  { at, formula, rows = 1 }: { readonly at: string; readonly formula: string; readonly rows?: number },
  isDone?: (values: unknown[][], errors: boolean[][]) => boolean,
): Promise<Settled> {
  const sheet = sheetOf(context, ground);
  sheet.getRange(at).formulas = [[formula]];
  calculated(context, ground);
  const [, column, row] = /^([A-Z]+)(\d+)$/.exec(at)!;
  return settled(context, sheet.getRange(`${at}:${column}${Number(row) + rows - 1}`), isDone);
}

/** Only the trial's own sheet: what a person has set holds for all of theirs. */
export function calculated(context: Excel.RequestContext, ground: Ground): void {
  if (ground.manual) sheetOf(context, ground).calculate(false);
}

/** Two programs may round the last digits apart. */
export const sameNumber = (value: unknown, wanted: unknown): boolean =>
  typeof value === "number" &&
  typeof wanted === "number" &&
  Math.abs(value - wanted) <= 1e-9 * Math.max(1, Math.abs(wanted));

/** A value as the page shows it. */
export const shown = (value: unknown): string => (value === "" ? "(blank)" : String(value));

/** Excel's code and words, as the page shows them. */
export const refusalOf = (error: unknown): string => {
  const { code, message } = (error ?? {}) as { code?: unknown; message?: unknown };
  return typeof code === "string" ? `${code}: ${String(message)}` : String(error);
};
