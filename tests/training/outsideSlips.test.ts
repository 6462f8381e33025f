/**
 * Slips thought up by someone who had not seen the code, made on sheets that
 * are drawn anew: how many are named rightly, as something else, or not at all.
 * Two draws of each set by default; RIGSHEET_RUNS=most for the figures in full.
 */
import names from "../fixtures/training/names.json";
import { drawFor, type Drawn } from "../../src/training/drawNumbers";
import {
  isWithin,
  toleranceOf,
  type AnySet,
  type Answer,
  type AnswerKind,
} from "../../src/training/exercise";
import { copied, generalSlips } from "../../src/training/generalSlips";
import { markAnswers, type MarkedAnswer } from "../../src/training/markAnswers";
import { trainingSets } from "../../src/training/sets/all";
import { slipValues, unanswerable } from "../../src/training/slips/slipValues";
import { numbersAmong } from "../../src/training/solve";
import { bind, outsideSheet, papersOf, right, slips, type OutsideSlip } from "./outsideSheet";
import { tries } from "../support/tries";

const DRAWS = tries(2, 2, 12);
const VALUE_DRAWS = tries(4, 12);
const drawsOf = (set: AnySet): Drawn[] =>
  Array.from({ length: DRAWS }, (_, seed) => drawFor(set, seed, { name: "Simulated", occurrence: 1 }));
const expected: Readonly<Record<string, string>> = names;

/** From the first question on, by the factor of the slip: the maker's own figures. */
const CARRIED: Readonly<Record<string, number>> = {
  "supply-7-01": 1 / 0.3048,
  "supply-7-02": 3.28 / 0.3048,
  "supply-7-03": 100,
};

type Verdict = "rightly" | "otherwise" | "left to the trainer" | "unnamed" | "right";

function verdictOn({ id }: OutsideSlip, { outcome, named = "", look }: MarkedAnswer): Verdict {
  if (outcome === "unclear" || look !== undefined) return "left to the trainer";
  if (outcome === "right") return "right";
  if (outcome === "carried over") return expected[id] === "carried over" ? "rightly" : "otherwise";
  if (named === "") return "unnamed";
  return named.split(" or ").includes(expected[id] ?? "") ? "rightly" : "otherwise";
}

/** @returns undefined where the slip can't be made with these numbers, or can't be told from the right answer */
function tried(set: AnySet, drawn: Drawn, slip: OutsideSlip): Verdict | undefined {
  const figures = bind(slip, outsideSheet(set, drawn));
  const question = set.questions[slip.n - 1]!;
  const key = drawn.key[question.key]!;
  const made = right(figures)[slip.n];
  // The maker knows nothing of a fault of the quote that was added since.
  if (made === undefined) return undefined;
  if (typeof key === "number") expect(Math.abs(Number(made) - key)).toBeLessThan(0.06);
  else expect(made).toBe(key);
  const wrong = slip.answer(figures);
  if (wrong === undefined) return undefined;
  const round = (value: Answer, at: number): Answer => {
    const { answer } = set.questions[at]!;
    return typeof value === "number" && answer.kind === "number"
      ? Number(value.toFixed(answer.decimals))
      : value;
  };
  const answer = typeof wrong === "number" && !Number.isFinite(wrong) ? "#NUM!" : wrong;
  const typed = slip.asTyped ? answer : round(answer, slip.n - 1);
  const near =
    typeof typed === "number" && typeof key === "number"
      ? isWithin(typed, key, toleranceOf(question.answer))
      : typed === key;
  if (near) return undefined;
  const sheet: Record<string, Answer> = { [question.key]: typed };
  set.questions.slice(0, slip.n - 1).forEach((one, at) => {
    const factor = at < 2 ? (CARRIED[slip.id] ?? 1) : 1;
    const before = drawn.key[one.key]!;
    sheet[one.key] = round(typeof before === "number" ? before * factor : before, at);
  });
  return verdictOn(slip, markAnswers(set, drawn, (one) => sheet[one])[slip.n - 1]!);
}

const counts = new Map<string, Record<Verdict, number>>();
const none = (): Record<Verdict, number> => ({
  rightly: 0,
  otherwise: 0,
  "left to the trainer": 0,
  unnamed: 0,
  right: 0,
});
const count = (of: string, verdict: Verdict): void => {
  const all = counts.get(of) ?? none();
  all[verdict]++;
  counts.set(of, all);
};
const share = (of: string): number => {
  const all = counts.get(of)!;
  return all.rightly / Object.values(all).reduce((sum, one) => sum + one, 0);
};

