/** What “Try this Excel” found out, for the pane that shows it and the page that keeps it. */

export type Verdict =
  /** As it should be. */
  | "good"
  /** It works in another way, or is worth knowing. */
  | "look"
  /** Figures or files would be wrong. */
  | "bad"
  /** Nothing is known of it. */
  | "not run";

export interface TrialLine {
  readonly what: string;
  readonly verdict: Verdict;
  /** What was read back, as it was read; for what was not run, why. */
  readonly found: string;
}

export interface Trial {
  /** ISO 8601, with the time zone of the computer. */
  readonly began: string;
  readonly seconds: number;
  readonly facts: readonly (readonly [name: string, value: string])[];
  readonly lines: readonly TrialLine[];
}

export const count = ({ lines }: Trial, verdict: Verdict): number =>
  lines.filter((line) => line.verdict === verdict).length;

/** The worst of what ran; nothing that did not run makes it better. */
export function overall(trial: Trial): Verdict {
  const worst = (["bad", "look"] as const).find((verdict) => count(trial, verdict) > 0);
  if (worst) return worst;
  return count(trial, "good") > 0 ? "good" : "not run";
}

const inWords = (trial: Trial): string =>
  (["bad", "look", "good", "not run"] as const)
    .map((verdict) => `${count(trial, verdict)} ${verdict}`)
    .join(", ");

export const summaryOfTrial = (trial: Trial): string => `Tried: ${inWords(trial)}.`;

/** What no program can find out of itself; whoever runs the trial looks. */
export const ASKED_OF_YOU: readonly string[] = [
  "Start a workbook, close it, open it again: does the pane open with it, and do the figures stand?",
  "Change a length on Rooms, press Ctrl+Z once: is the length back, and the total with it?",
  "Print Quote to a PDF: does each sheet fit its page?",
  "Insert Function (fx): does it show Rigsheet's functions with their arguments?",
  "Open the job on another person's Excel, at the same time: do both see the same total?",
];

/** The page to keep or to send, as plain text. */
export function trialText(trial: Trial, version: string): string {
  const heading = (text: string): string => `\n${text}\n${"-".repeat(text.length)}`;
  return [
    `Rigsheet ${version} tried in an Excel: ${inWords(trial)}`,
    "It says what this one Excel did at this one time. It is no certificate.",
    `Begun ${trial.began}, ${trial.seconds} seconds`,
    heading("Program"),
    ...trial.facts.map(([name, value]) => `${name}: ${value}`),
    heading("Found"),
    ...trial.lines.map(({ what, verdict, found }) => `[${verdict}] ${what}: ${found}`),
    heading("Not run: for a person to look at"),
    ...ASKED_OF_YOU.map((one) => `[ ] ${one}`),
    "",
  ].join("\n");
}
