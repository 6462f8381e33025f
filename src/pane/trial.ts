/** What “Try this Excel” found out, for the pane that shows it and the page that keeps it. */

export type Verdict =
  /** As it should be. */
  | "good"
  /** It works in another way or with a loss, which is said; figures are right. */
  | "look"
  /** Figures may be wrong without anyone noticing, or the work can't be done. */
  | "bad"
  /** Nothing is known of it. */
  | "not run";

export interface TrialLine {
  readonly what: string;
  readonly verdict: Verdict;
  /** In words; for what was not run, why. */
  readonly found: string;
  /** What was read back, as it was read, so that a reader may judge otherwise. */
  readonly read?: string;
  readonly milliseconds?: number;
}

export interface Trial {
  /** ISO 8601, in UTC. */
  readonly began: string;
  readonly seconds: number;
  readonly facts: readonly (readonly [name: string, value: string])[];
  /** Every line that a trial has, in their order, whether it ran or not. */
  readonly lines: readonly TrialLine[];
  /** Why it did not reach its end. */
  readonly stopped?: string;
}

export interface TrialHelp {
  tell(line: TrialLine): void;
  /** Asks the person to press Ctrl+Z once; absent where nobody said that they would. @returns whether they did */
  readonly undone?: () => Promise<boolean>;
}

/** Without one of these nothing can be said of an Excel as a whole. */
const ESSENTIAL = [
  "Functions answer",
  "Which add-in answers",
  "Fresh results",
  "Blank in a range",
  "Blank alone",
  "Error in a range",
  "Spill",
  "At sign",
  "Demonstration totals",
  "Left nothing behind",
];

export const isEssential = ({ what }: Pick<TrialLine, "what">): boolean =>
  ESSENTIAL.includes(what.split(":")[0]!);

export const count = ({ lines }: Pick<Trial, "lines">, verdict: Verdict): number =>
  lines.filter((line) => line.verdict === verdict).length;

/** The worst of what ran; what did not run makes nothing better. */
export function overall(trial: Trial): Verdict {
  if (count(trial, "bad") > 0) return "bad";
  const functions = trial.lines.find(({ what }) => what === "Functions answer");
  if (trial.stopped !== undefined || !functions || functions.verdict === "not run") return "not run";
  const missing = trial.lines.some((line) => line.verdict === "not run" && isEssential(line));
  return missing || count(trial, "look") > 0 ? "look" : "good";
}

export const summaryOfTrial = (trial: Trial): string =>
  `Tried: ${overall(trial)} (${(["good", "look", "bad", "not run"] as const)
    .map((verdict) => `${verdict} ${count(trial, verdict)}`)
    .join(
      ", ",
    )}; ${ASKED_OF_YOU.length} asked of you).${trial.stopped === undefined ? "" : ` ${trial.stopped}`}`;

/** What the verdicts mean, as the page says it. */
export const RULES: readonly string[] = [
  "good: as it should be. look: it works in another way, or with a loss that is named. bad: a figure may be wrong without anyone noticing, or the work can't be done. not run: nothing is known of it.",
  "The word for the whole is the worst that ran. It is “look” at best where one of these did not run: " +
    `${ESSENTIAL.map((one) => one.toLowerCase()).join(", ")}.`,
  "Numbers count as equal within one part in 1,000,000,000. A function has 30 seconds to answer; after more than 5 it is “look”. A round trip of more than 150 ms is “look”, of 5 s and more “bad”.",
  "What functions, arrays and totals are expected to give hangs on numbers drawn in this trial or on inputs that were changed in it, so that no stored figure can pass for a computed one. Only the published figures are the same each time.",
];

export const LIMITS: readonly string[] = [
  "It says what this one Excel did at this one time: no other window, printer, restart, channel or week of use. It is no certificate.",
  "It holds no name, sheet, cell or path of the workbook, and nothing of its person.",
];

/** What no program can find out of itself; whoever runs the trial looks. */
export const ASKED_OF_YOU: readonly string[] = [
  "The version as File, Account shows it, with its channel; and which other add-ins are loaded?",
  "The new workbook that has opened: did Excel offer to repair it, did our pane open with it, are its sheets protected? Close it without saving.",
  "Start a workbook, save it, close Excel, open it again: does the pane open with it, and do the figures stand?",
  "Type into a locked cell of it: does Excel refuse?",
  "Change a length on Rooms, press Ctrl+Z once: is the length back, and the weakest level with it?",
  "Close the pane, change a length again: how many seconds until the level follows?",
  "Print Quote to a PDF: does each sheet fit its page?",
  "Insert Function (fx): does it show Rigsheet's functions with their arguments?",
  "Open the job on another person's Excel, at the same time: do both see the same total?",
];

const lineText = ({ what, verdict, found, read, milliseconds }: TrialLine): string =>
  [
    `[${verdict}] ${what}: ${found}`,
    ...(read === undefined ? [] : [`    read: ${read}`]),
    ...(milliseconds === undefined ? [] : [`    ${milliseconds} ms`]),
  ].join("\n");

/** The page to keep or to send, as plain text. */
export function trialText(trial: Trial, version: string): string {
  const heading = (text: string): string => `\n${text}\n${"-".repeat(text.length)}`;
  return [
    `Rigsheet ${version} tried in an Excel`,
    summaryOfTrial(trial),
    ...LIMITS,
    `Begun ${trial.began} (UTC), ${trial.seconds} seconds`,
    heading("Program"),
    ...trial.facts.map(([name, value]) => `${name}: ${value}`),
    heading("Found"),
    ...trial.lines.map(lineText),
    heading("How it is judged"),
    ...RULES,
    heading("Not run: for a person to look at"),
    ...ASKED_OF_YOU.map((one) => `[ ] ${one}`),
    "",
  ].join("\n");
}
