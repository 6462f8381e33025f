/**
 * Marks one trainee's answers: right by tolerance, right in its way from a
 * wrong earlier answer, or a mistake that is known by where it leads.
 */
import {
  agrees,
  isWithin,
  toleranceOf,
  type AnySet,
  type Answer,
  type AnswerKind,
  type Earlier,
  type Question,
} from "./exercise";
import type { Drawn } from "./drawNumbers";
import { COARSE, coarseValues, copied, generalSlips } from "./generalSlips";
import { readAnswer, type ReadAnswer } from "./readAnswer";
import { slipValues, unanswerable, type Rank } from "./slips/slipValues";
import { numbersAmong, solved } from "./solve";

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
  /** The mistake is one of those met now and then: something else may have led to the same answer. */
  readonly perhaps?: boolean;
  /** Why the trainer should judge it. */
  readonly look?: string;
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

type Judged = Pick<MarkedAnswer, "outcome" | "named" | "perhaps" | "look"> & {
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
    const judged = judge(set, question, drawn, read, own);
    const { outcome, named, perhaps, look, from, value, exact, half } = judged;
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
      ...(perhaps && { perhaps }),
      ...(look !== undefined && { look }),
      carriedFrom: from.map(numberOf),
    };
  });
}

function judge(set: AnySet, question: Question<never>, drawn: Drawn, read: ReadAnswer, own: Own): Judged {
  switch (read.kind) {
    case "blank":
      return { outcome: "blank", from: [], value: "" };
    case "unclear":
      return judgeUnclear(question, drawn, read, own);
    case "error":
      return judgeError(set, question, drawn, read.text, own);
    case "word":
      return judgeWord(set, question, drawn, read.word, own);
  }
  const judged = read.readings.map((value) => judgeNumber(set, question, drawn, value, own));
  // Of two ways to read it, the one that makes most sense.
  const best =
    ["right", "carried over", "slip"]
      .map((outcome) => judged.find((one) => one.outcome === outcome))
      .find(Boolean) ?? judged[0]!;
  return read.unit === undefined ? best : judgeOtherUnit(question, drawn, read.readings, read.unit, best);
}

/** What can't be read is the trainer's; where the own earlier answers have no solution, that may be the right way. */
function judgeUnclear(
  question: Question<never>,
  drawn: Drawn,
  { text, why }: ReadAnswer & { readonly kind: "unclear" },
  own: Own,
): Judged {
  const from = withoutAnswer(question, drawn, own);
  return {
    outcome: "unclear",
    named: why,
    from: from ?? [],
    value: text,
    look: from
      ? `"${text}": with the trainee's own earlier answer there is none to be found, so that this may be the right way`
      : `"${text}": ${why}`,
  };
}

/** Wrong earlier answers with which the question has no solution: the volts of a run that can't be fed. */
function withoutAnswer(question: Question<never>, drawn: Drawn, own: Own): readonly string[] | undefined {
  return contextsOf(question, drawn, own).find(
    ({ earlier, from }) => from.length > 0 && solved(question, drawn.numbers, earlier) === undefined,
  )?.from;
}

function judgeError(set: AnySet, question: Question<never>, drawn: Drawn, text: string, own: Own): Judged {
  const from = withoutAnswer(question, drawn, own);
  if (from) {
    return {
      outcome: "carried over",
      named: "no answer from the own earlier one",
      from,
      value: text,
      half: true,
    };
  }
  const names = unanswerable(set, question, drawn.numbers, numbersAmong(drawn.key)).slice(0, MOST_NAMES);
  return names.length > 0
    ? { outcome: "slip", named: names.join(" or "), perhaps: true, from: [], value: text }
    : { outcome: "wrong", named: `the cell holds the error ${text}`, from: [], value: text };
}

/** Of one thousand, and of parts of it. */
const PREFIXES: Readonly<Record<string, number>> = { m: 1e-3, k: 1e3, c: 1e-2 };

function judgeOtherUnit(
  question: Question<never>,
  drawn: Drawn,
  readings: readonly number[],
  unit: string,
  asRead: Judged,
): Judged {
  const wrong: Judged = { outcome: "wrong", named: `given in ${unit}`, from: [], value: readings[0]! };
  const { answer } = question;
  const right = drawn.key[question.key];
  const asked = answer.kind === "number" ? answer.unit : "";
  const factor = unit.slice(1).toLowerCase() === asked.toLowerCase() ? PREFIXES[unit[0]!] : undefined;
  const converted =
    factor !== undefined &&
    typeof right === "number" &&
    readings.some((value) => isWithin(value * factor, right, toleranceOf(answer)));
  if (asRead.outcome !== "right" && !converted) return wrong;
  return {
    ...wrong,
    look: converted
      ? `right, but given in ${unit}`
      : `the number is right, but given in ${unit}, not ${asked}`,
  };
}

