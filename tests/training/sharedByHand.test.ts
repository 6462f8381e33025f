/**
 * How likely chance alone brings shared answers, worked out by hand from the
 * shares that sharedAnswers.ts states: in a set that always draws the same, of
 * 200 other draws each is right with 0.5, makes one of its common mistakes with
 * 0.35 and one of the others with 0.15; and one draw more has the value itself.
 */
import type { Answer } from "../../src/training/exercise";
import type { MarkedAnswer } from "../../src/training/markAnswers";
import { sharedAnswers, type MarkedSheet } from "../../src/training/sharedAnswers";
import { choice, number, question, setOf } from "./madeUpSet";

const slips = [
  { name: "a", wrong: () => 20 },
  { name: "b", wrong: () => 30 },
  { name: "c", wrong: () => 40, seldom: true },
];
const set = setOf([
  question("p", () => 10, { answer: number("dB", 0), slips }),
  question("q", () => 10, { answer: number("dB", 0), slips }),
  question("w", () => "ok", { answer: choice("low", "ok", "high", "none") }),
]);
const DRAWS = 201;
const NEVER = 1 / DRAWS;
const RIGHT = (200 * 0.5 + 1) / DRAWS;
const COMMON = (200 * 0.35 * 0.5 + 1) / DRAWS;
const SELDOM = (200 * 0.15 + 1) / DRAWS;
const WORD = (200 * 0.5 * 0.25 + 1) / DRAWS;

type Given = readonly [given: Answer, right: Answer, outcome: MarkedAnswer["outcome"], perhaps?: true];
/** A sheet with answers of its own, wrong ones and no word, but where something else is given. */
function sheet(label: string, given: Readonly<Record<number, Given>> = {}): MarkedSheet {
  const unique = label.charCodeAt(0);
  const answers = ["p", "q", "w"].map((key, at): MarkedAnswer => {
    const plain: Given = at === 2 ? ["", "ok", "blank"] : [unique + 0.5, unique, "wrong"];
    const [value, right, outcome, perhaps] = given[at] ?? plain;
    return {
      ...{ key, number: at + 1, given: value, right, outcome, points: 0, carriedFrom: [] },
      ...(perhaps && { perhaps }),
    };
  });
  return { label, drawn: { numbers: {}, key: {} }, answers };
}
const pair = (one: Readonly<Record<number, Given>>, other: Readonly<Record<number, Given>>) =>
  sharedAnswers(set, [sheet("A", one), sheet("B", other)]);
const close = (value: number): number => expect.closeTo(value, 12) as number;

test("one value that nobody was met with, by two sheets", () => {
  expect(pair({ 0: [99, 11, "wrong"] }, { 0: [99, 15, "wrong"] })).toEqual([
    { one: "A", other: "B", questions: [1], values: [99], rightThere: 0, byChance: close(NEVER) },
  ]);
});
test("two values: the product; right on the other sheet is counted", () => {
  expect(
    pair({ 0: [99, 11, "wrong"], 1: [10, 14, "wrong"] }, { 0: [99, 15, "wrong"], 1: [10, 10, "right"] }),
  ).toEqual([
    {
      ...{ one: "A", other: "B", questions: [1, 2], values: [99, 10], rightThere: 1 },
      byChance: close(NEVER * RIGHT),
    },
  ]);
});
test("a common mistake, one met now and then, and a word", () => {
  const never = { 0: [99, 11, "wrong"] } as const;
  const there = { 0: [99, 15, "wrong"] } as const;
  const of = (value: Answer, at: 1 | 2, right: Answer = 14) =>
    pair({ ...never, [at]: [value, right, "wrong"] }, { ...there, [at]: [value, "other", "slip"] })[0]!
      .byChance;
  expect(of(20, 1)).toBeCloseTo(NEVER * COMMON, 12);
  // Known within half the tolerance.
  expect(of(30.4, 1)).toBeCloseTo(NEVER * COMMON, 12);
  expect(of(30.6, 1)).toBeCloseTo(NEVER * NEVER, 12);
  expect(of(40, 1)).toBeCloseTo(NEVER * SELDOM, 12);
  expect(of("low", 2, "high")).toBeCloseTo(NEVER * WORD, 12);
  expect(of("ok", 2, "high")).toBeCloseTo(NEVER * (WORD + (200 * 0.5) / DRAWS), 12);
});
test("what chance may well bring is nobody's fault", () => {
  for (const value of [10, 20, 40]) {
    expect(pair({ 0: [value, 11, "wrong"] }, { 0: [value, 15, "wrong"] })).toEqual([]);
  }
});
test("by how many pairs there are: of three sheets three, of four six", () => {
  const shared = [sheet("A", { 0: [99, 11, "wrong"] }), sheet("B", { 0: [99, 15, "wrong"] })];
  expect(sharedAnswers(set, [...shared, sheet("C")])).toMatchObject([{ byChance: close(3 * NEVER) }]);
  // Six times one of 201 is more than one in fifty.
  expect(sharedAnswers(set, [...shared, sheet("C"), sheet("D")])).toEqual([]);
  expect(sharedAnswers(set, shared.slice(0, 1))).toEqual([]);
  expect(sharedAnswers(set, [])).toEqual([]);
});
test("a value that is explained on the one sheet is that sheet's own, unless it may be something else", () => {
  const there = { 0: [99, 15, "wrong"] } as const;
  // Each pair is told once, from the sheet on which nothing explains it.
  expect(pair({ 0: [99, 11, "slip"] }, there)).toMatchObject([{ one: "B", other: "A" }]);
  expect(pair({ 0: [99, 11, "slip", true] }, there)).toMatchObject([{ one: "A", other: "B" }]);
  expect(pair({ 0: [99, 11, "slip"] }, { 0: [99, 15, "carried over"] })).toEqual([]);
  expect(pair({ 0: [99, 11, "slip"] }, { 0: [99, 15, "right"] })).toEqual([]);
});
test("where the right answers are the same, or nearly, the same wrong one is no wonder", () => {
  const of = (right: number) => pair({ 0: [99, 11, "wrong"] }, { 0: [99, right, "wrong"] });
  for (const right of [11, 13, 9]) expect(of(right)).toEqual([]);
  for (const right of [13.1, 8.9]) expect(of(right)).toHaveLength(1);
});
test("blanks and what is unclear are shared by nobody", () => {
  for (const outcome of ["blank", "unclear"] as const) {
    expect(pair({ 0: [99, 11, outcome] }, { 0: [99, 15, "wrong"] })).toEqual([]);
    expect(pair({ 0: [99, 11, outcome] }, { 0: [99, 15, outcome] })).toEqual([]);
  }
});
test("the least likely pair stands first", () => {
  const found = sharedAnswers(set, [
    sheet("A", { 0: [99, 11, "wrong"] }),
    sheet("B", { 0: [99, 15, "wrong"], 1: [77, 11, "wrong"] }),
    sheet("C", { 0: [88, 15, "wrong"], 1: [77, 15, "wrong"] }),
    sheet("D", { 0: [88, 21, "wrong"], 1: [66, 11, "wrong"] }),
    sheet("E", { 0: [88, 31, "wrong"], 1: [66, 15, "wrong"] }),
  ]);
  expect(found).toMatchObject([
    { one: "D", other: "E", questions: [1, 2], byChance: close(10 * NEVER ** 2) },
  ]);
});
