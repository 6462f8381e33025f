/**
 * Sheets that share unlikely answers: wrong ones that no mistake explains and
 * that stand on another sheet too, although the numbers differ.
 *
 * For each question it is estimated how likely an unrelated trainee would
 * write that very value, from other draws of the set, half of the trainees
 * being right and half spread over the known mistakes. The product over a
 * pair's shared answers, times the number of pairs, is how often chance alone
 * would do the same in a group of this size. It is a reason to look, not a proof.
 */
import { drawFor, type Drawn } from "./drawNumbers";
import { isWithin, toleranceOf, type AnySet, type Answer, type Question } from "./exercise";
import type { MarkedAnswer } from "./markAnswers";
import { numbersAmong, slipValues } from "./solve";

export interface MarkedSheet {
  /** Names the sheet in the findings. */
  readonly label: string;
  readonly drawn: Drawn;
  readonly answers: readonly MarkedAnswer[];
}

export interface SharedPair {
  readonly one: string;
  readonly other: string;
  /** Numbers of the questions. */
  readonly questions: readonly number[];
  readonly values: readonly Answer[];
  /** Those that are right on the other sheet, with its numbers. */
  readonly rightThere: number;
  /** How many such pairs chance would bring in a group of this size. */
  readonly byChance: number;
}

/** More likely than this it is left to chance. */
const MOST_BY_CHANCE = 0.02;
const OTHER_DRAWS = 200;
/** Of answers to a question; the rest are taken for known mistakes. */
const RIGHT_AS_OFTEN = 0.5;
/** Draws that no list of names gives. */
const NOBODY = "\u0000nobody";

export function sharedAnswers(set: AnySet, sheets: readonly MarkedSheet[]): SharedPair[] {
  if (sheets.length < 2) return [];
  const likelihood = likelihoods(set);
  const pairs = new Map<string, { a: number; b: number; chance: number; hits: Hit[] }>();
  for (const [index, question] of set.questions.entries()) {
    for (const { a, b, value, rightThere } of sharedAt(question, index, sheets)) {
      const id = `${a},${b}`;
      const pair = pairs.get(id) ?? { a, b, chance: 1, hits: [] };
      pair.chance *= likelihood(index, value);
      pair.hits.push({ question: index + 1, value, rightThere });
      pairs.set(id, pair);
    }
  }
  const count = (sheets.length * (sheets.length - 1)) / 2;
  return [...pairs.values()]
    .map(({ a, b, chance, hits }) => ({
      one: sheets[a]!.label,
      other: sheets[b]!.label,
      questions: hits.map(({ question }) => question),
      values: hits.map(({ value }) => value),
      rightThere: hits.filter(({ rightThere }) => rightThere).length,
      byChance: chance * count,
    }))
    .filter(({ byChance }) => byChance < MOST_BY_CHANCE)
    .sort((x, y) => x.byChance - y.byChance);
}

interface Hit {
  readonly question: number;
  readonly value: Answer;
  readonly rightThere: boolean;
}

/** Pairs of sheets with the same answer to one question, which on the first of them nothing explains. */
function* sharedAt(
  question: Question<never>,
  index: number,
  sheets: readonly MarkedSheet[],
): Generator<{ a: number; b: number; value: Answer; rightThere: boolean }> {
  const tolerance = toleranceOf(question.answer);
  const given = new Map<string, number[]>();
  for (const [at, { answers }] of sheets.entries()) {
    const { given: value, outcome } = answers[index]!;
    if (outcome === "blank" || outcome === "unclear") continue;
    const key = typeof value === "number" ? value.toPrecision(12) : value;
    given.set(key, [...(given.get(key) ?? []), at]);
  }
  for (const group of given.values()) {
    for (const a of group) {
      if (sheets[a]!.answers[index]!.outcome !== "wrong") continue;
      for (const b of group) {
        if (a === b) continue;
        const there = sheets[b]!.answers[index]!;
        // Both unexplained: told once.
        if (there.outcome === "wrong" && b < a) continue;
        const here = sheets[a]!.answers[index]!.right;
        const same =
          typeof here === "number" && typeof there.right === "number"
            ? isWithin(here, there.right, 2 * tolerance)
            : here === there.right;
        if (!same) yield { a, b, value: there.given, rightThere: there.outcome === "right" };
      }
    }
  }
}

/** @returns how likely an unrelated sheet has a value at a question */
function likelihoods(set: AnySet): (index: number, value: Answer) => number {
  const draws = Array.from({ length: OTHER_DRAWS }, (_, seed) =>
    drawFor(set, seed, { name: NOBODY, occurrence: 1 }),
  );
  const perQuestion = set.questions.map((question) => {
    const others = draws.map(({ numbers, key }) => ({
      right: key[question.key]!,
      slips: slipValues(question, numbers, numbersAmong(key)).map(({ value }) => value),
    }));
    const { answer } = question;
    const is = (one: Answer, value: Answer): boolean =>
      typeof one === "number" && typeof value === "number"
        ? isWithin(one, value, toleranceOf(answer) / 2)
        : one === value;
    const known = new Map<Answer, number>();
    return (value: Answer): number => {
      const before = known.get(value);
      if (before !== undefined) return before;
      let met = 0;
      for (const { right, slips } of others) {
        if (is(right, value)) met += RIGHT_AS_OFTEN;
        if (answer.kind === "choice") met += (1 - RIGHT_AS_OFTEN) / answer.choices.length;
        else if (slips.length > 0) {
          met += ((1 - RIGHT_AS_OFTEN) * slips.filter((slip) => is(slip, value)).length) / slips.length;
        }
      }
      // One more met, so that what was never met is not taken for impossible.
      const likelihood = (met + 1) / (others.length + 1);
      known.set(value, likelihood);
      return likelihood;
    };
  });
  return (index, value) => perQuestion[index]!(value);
}
