/** What was meant by a figure that is out of the way. The slips are common practice, no source; each answer is worked by hand. */
import type { Finding, FindingPlace } from "../../src/review/finding";
import { likelySlips, slipOf } from "../../src/review/likelySlip";
import type { Book } from "../../src/workbooks/book";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { at, atField, smallBook } from "./smallBook";

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

test("a figure is guessed only from out of the way, and only where one slip of a kind leads there", () => {
  // Twice the greatest and half of the least are near still.
  const range = { low: 10, high: 30 };
  expect([slipOf(60, range), slipOf(61, range)]).toEqual([undefined, undefined]);
  expect([slipOf(150, range), slipOf(5, range), slipOf(2, range)]).toEqual([15, undefined, 20]);
  // The ends are usual themselves.
  expect([slipOf(300, range), slipOf(100, range), slipOf(301, range)]).toEqual([30, 10, undefined]);
  expect(slipOf(15, { low: 1, high: 7 })).toBe(1.5);
  expect(slipOf(-15, { low: 1, high: 200 })).toBe(15);
  // 15.5 has a decimal more than such figures are given to.
  expect([slipOf(155, { ...range, decimals: 0 }), slipOf(155, range)]).toEqual([undefined, 15.5]);
  // 0.25 h are 15 min, 0.3 are no quarter, and 1 is whole.
  const minutes = { low: 14, high: 70, unit: "minutes" } as const;
  expect([slipOf(0.25, minutes), slipOf(0.3, minutes), slipOf(1, minutes)]).toEqual([15, 30, 60]);
  expect(slipOf(0.25, { ...minutes, low: 16 })).toBe(25);
  // 32 °F are 0 °C; what is not above the usual is no Fahrenheit.
  const degrees = { low: 0, high: 30, unit: "temperature", decimals: 0 } as const;
  expect([slipOf(32, degrees), slipOf(86, degrees), slipOf(88, degrees)]).toEqual([0, 30, undefined]);
});

const HOT = "site_hot";

describe("among a workbook's own figures", () => {
  const finding = (place: FindingPlace, more: Partial<Finding> = {}): Finding => ({
    weight: "doubtful",
    place,
    message: "out of the way",
    remedy: "",
    ...more,
  });
  const guessed = (book: Book, ...findings: Finding[]): (number | undefined)[] => {
    const slips = likelySlips(book, multiRoom, findings);
    return findings.map((one) => slips.get(one));
  };
  const runs = (...values: (number | string)[]): Book =>
    smallBook({ rooms: values.map((run, index) => ({ outlet: `o${index}`, run })) });
  const first = at("rooms_run", 1);

  test("four others say what is usual, three do not", () => {
    expect(guessed(runs(140, 10, 12, 14, 16), finding(first))).toEqual([14]);
    expect(guessed(runs(140, 10, 12, 16), finding(first))).toEqual([undefined]);
    expect(guessed(runs(140, 10, 12, "", 16, "far"), finding(first))).toEqual([undefined]);
  });
  test("where they are few, a range that the finding knows", () =>
    expect(guessed(runs(140, 10), finding(first, { usual: { low: 8, high: 20 } }))).toEqual([14]));
  test("the finding's own range before theirs, their decimals all the same", () => {
    const usual = { low: 1, high: 2 };
    expect(guessed(runs(14, 10.5, 12, 13, 16), finding(first, { usual }))).toEqual([1.4]);
    expect(guessed(runs(14, 10, 12, 13, 16), finding(first, { usual }))).toEqual([undefined]);
  });
  test("what is accused itself says nothing of what is usual", () =>
    expect(guessed(runs(140, 170, 10, 12, 16), finding(first), finding(at("rooms_run", 2)))).toEqual([
      undefined,
      undefined,
    ]));
  test("a run may be in feet: 46 of 0.3048 m are 14.02", () =>
    expect(guessed(runs(46, 12.5, 13, 14.5, 15), finding(first))).toEqual([14]));
  test("minutes may be hours; a price is never", () => {
    const of = (block: string, key: string): Book =>
      smallBook({
        [block]: [0.75, 30, 40, 50, 60].map((value, index) => ({ name: `n${index}`, [key]: value })),
      });
    expect(guessed(of("routes", "minutes"), finding(at("routes_minutes", 1)))).toEqual([45]);
    expect(guessed(of("cables", "price"), finding(at("cables_price", 1)))).toEqual([undefined]);
  });
  test("a field of degrees: 131 °F are 55 °C", () => {
    const book = smallBook({}, { [HOT]: 131 });
    expect(guessed(book, finding(atField(HOT), { usual: { low: 30, high: 80 } }))).toEqual([55]);
    expect(guessed(book, finding(atField(HOT)))).toEqual([undefined]);
  });
  test("text, a cell of no number, a finding without a place: nothing", () => {
    expect(guessed(runs("140", 10, 12, 14, 16), finding(first))).toEqual([undefined]);
    expect(guessed(runs(140, 10, 12, 14, 16), finding(at("rooms_outlet", 1)))).toEqual([undefined]);
    expect(
      guessed(runs(140, 10, 12, 14, 16), { weight: "doubtful", message: "all of it", remedy: "" }),
    ).toEqual([undefined]);
  });
});
