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

/** A figure that stands in the question. */
export interface Given {
  readonly label: string;
  readonly value: number | string;
  readonly unit?: string;
}

export type AnswerKind =
  | {
      readonly kind: "number";
      readonly unit: string;
      /** Decimal places asked for; a number counts as right within one unit of the last of them. */
      readonly decimals: number;
      /** A count, where nothing but the number itself is right. */
      readonly exact?: boolean;
    }
  | { readonly kind: "choice"; readonly choices: readonly string[] };

/** A mistake that is known, and the answer that it leads to. */
export interface Slip<N> {
  /** In a few words, for the trainer: "feet taken for metres". */
  readonly name: string;
  /** Undefined where it cannot be made with these numbers. */
  readonly wrong: (numbers: N, earlier: Earlier) => number | Fault | undefined;
}

export interface Question<N> {
  /** Letters only; the same for all trainees. */
  readonly key: string;
  readonly heading: string;
  /** What to find, in a sentence or two; the figures stand below it. */
  readonly task: string;
  readonly given: (numbers: N) => readonly Given[];
  readonly answer: AnswerKind;
  /** Keys of the earlier questions whose answers it uses. */
  readonly needs: readonly string[];
  /** By the engine. */
  readonly solve: (numbers: N, earlier: Earlier) => Answer | Fault;
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
  readonly draw: (random: Random) => N;
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

export const isWithin = (value: number, key: number, tolerance: number): boolean =>
  Math.abs(value - key) <= tolerance + ROUNDING * Math.max(1, Math.abs(key));
