/** Works a set out: the key. */
import { isFault } from "../engine/faults";
import type { AnySet, Answer, Earlier, Question } from "./exercise";

export type Answers = Readonly<Record<string, Answer>>;

/** The numbers among some answers, which are what is carried on. */
export const numbersAmong = (answers: Answers): Earlier =>
  Object.fromEntries(
    Object.entries(answers).filter((entry): entry is [string, number] => typeof entry[1] === "number"),
  );

/** @returns undefined where the numbers have no answer, or an earlier answer that it needs is missing */
export function solved(question: Question<never>, numbers: object, earlier: Earlier): Answer | undefined {
  if (question.needs.some((key) => earlier[key] === undefined)) return undefined;
  const answer = question.solve(numbers as never, earlier);
  if (isFault(answer)) return undefined;
  return typeof answer === "string" || Number.isFinite(answer) ? answer : undefined;
}

/** @returns every right answer by its question's key; undefined where one of them cannot be found */
export function keyOf(set: AnySet, numbers: object): Answers | undefined {
  const answers: Record<string, Answer> = {};
  for (const question of set.questions) {
    const answer = solved(question, numbers, numbersAmong(answers));
    if (answer === undefined) return undefined;
    answers[question.key] = answer;
  }
  return answers;
}
