/** What was meant by a figure that is out of the way. The slips are common practice, no source; each answer is worked by hand. */
import { slipOf } from "../../src/review/likelySlip";

const RUNS = { low: 8, high: 30, decimals: 1, unit: "length" } as const;

test.each([
  ["a nought too many", 170, 17],
  ["no point", 155, 15.5],
  ["two noughts too few", 0.14, 14],
  ["a minus", -14, 14],
  // 86.9 ft of 0.3048 m each are 26.487 m.
  ["feet for metres", 86.9, 26.5],
  ["millimetres for metres", 21_000, 21],
])("%s: %d was %d", (_, value, meant) => expect(slipOf(value, RUNS)).toBeCloseTo(meant, 9));

test("hours for minutes", () =>
  expect(slipOf(2.5, { low: 120, high: 200, decimals: 0, unit: "minutes" })).toBe(150));

test.each([
  ["usual itself", 17, RUNS],
  ["nothing", 0, RUNS],
  ["near, and no slip away", 45, RUNS],
  ["short of every slip", 10, { low: 0.5, high: 0.9 }],
  // Sixty times as much, and no minutes.
  ["a price that would be one by the hour", 2, { low: 100, high: 130 }],
])("%s: nothing is guessed", (_, value, range) => expect(slipOf(value, range)).toBeUndefined());

test("degrees Fahrenheit and parts of an hour are slips of a unit", () => {
  expect(slipOf(131, { low: 10, high: 80, unit: "temperature", decimals: 0 })).toBe(55);
  expect(slipOf(95, { low: 10, high: 80, unit: "temperature", decimals: 0 })).toBe(35);
  expect(slipOf(70, { low: 10, high: 80, unit: "temperature", decimals: 0 })).toBeUndefined();
  expect(slipOf(0.25, { low: 1, high: 240, unit: "minutes" })).toBe(15);
  // Not a quarter of an hour: a point slipped.
  expect(slipOf(0.4, { low: 1, high: 9, unit: "minutes" })).toBe(4);
});
