/**
 * Sheets that share unlikely answers: wrong ones that no mistake explains and
 * that stand on another sheet too, although the numbers differ.
 *
 * For each question it is estimated how likely an unrelated trainee would
 * write that very value, from other draws of the set, half of the trainees
 * being right, most of the others making a common mistake and the rest one of
 * those met now and then. The product over a
 * pair's shared answers, times the number of pairs, is how often chance alone
 * would do the same in a group of this size. It is a reason to look, not a proof.
 */
import { anybodysDraw, type Drawn } from "./drawNumbers";
import { isWithin, toleranceOf, type AnySet, type Answer, type Question } from "./exercise";
import type { MarkedAnswer } from "./markAnswers";
import { slipValues, type SlipValue } from "./slips/slipValues";
import { numbersAmong } from "./solve";

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
/** Of answers to a question. */
const RIGHT_AS_OFTEN = 0.5;
const COMMON_AS_OFTEN = 0.35;
const SELDOM_AS_OFTEN = 0.15;

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

/** A mistake that may be the one is no explanation: with small counts one always may. */
const unexplained = ({ outcome, perhaps }: MarkedAnswer): boolean =>
  outcome === "wrong" || (outcome === "slip" && perhaps === true);

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
      if (!unexplained(sheets[a]!.answers[index]!)) continue;
      for (const b of group) {
        if (a === b) continue;
        const there = sheets[b]!.answers[index]!;
        // Both unexplained: told once.
        if (unexplained(there) && b < a) continue;
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
  const draws = Array.from({ length: OTHER_DRAWS }, (_, seed) => anybodysDraw(set, seed));
  const perQuestion = set.questions.map((question) => {
    const others = draws.map(({ numbers, key }) => ({
      right: key[question.key]!,
      slips: slipValues(set, question, numbers, numbersAmong(key)),
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
        else {
          const share = (rank: SlipValue["rank"]): number => {
            const all = slips.filter((slip) => slip.rank === rank);
            return all.filter((slip) => is(slip.value, value)).length / Math.max(1, all.length);
          };
          met += COMMON_AS_OFTEN * share("often") + SELDOM_AS_OFTEN * share("seldom");
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