function judgeWord(set: AnySet, question: Question<never>, drawn: Drawn, word: string, own: Own): Judged {
  if (word === drawn.key[question.key]) return { outcome: "right", from: [], value: word };
  const contexts = contextsOf(question, drawn, own);
  const used = contexts.find(
    ({ earlier, from }) => from.length > 0 && solved(question, drawn.numbers, earlier) === word,
  );
  if (used) return { outcome: "carried over", from: used.from, value: word, half: true };
  for (const { earlier, from } of [...contexts].reverse()) {
    const slips = slipValues(set, question, drawn.numbers, earlier).filter(({ value }) => value === word);
    const rank = slips.some((one) => one.rank === "often") ? "often" : "seldom";
    const names = slips.filter((one) => one.rank === rank).map(({ name }) => name);
    if (names.length > 0) {
      const named = names.slice(0, MOST_NAMES).join(" or ");
      return { outcome: "slip", named, from, value: word, ...(rank !== "often" && { perhaps: true }) };
    }
  }
  return { outcome: "wrong", from: [], value: word };
}

function judgeNumber(set: AnySet, question: Question<never>, drawn: Drawn, value: number, own: Own): Judged {
  const tolerance = toleranceOf(question.answer);
  const contexts = contextsOf(question, drawn, own);
  const answers = contexts.flatMap(({ earlier, from }) => {
    const answer = solved(question, drawn.numbers, earlier);
    return typeof answer === "number" ? [{ answer, from }] : [];
  });
  const hit = answers.find(({ answer }) => agrees(question.answer, value, answer, tolerance));
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
  const common = slipAmong(set, question, drawn, contexts, value, "often");
  if (common) return common;
  for (const { answer, from } of answers) {
    if (coarseValues(question.answer, answer).some((one) => isWithin(value, one, 0)))
      return { outcome: "slip", named: COARSE, from, value, half: true };
  }
  const known =
    slipAmong(set, question, drawn, contexts, value, "seldom") ??
    slipAmong(set, question, drawn, contexts, value, "mixed up");
  if (known) return known;
  const stands = [numbersAmong(drawn.key), own.typed].flatMap((all) =>
    copied(set, question, drawn.numbers, all),
  );
  const copy = stands.find((one) => isWithin(value, one.value, tolerance / 2));
  if (copy) return { outcome: "slip", named: copy.name, perhaps: true, from: [], value };
  for (const { answer, from } of answers) {
    const slip = generalSlips(question.answer, answer).find((one) => isWithin(value, one.value, tolerance));
    if (slip) return { outcome: "slip", named: slip.name, from, value, exact: slip.value };
  }
  return { outcome: "wrong", from: [], value };
}

/** Of names that fit, so many are told. */
const MOST_NAMES = 3;

/** The mistakes of one rank that lead to a value; with those of the first context in which one does. */
function slipAmong(
  set: AnySet,
  question: Question<never>,
  drawn: Drawn,
  contexts: readonly Context[],
  value: number,
  rank: Rank,
): Judged | undefined {
  const fits = ({ earlier }: Context): { name: string; value: number }[] =>
    slipValues(set, question, drawn.numbers, earlier, rank).flatMap((one) =>
      one.rank === rank && typeof one.value === "number" && matches(question.answer, value, one.value, rank)
        ? [{ name: one.name, value: one.value }]
        : [],
    );
  // A trainee who has gone wrong before goes on from there: those earlier answers are tried first.
  for (const context of [...contexts].reverse()) {
    const found = fits(context).sort((a, b) => Math.abs(a.value - value) - Math.abs(b.value - value));
    if (found.length === 0) continue;
    const names = [...new Set(found.map(({ name }) => name))].slice(0, MOST_NAMES);
    // Where the mistake leads there from the right earlier answers as well, the wrong ones had no part in it.
    const alone = fits(contexts[0]!).some(({ name }) => name === names[0]);
    return {
      outcome: "slip",
      named: names.join(" or "),
      ...(rank !== "often" && { perhaps: true }),
      from: alone ? [] : context.from,
      value,
      exact: found[0]!.value,
    };
  }
  return undefined;
}

/** A common mistake is known within the tolerance, others by little more than their own rounding. */
const SELDOM_SHARE = 0.6;

/** A count beyond this may have been rounded by whoever made one of a product. */
const BIG_COUNT = 20;

function matches(answer: AnswerKind, value: number, slip: number, rank: Rank): boolean {
  const tolerance = toleranceOf(answer);
  if (tolerance > 0) return isWithin(value, slip, rank === "often" ? tolerance : SELDOM_SHARE * tolerance);
  // A count that was not rounded to a whole number may have been rounded anywhere.
  const decimals = (String(value).split(".")[1] ?? "").length;
  return isWithin(
    value,
    decimals === 0 && Math.abs(slip) < BIG_COUNT ? slip : Number(slip.toFixed(decimals)),
    0,
  );
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
