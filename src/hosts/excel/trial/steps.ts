/** The ways of the trial's steps: what each has at hand, and how it waits for figures. */
import type { TrialLine, Verdict } from "../../../pane/trial";

/** What a step works on. */
export interface Ground {
  /** The trial's own sheet; nothing else is written to. */
  readonly sheet: string;
  /** Why the functions do not answer; steps that need them are then not run. */
  silence: string | undefined;
}

export interface Step {
  readonly what: string;
  readonly needsFunctions?: boolean;
  /** Of the Excel programming interface. */
  readonly needsApi?: string;
  readonly run: (context: Excel.RequestContext, ground: Ground) => Promise<Outcome>;
}

/** Several where a step is one look at several things. */
export type Outcome = Found | readonly TrialLine[];

export interface Found {
  readonly verdict: Verdict;
  readonly found: string;
}

export const good = (found: string): Found => ({ verdict: "good", found });
export const look = (found: string): Found => ({ verdict: "look", found });
export const bad = (found: string): Found => ({ verdict: "bad", found });
export const notRun = (found: string): Found => ({ verdict: "not run", found });

/** What Excel shows while a function of an add-in computes; the second in builds before 2019. */
const BUSY = ["#BUSY!", "#GETTING_DATA"];
const PATIENCE_MS = 30_000;
const PAUSE_MS = 100;

const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, PAUSE_MS));

/** Values of a range once none computes any more, or after a while as they stand then. */
export async function settled(
  context: Excel.RequestContext,
  range: Excel.Range,
  isDone: (values: unknown[][]) => boolean = () => true,
): Promise<{ values: unknown[][]; milliseconds: number; done: boolean }> {
  const began = performance.now();
  for (;;) {
    range.load("values");
    await context.sync();
    const values: unknown[][] = range.values;
    const done = !values.flat().some((value) => BUSY.includes(String(value))) && isDone(values);
    const milliseconds = Math.round(performance.now() - began);
    if (done || milliseconds > PATIENCE_MS) return { values, milliseconds, done };
    await pause();
  }
}

/** A value as the page shows it. */
export const shown = (value: unknown): string => (value === "" ? "(blank)" : String(value));

export const codeOf = (error: unknown): string => {
  const { code, message } = (error ?? {}) as { code?: unknown; message?: unknown };
  return typeof code === "string" ? `${code}: ${String(message)}` : String(error);
};