test.each(trainingSets.map((set) => [set.id, set] as const))("%s: most slips are named", (id, set) => {
  const draws = drawsOf(set);
  const own = slips.filter((slip) => slip.set === id);
  expect(own.length).toBeGreaterThan(50);
  for (const slip of own) {
    for (const drawn of draws) {
      const verdict = tried(set, drawn, slip);
      if (verdict === undefined) continue;
      count(slip.likely, verdict);
      count(id, verdict);
    }
  }
  process.stdout.write(`  ${id}: ${JSON.stringify(counts.get(id))}\n`);
  expect(share(id)).toBeGreaterThan(id === "bad-quote" ? 0.55 : 0.75);
});

test("the common ones nearly always, and of all of them most", () => {
  for (const likely of ["often", "seldom"])
    process.stdout.write(`  ${likely}: ${JSON.stringify(counts.get(likely))}\n`);
  expect(share("often")).toBeGreaterThan(0.93);
  expect(share("seldom")).toBeGreaterThan(0.8);
});

/** No slip of ours has these names: they are what marking says of an answer that stands on no slip. */
const NO_SLIP = /^(?:carried over|the cell holds the error .*)$/;
/** Where ours, of the same name, leads elsewhere. */
const OTHERWISE: Readonly<Record<string, string>> = {
  "cable-2-23": "any other answer may be the one that is given; its maker takes a later one",
  "bad-quote-9-01": "has two names of ours, by whether the right mistake is one of the two that it exchanges",
  "bad-quote-5-06": "its maker does not round the metres to 0.1, as the quote does",
};

/** Where our slips of a name lead, and mistakes that can be made with any number. */
function ledToBy(name: string, set: AnySet, at: number, { numbers, key }: Drawn): Answer[] {
  const question = set.questions[at]!;
  const right = key[question.key]!;
  const all = [
    ...slipValues(set, question, numbers, numbersAmong(key), "mixed up"),
    ...copied(set, question, numbers, numbersAmong(key)),
    ...(typeof right === "number" ? generalSlips(question.answer, right) : []),
    ...unanswerable(set, question, numbers, numbersAmong(key)).map((one) => ({
      name: one,
      value: NO_NUMBER,
    })),
  ];
  const asOne = (one: string): boolean => one === name || one.split(" or ").includes(name);
  return all.flatMap((one) => (asOne(one.name) ? [one.value] : []));
}

const NO_NUMBER = "#NUM!";

/** Within what counts as right; its maker types a count that was not rounded to two places. */
const agreesWithMaker =
  (answer: AnswerKind) =>
  (ours: Answer, theirs: Answer): boolean =>
    typeof ours === "number" && typeof theirs === "number"
      ? isWithin(ours, theirs, toleranceOf(answer) || 0.005)
      : ours === theirs;

test.each(trainingSets.map((set) => [set.id, set] as const))(
  "%s: a slip leads where its maker says, by the name that is paired with it",
  (id, set) => {
    const draws = Array.from({ length: VALUE_DRAWS }, (_, seed) =>
      drawFor(set, seed, { name: "Simulated", occurrence: 1 }),
    );
    const wrong: string[] = [];
    for (const slip of slips.filter((one) => one.set === id)) {
      const name = expected[slip.id];
      if (name === undefined || NO_SLIP.test(name) || slip.id in OTHERWISE) continue;
      const question = set.questions[slip.n - 1]!;
      const same = agreesWithMaker(question.answer);
      const cases = draws.flatMap((drawn) => {
        const theirs = slip.answer(bind(slip, outsideSheet(set, drawn)));
        // Not every slip can be made with every number.
        if (theirs === undefined || same(drawn.key[question.key]!, theirs)) return [];
        return [{ theirs, ours: ledToBy(name, set, slip.n - 1, drawn) }];
      });
      const made = cases.filter(({ ours }) => ours.length > 0);
      const agreed = made.filter(({ ours, theirs }) => ours.some((one) => same(one, theirs)));
      if (agreed.length < Math.max(made.length, Math.min(1, cases.length))) wrong.push(`${slip.id}: ${name}`);
    }
    expect(wrong).toEqual([]);
  },
);

test("whole papers with one slip, carried on with the trainee's own answers, have the marks that the sheet promises", () => {
  let papers = 0;
  for (const set of trainingSets) {
    for (const drawn of drawsOf(set)) {
      for (const paper of papersOf(outsideSheet(set, drawn))) {
        papers++;
        const marked = markAnswers(
          set,
          drawn,
          (key) => paper.answers[set.questions.findIndex((one) => one.key === key) + 1],
        );
        const points = Object.keys(paper.expectMarks).map((at) => marked[Number(at) - 1]!.points);
        expect({ paper: paper.id, points }).toEqual({
          paper: paper.id,
          points: Object.values(paper.expectMarks),
        });
      }
    }
  }
  expect(papers).toBeGreaterThanOrEqual(24 * DRAWS);
});
