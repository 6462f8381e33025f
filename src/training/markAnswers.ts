/**
 * Marks one trainee's answers: right by tolerance, right in its way from a
 * wrong earlier answer, or a mistake that is known by where it leads.
 */
import { isWithin, toleranceOf, type AnySet, type Answer, type Earlier, type Question } from "./exercise";
import type { Drawn } from "./drawNumbers";
import { COARSE, coarseValues, generalSlips } from "./generalSlips";
import { readAnswer, type ReadAnswer } from "./readAnswer";
import { numbersAmong, slipValues, solved } from "./solve";

/** Marks of one question. */
export const POINTS = { right: 2, half: 1, none: 0 } as const;

export type Outcome = "right" | "carried over" | "slip" | "wrong" | "blank" | "unclear";

export interface MarkedAnswer {
  /** Of the question. */
  readonly key: string;
  /** Of the question, from 1. */
  readonly number: number;
  readonly given: Answer;
  readonly right: Answer;
  readonly outcome: Outcome;
  readonly points: number;
  /** The mistake, where it is known; or what could not be read. */
  readonly named?: string;
  /** Numbers of the questions whose wrong answers it was worked out from. */
  readonly carriedFrom: readonly number[];
}

/** What is known of the trainee's earlier answers. */
interface Own {
  /** As typed. */
  readonly typed: Record<string, number>;
  /** As they were before rounding, where it is known how they came about. */
  readonly exact: Record<string, number>;
  readonly wrong: Set<string>;
}

/** Earlier answers as they may have been used, and which of them are wrong. */
interface Context {
  readonly earlier: Earlier;
  readonly from: readonly string[];
}

type Judged = Pick<MarkedAnswer, "outcome" | "named"> & {
  readonly from: readonly string[];
  readonly value: Answer;
  /** The number before the trainee rounded it. */
  readonly exact?: number;
  readonly half?: boolean;
};

/** @param raw what stands in the answer cell of a question */
export function markAnswers(set: AnySet, drawn: Drawn, raw: (key: string) => unknown): MarkedAnswer[] {
  const own: Own = { typed: {}, exact: {}, wrong: new Set() };
  const numberOf = (key: string): number => set.questions.findIndex((one) => one.key === key) + 1;
  return set.questions.map((question, index) => {
    const { key, answer } = question;
    const right = drawn.key[key]!;
    const read = readAnswer(answer, raw(key));
    const judged = judge(question, drawn, read, own);
    const { outcome, named, from, value, exact, half } = judged;
    if (typeof value === "number" && outcome !== "unclear") {
      own.typed[key] = value;
      own.exact[key] = exact ?? value;
      if (outcome !== "right") own.wrong.add(key);
    }
    return {
      key,
      number: index + 1,
      given: value,
      right,
      outcome,
      points: outcome === "right" ? POINTS.right : half ? POINTS.half : POINTS.none,
      ...(named !== undefined && { named }),
      carriedFrom: from.map(numberOf),
    };
  });
}

function judge(question: Question<never>, drawn: Drawn, read: ReadAnswer, own: Own): Judged {
  if (read.kind === "blank") return { outcome: "blank", from: [], value: "" };
  if (read.kind === "unclear") {
    return { outcome: "unclear", named: "not a number", from: [], value: read.text };
  }
  if (read.kind === "word") return judgeWord(question, drawn, read.word, own);
  if (read.unit !== undefined) {
    return { outcome: "wrong", named: `given in ${read.unit}`, from: [], value: read.readings[0]! };
  }
  const judged = read.readings.map((value) => judgeNumber(question, drawn, value, own));
  // Of two ways to read it, the one that makes most sense.
  return (
    ["right", "carried over", "slip"]
      .map((outcome) => judged.find((one) => one.outcome === outcome))
      .find(Boolean) ?? judged[0]!
  );
}

