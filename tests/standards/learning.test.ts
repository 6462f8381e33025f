/** What is learned of accepted quotes: which of them count, what stands out, and what is kept as a person left it. */
import { allowed, learn, lastOfEach, learnedRows, type Accepted } from "../../src/review/ranges/learned";
import type { Measure } from "../../src/review/ranges/measures";
import { learnedOf } from "../../src/standards/learning";

const DAY = 46_400;

const metre = (value: number, unit = "EUR per m"): Measure => ({
  name: "cables_price",
  what: "Price per m",
  of: "indoor drop",
  unit,
  value,
  times: 100,
});
const quote = (number: string, value: number, revision = 1, unit?: string): Accepted => ({
  called: `${number}-${revision}.xlsx`,
  number,
  revision,
  measures: [metre(value, unit)],
});
const five = [0.36, 0.37, 0.38, 0.4, 0.41].map((value, index) => quote(`p-${index}`, value));

test("of five prices the range is from the least to the most, around the middle one", () => {
  expect(learn(five).ranges).toEqual([
    {
      name: "cables_price",
      what: "Price per m",
      of: "indoor drop",
      unit: "EUR per m",
      low: 0.36,
      middle: 0.38,
      high: 0.41,
      quotes: 5,
    },
  ]);
});

test("a slip in a past quote is told, and widens nothing", () => {
  const { ranges, outside } = learn([...five, quote("p-9", 3.8)]);
  expect(ranges).toMatchObject([{ low: 0.36, high: 0.41, quotes: 6 }]);
  expect(outside.map(({ called, measure }) => [called, measure.value])).toEqual([["p-9-1.xlsx", 3.8]]);
});

test("of three quotes none stands out, of four one may", () => {
  const three = [0.38, 0.39, 0.6].map((value, index) => quote(`p-${index}`, value));
  expect(learn(three)).toMatchObject({ ranges: [{ high: 0.6 }], outside: [] });
  expect(learn([...three, quote("p-7", 0.4)])).toMatchObject({
    ranges: [{ low: 0.38, high: 0.4 }],
    outside: [{ called: "p-2-1.xlsx" }],
  });
});

test("of a quote's revisions the last counts, in whatever order they are read", () => {
  const revisions = [quote("p-1", 0.6, 3), quote("p-1", 0.5, 1), quote("p-1", 0.55, 2)];
  expect(lastOfEach(revisions).map(({ revision }) => revision)).toEqual([3]);
});

test("currencies are kept apart", () => {
  const { ranges } = learn([...five, quote("p-8", 9.5, 1, "CZK per m"), quote("p-9", 9.8, 1, "CZK per m")]);
  expect(ranges.map(({ unit, quotes, high }) => [unit, quotes, high])).toEqual([
    ["EUR per m", 5, 0.41],
    ["CZK per m", 2, 9.8],
  ]);
});

test("prices that never differed are no range of nothing: a quarter more is let pass", () => {
  const [range] = learn(["a", "b", "c", "d"].map((number) => quote(number, 0.4))).ranges;
  const { low, high } = allowed(range!);
  expect([low, high]).toEqual([expect.closeTo(0.32, 9), expect.closeTo(0.5, 9)]);
});

test("decibels over a microvolt have no factor: three to either side", () => {
  const level = { ...learn(five).ranges[0]!, unit: "dBµV", low: 47, high: 48 };
  expect(allowed(level)).toEqual({ low: 44, high: 51 });
});

test("learning writes rows that the review reads again, and leaves those that a person keeps", () => {
  const kept = {
    what: "Price per m",
    of: "Indoor drop",
    unit: "EUR per m",
    low: 0.3,
    middle: 0.35,
    high: 0.5,
    quotes: 40,
    keep: "yes",
    known: "cables_price",
  };
  const first = learnedOf({}, five, DAY);
  expect(learnedRows(first.inputs.blocks!.ranges!)).toEqual(first.ranges);
  expect(first.inputs.blocks!.ranges).toMatchObject([{ learned: DAY, quotes: 5 }]);
  const again = learnedOf({ blocks: { ranges: [kept] } }, five, DAY);
  expect(again.inputs.blocks!.ranges).toEqual([kept]);
  expect(again.kept).toBe(1);
});

test("what is learned from one quote alone is not written", () => {
  expect(learnedOf({}, [five[0]!], DAY).inputs.blocks!.ranges).toEqual([]);
});

test("a row that is half filled, or crossed, says nothing", () => {
  expect(
    learnedRows([
      { known: "labour_rate", low: 50 },
      { known: "labour_rate", low: 60, high: 50 },
      { low: 50, high: 60 },
    ]),
  ).toEqual([]);
});
