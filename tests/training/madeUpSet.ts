/** Sets of a few plain questions, so that what is made of an answer can be told by hand. */
import { trainingSet, type AnySet, type AnswerKind, type Question } from "../../src/training/exercise";
import { keyOf } from "../../src/training/solve";
import { markAnswers, type MarkedAnswer } from "../../src/training/markAnswers";

export type Numbers = Readonly<Record<string, number>>;
type Asked = Question<Numbers>;

export const number = (unit = "dB", decimals = 1, more: object = {}): AnswerKind => ({
  kind: "number",
  unit,
  decimals,
  ...more,
});
export const count = (unit = ""): AnswerKind => number(unit, 0, { exact: true });
export const choice = (...choices: string[]): AnswerKind => ({ kind: "choice", choices });

/** A question by its key, what it gives and whatever else matters. */
export const question = (key: string, solve: Asked["solve"], more: Partial<Asked> = {}): Asked => ({
  key,
  heading: `Heading of ${key}`,
  task: `What is ${key}?`,
  given: () => [],
  answer: number(),
  needs: [],
  solve,
  slips: [],
  hints: ["A hint."],
  example: () => [{ symbol: "x", meaning: "worked out", value: 1, unit: "dB", line: "", source: "" }],
  ...more,
});

export const setOf = (questions: readonly Asked[], more: object = {}): AnySet =>
  trainingSet<Numbers>({
    id: "made-up",
    title: "Made up",
    about: "For a test.",
    cautions: [],
    draw: () => ({}),
    questions,
    ...more,
  });

/** The marks of what was typed, by question; the others are left blank. */
export function marksOf(
  questions: readonly Asked[],
  typed: Readonly<Record<string, unknown>>,
  numbers: Numbers = {},
): Record<string, MarkedAnswer> {
  const set = setOf(questions);
  const marked = markAnswers(set, { numbers, key: keyOf(set, numbers)! }, (key) => typed[key]);
  return Object.fromEntries(marked.map((one) => [one.key, one]));
}
