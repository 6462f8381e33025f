/**
 * What an exercise is: numbers that are drawn, and questions about them. The
 * one `solve` of a question gives the key from the right earlier answers, and
 * what a trainee's own earlier answers would have led to.
 */
import type { Fault } from "../engine/faults";
import type { Step } from "../engine/working/steps";
import type { Format } from "../workbooks/definition";
import type { Random } from "./random";

export type Answer = number | string;
/** Answers to earlier questions by their key; only numbers are carried on. */
export type Earlier = Readonly<Record<string, number>>;

/** A figure read wrongly. */
export interface Misreading {
  /** In a few words, for the trainer: "feet taken for metres". */
  readonly name: string;
  /** What is taken for the figure. */
  readonly as: number;
  readonly seldom?: boolean;
}

/**
 * The misreadings that one kind of figure invites, wherever it stands.
 *
 * @param what the figure in words, for the names
 */
export type Family = (value: number, what: string) => readonly Misreading[];

/** A figure that stands in the question. */
export interface Given {
  readonly label: string;
  readonly value: number | string;
  readonly unit?: string;
  /** In the names of mistakes, where the label is too long. */
  readonly called?: string;
  /** The drawn number that it shows. */
  readonly of?: string;
  readonly invites?: readonly Family[];
}

export type AnswerKind =
  | {
      readonly kind: "number";
      readonly unit: string;
      /** Decimal places asked for; a number counts as right within one unit of the last of them. */
      readonly decimals: number;
      /** A count, where nothing but the number itself is right. */
      readonly exact?: boolean;
      /** A direction from 0 to 360, which are one. */
      readonly direction?: boolean;
    }
  | { readonly kind: "choice"; readonly choices: readonly string[] };

/** A mistake that is known, and the answer that it leads to. */
export interface Slip<N> {
  /** In a few words, for the trainer: "half a turn left out". */
  readonly name: string;
  /** Undefined where it cannot be made with these numbers. */
  readonly wrong: (numbers: N, earlier: Earlier) => Answer | Fault | undefined;
  /** It is named where no common mistake leads there, and other numbers are not drawn for its sake. */
  readonly seldom?: boolean;
}

export interface Question<N> {
  /** Letters only; the same for all trainees. */
  readonly key: string;
  readonly heading: string;
  /** What to find, in a sentence or two; the figures stand below it. */
  readonly task: string;
  readonly given: (numbers: N) => readonly Given[];
  /** Figures of earlier questions that it uses as well. */
  readonly before?: (numbers: N) => readonly Given[];
  readonly answer: AnswerKind;
  /** Keys of the earlier questions whose answers it uses. */
  readonly needs: readonly string[];
  /** By the engine. */
  readonly solve: (numbers: N, earlier: Earlier) => Answer | Fault;
  /**
   * The hint's formula as plain arithmetic, where the engine refuses figures
   * that a trainee may well reckon with (a cable of 330 °C, a margin of 20).
   */
  readonly formula?: (numbers: N, earlier: Earlier) => number;
  /** What the earlier answers in `needs` invite. */
  readonly uses?: Readonly<Record<string, readonly Family[]>>;
  /** Mistakes beyond those that its figures invite. */
  readonly slips: readonly Slip<N>[];
  readonly hints: readonly string[];
  /** The worked example's lines, with other numbers. */
  readonly example: (numbers: N, earlier: Earlier) => readonly Step[];
}

/** A table that all questions of a sheet are about. */
export interface Paper {
  readonly heading: string;
  readonly lines: readonly string[];
  readonly columns: readonly { readonly head: string; readonly format: Format }[];
  readonly rows: readonly (readonly (string | number)[])[];
}

export interface TrainingSet<N> {
  /** As the command takes it. */
  readonly id: string;
  readonly title: string;
  /** What is practised, in a sentence. */
  readonly about: string;
  /** Shown on every sheet of the set. */
  readonly cautions: readonly string[];
  /** @param once gives the same on every try: what must not be chosen by which numbers are drawn again */
  readonly draw: (random: Random, once: Random) => N;
  /** Whether the drawn numbers and their answers could be a real job's; true where absent. */
  readonly plausible?: (numbers: N, answers: Readonly<Record<string, Answer>>) => boolean;
  readonly paper?: (numbers: N) => Paper;
  readonly questions: readonly Question<N>[];
}

/** A set whose numbers' type is forgotten, so that all sets share one type. */
export type AnySet = TrainingSet<never>;

export const trainingSet = <N>(set: TrainingSet<N>): AnySet => set as unknown as AnySet;

/** How far from the key a number may lie: half a unit for its own rounding, half for that on the way. */
export const toleranceOf = (answer: AnswerKind): number =>
  answer.kind === "choice" || answer.exact ? 0 : 10 ** -answer.decimals;

/** So that 12.3 counts as within 0.1 of 12.2, whatever the binary fractions say. */
export const ROUNDING = 1e-9;

/** Of a direction 359.9 lies beside 0; one below 0 is none. */
export function agrees(answer: AnswerKind, value: number, key: number, tolerance: number): boolean {
  if (answer.kind === "choice" || !answer.direction || value < 0) return isWithin(value, key, tolerance);
  const apart = Math.abs(value - key) % 360;
  return isWithin(Math.min(apart, 360 - apart), 0, tolerance);
}

export const isWithin = (value: number, key: number, tolerance: number): boolean =>
  Math.abs(value - key) <= tolerance + ROUNDING * Math.max(1, Math.abs(key));