function judgeWord(question: Question<never>, drawn: Drawn, typed: string, own: Own): Judged {
  const choices = question.answer.kind === "choice" ? question.answer.choices : [];
  const word = choices.find((choice) => choice.toLowerCase() === typed.toLowerCase().replace(/\s+/g, " "));
  if (word === undefined) return { outcome: "unclear", named: "not one of the list", from: [], value: typed };
  if (word === drawn.key[question.key]) return { outcome: "right", from: [], value: word };
  const used = contextsOf(question, drawn, own).find(
    ({ earlier, from }) => from.length > 0 && solved(question, drawn.numbers, earlier) === word,
  );
  return used
    ? { outcome: "carried over", from: used.from, value: word, half: true }
    : { outcome: "wrong", from: [], value: word };
}

function judgeNumber(question: Question<never>, drawn: Drawn, value: number, own: Own): Judged {
  const tolerance = toleranceOf(question.answer);
  const contexts = contextsOf(question, drawn, own);
  const answers = contexts.flatMap(({ earlier, from }) => {
    const answer = solved(question, drawn.numbers, earlier);
    return typeof answer === "number" ? [{ answer, from }] : [];
  });
  const hit = answers.find(({ answer }) => isWithin(value, answer, tolerance));
  if (hit) {
    const right = hit.from.length === 0;
    return {
      outcome: right ? "right" : "carried over",
      from: hit.from,
      value,
      exact: hit.answer,
      half: !right,
    };
  }
  // A trainee who has gone wrong before goes on from there: those earlier answers are tried first.
  const slipIn = ({ earlier }: Context) =>
    slipValues(question, drawn.numbers, earlier).find((one) => isWithin(value, one.value, tolerance));
  for (const context of [...contexts].reverse()) {
    const slip = slipIn(context);
    if (!slip) continue;
    // Where the mistake leads there from the right earlier answers as well, the wrong ones had no part in it.
    const alone = slipIn(contexts[0]!)?.name === slip.name;
    return { outcome: "slip", named: slip.name, from: alone ? [] : context.from, value, exact: slip.value };
  }
  for (const { answer, from } of answers) {
    if (coarseValues(question.answer, answer).some((one) => isWithin(value, one, 0)))
      return { outcome: "slip", named: COARSE, from, value, half: true };
    const slip = generalSlips(question.answer, answer).find((one) => isWithin(value, one.value, tolerance));
    if (slip) return { outcome: "slip", named: slip.name, from, value, exact: slip.value };
  }
  return { outcome: "wrong", from: [], value };
}

/**
 * Earlier answers as the trainee may have used them: first the right ones, in
 * full and as the trainee rounded them; then with one or more of the trainee's
 * wrong ones in their place, the fewest first.
 */
function contextsOf({ needs }: Question<never>, { key }: Drawn, { typed, exact, wrong }: Own): Context[] {
  const right = numbersAmong(key);
  const rounded: Record<string, number> = { ...right };
  for (const [one, value] of Object.entries(typed)) if (!wrong.has(one)) rounded[one] = value;
  const contexts: Context[] = [
    { earlier: right, from: [] },
    { earlier: rounded, from: [] },
  ];
  const spoilt = needs.filter((need) => wrong.has(need));
  for (const some of subsets(spoilt)) {
    const pick = (from: Record<string, number>): Earlier =>
      Object.fromEntries(some.map((need) => [need, from[need]!]));
    for (const base of [right, rounded]) {
      contexts.push({ earlier: { ...base, ...pick(exact) }, from: some });
      contexts.push({ earlier: { ...base, ...pick(typed) }, from: some });
    }
  }
  return contexts;
}

/** Every part of a list but the empty one, the shortest first. */
const subsets = (of: readonly string[]): string[][] =>
  Array.from({ length: 2 ** of.length - 1 }, (_, bits) =>
    of.filter((_one, at) => ((bits + 1) >> at) & 1),
  ).sort((a, b) => a.length - b.length);
