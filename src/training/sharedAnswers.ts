/**
 * Sheets that share unlikely answers: wrong ones that no mistake explains and
 * that stand on another sheet too, although the numbers differ.
 *
 * For each question it is estimated how likely an unrelated trainee would
 * write that very value: the share of other draws of the set whose answer, or
 * a known mistake's, it would be, and never less than the width of the
 * tolerance in the spread of the answers. The product over a pair's shared
 * answers, times the number of pairs, is how often chance alone would do the
 * same in a group of this size. It is a reason to look, not a proof.
 */
import { drawFor, type Drawn } from "./drawNumbers";
import { isWithin, toleranceOf, type AnySet, type Question } from "./exercise";
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
  readonly values: readonly number[];
  /** Those that are right on the other sheet, with its numbers. */
  readonly rightThere: number;
  /** How many such pairs chance would bring in a group of this size. */
  readonly byChance: number;
}

/** More likely than this it is left to chance. */
const MOST_BY_CHANCE = 0.05;
const OTHER_DRAWS = 200;
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
  readonly value: number;
  readonly rightThere: boolean;
}

/** Pairs of sheets with the same number at one question, which on the first of them nothing explains. */
function* sharedAt(
  question: Question<never>,
  index: number,
  sheets: readonly MarkedSheet[],
): Generator<{ a: number; b: number; value: number; rightThere: boolean }> {
  if (question.answer.kind === "choice") return;
  const tolerance = toleranceOf(question.answer);
  const given = new Map<string, number[]>();
  for (const [at, { answers }] of sheets.entries()) {
    const value = answers[index]?.given;
    if (typeof value !== "number") continue;
    const key = value.toPrecision(12);
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
        const here = sheets[a]!.answers[index]!.right as number;
        if (isWithin(here, there.right as number, 2 * tolerance)) continue;
        yield { a, b, value: there.given as number, rightThere: there.outcome === "right" };
      }
    }
  }
}

/** @returns how likely an unrelated sheet has a value at a question */
function likelihoods(set: AnySet): (index: number, value: number) => number {
  const draws = Array.from({ length: OTHER_DRAWS }, (_, seed) =>
    drawFor(set, seed, { name: NOBODY, occurrence: 1 }),
  );
  const perQuestion = set.questions.map((question) => {
    const keys = draws.map(({ key }) => key[question.key]).filter((key) => typeof key === "number");
    const spread = Math.max(...keys) - Math.min(...keys);
    const wrong = draws.map(({ numbers, key }) =>
      slipValues(question, numbers, numbersAmong(key)).map(({ value }) => value),
    );
    const tolerance = toleranceOf(question.answer);
    const floor = Math.max(1 / spread, (2 * tolerance) / spread, 1 / 10_000);
    return (value: number): number => {
      const met = draws.filter(
        ({ key }, at) =>
          isWithin(key[question.key] as number, value, tolerance) ||
          wrong[at]!.some((slip) => isWithin(slip, value, tolerance)),
      ).length;
      // One more met, so that what was never met is not taken for impossible.
      return Math.min(1, Math.max(floor, (met + 1) / (draws.length + 1)));
    };
  });
  return (index, value) => perQuestion[index]!(value);
}
