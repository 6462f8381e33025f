/** Each slip of a unit whole, on a few cells that nothing computes, and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { unitSlips } from "../../src/review/rules/unitSlips";
import { at, atField, found, smallBook, type Row } from "./smallBook";

const told = (blocks: Readonly<Record<string, readonly Row[]>>, fields: Row = {}): Finding[] =>
  found(unitSlips, smallBook(blocks, fields));

test.each(["site_low", "site_high"])("%s of less than 100 MHz was meant in GHz", (name) => {
  expect(told({}, { [name]: 100 })).toEqual([]);
  expect(told({}, { [name]: "0.95" })).toEqual([]);
  expect(told({}, { [name]: 99 })).toHaveLength(1);
  expect(told({}, { [name]: 0.95 })).toStrictEqual([
    {
      weight: "wrong",
      place: atField(name),
      message: "A frequency of 0.95 MHz.",
      expected: "950 MHz, if 0.95 GHz was meant.",
      effect: "Every cable loses far too little, so every outlet seems to get enough.",
      remedy: "Enter the frequency in MHz.",
    },
  ]);
});

test.each(["out_low", "out_high"])("a head unit's %s of less than 60 dBµV was meant in dBmV", (key) =>
  expect(told({ units: [{ [key]: 60 }, { [key]: 24.5 }, { [key]: "20" }] })).toStrictEqual([
    {
      weight: "doubtful",
      place: at(`units_${key}`, 2),
      message: "A head unit that gives 24.5 dBµV.",
      expected: "84.5 dBµV, if 24.5 dBmV was meant.",
      effect: "Every outlet that it feeds seems to get 60 dB too little.",
      remedy: "Enter the level in dBµV: dBmV and 60.",
    },
  ]),
);

describe("runs in feet", () => {
  const runs = (...groups: readonly (readonly [from: string, ...runs: (number | string)[]])[]): Row[] =>
    groups.flatMap(([from, ...each]) => each.map((run, index) => ({ outlet: `o${index}`, from, run })));
  test("those from one device, beside all others", () =>
    expect(
      told({ rooms: runs(["S1", 10, 0, 10, 10], ["S2", 32.8, 33, 99], ["s2", -1, "50"]) }),
    ).toStrictEqual([
      {
        weight: "doubtful",
        place: at("rooms_run", 5),
        message: "The 3 runs from S2 are 3.3 times as long as the others.",
        expected: "For example 10 rather than 32.8, if they were measured in feet.",
        effect: "Their outlets seem to get less level, and too much cable is priced.",
        remedy: "Compare with the plan; enter all lengths in the unit that Site names.",
      },
    ]));
  test("of outlets that nothing feeds", () =>
    expect(told({ rooms: runs(["", 30, 30, 30], ["S2", 10, 10, 10]) })[0]!.message).toBe(
      "The 3 runs without “fed from” are 3 times as long as the others.",
    ));
  test.each<[string, Row[], number]>([
    ["twice as long", runs(["S1", 10, 10, 10], ["S2", 20, 20, 20]), 1],
    ["less than twice", runs(["S1", 10, 10, 10], ["S2", 19, 19.9, 20]), 0],
    ["two of them", runs(["S1", 10, 10, 10], ["S2", 30, 30]), 0],
    ["two others", runs(["S1", 10, 10], ["S2", 30, 30, 30]), 0],
    [
      "no outlets, so no job",
      runs(["S1", 1, 1, 1], ["S2", 3, 3, 3]).map((row) => ({ ...row, outlet: "" })),
      0,
    ],
  ])("%s", (_, rooms, count) => expect(told({ rooms })).toHaveLength(count));
});

describe("a price in cents", () => {
  const cables = (prices: readonly (number | string)[], sums: readonly (number | string)[] = []) =>
    told({ cables: prices.map((price) => ({ price })), cables_bought: sums.map((sum) => ({ sum })) });
  test("is 15 times that of its neighbours", () =>
    expect(cables([2, 30.5, 2])).toStrictEqual([
      {
        weight: "doubtful",
        place: at("cables_price", 2),
        message: "A price of 30.5, where those beside it are about 2.",
        expected: "0.305, if it was typed in cents.",
        effect: "Each piece that is bought raises the price a hundredfold.",
        remedy: "Look the price up and enter it in whole money.",
      },
    ]));
  test.each<[string, readonly (number | string)[], readonly (number | string)[], number]>([
    ["15 times", [2, 30], [], 1],
    ["less than 15 times", [2, 29.9], [], 0],
    ["alone", [90, 0, "2"], [], 0],
    ["5 times, and more than half of the bill", [2, 10], [9, 10], 1],
    ["less than 5 times", [2, 9.9], [9, 10], 0],
    ["5 times, and half of the bill", [2, 10], [10, 10], 0],
    ["5 times, of a bill that is text", [2, 10], [1, "10"], 0],
    ["5 times, of a bill beside text", [2, 10], ["9", 10], 1],
    ["5 times, without a bill", [2, 10], [], 0],
  ])("%s", (_, prices, sums, count) => expect(cables(prices, sums)).toHaveLength(count));
  test("of the fittings, which are unlike each other, only where it makes more than 0.4 of the bill", () => {
    const of = (sum: number) =>
      told({
        fittings: [{ price: 1 }, { price: 15 }],
        fittings_bought: [{ sum: 30 }, { sum }],
        cables_bought: [{ sum: 30 }],
      }).length;
    expect([of(40), of(41)]).toEqual([0, 1]);
  });
});

describe("the rate of the crew", () => {
  const RATE = { weight: "doubtful", place: atField("labour_rate"), usual: { low: 10, high: 200 } };
  const HOUR = "Enter what an hour of the crew costs.";
  /** @param share of labour in a cost of 200 */
  const rate = (value: number | string, share?: number): Finding[] =>
    told(
      { units: [{ price: 100 }, { price: 0 }, { price: "9" }] },
      { labour_rate: value, ...(share !== undefined && { price_labour: 200 * share, price_direct: 200 }) },
    );
  test.each<[number, number | undefined, Partial<Finding>]>([
    [
      1.5,
      undefined,
      {
        message: "An hour costs 1.5, a head unit about 100.",
        expected: "90, if 1.5 was meant for a minute.",
        effect: "Nearly all labour is given away.",
        remedy: HOUR,
      },
    ],
    [
      5000,
      0.5,
      {
        message: "An hour costs 5000, a head unit about 100; labour is 50 % of the cost.",
        expected: "50, if it was typed in cents.",
        effect: "All labour is priced a hundredfold.",
        remedy: "Enter the rate in whole money.",
      },
    ],
    [
      420,
      0.85,
      {
        message: "An hour costs 420, a head unit about 100; labour is 85 % of the cost.",
        expected: "52.5, if it was meant for a day of 8 hours.",
        effect: "All labour goes by it.",
        remedy: HOUR,
      },
    ],
    [
      4.5,
      0.1,
      {
        message: "An hour costs 4.5, a head unit about 100; labour is 10 % of the cost.",
        expected: "45, if a figure was lost.",
        effect: "Nearly all labour is given away.",
        remedy: HOUR,
      },
    ],
  ])("%d", (value, share, words) => expect(rate(value, share)).toStrictEqual([{ ...RATE, ...words }]));
  test.each<[string, number | string, number | undefined, number]>([
    ["a fiftieth of a head unit", 2, undefined, 0],
    ["ten head units", 1000, 0.5, 0],
    ["more than ten", 1001, 0.5, 1],
    ["two, and nearly all of the cost", 200, 0.85, 0],
    ["more than two, and nearly all of it", 201, 0.85, 1],
    ["more than two, and 0.8 of it", 201, 0.8, 0],
    ["more than two, of no known cost", 201, undefined, 0],
    ["more than two, and no labour", 201, 0, 0],
    ["a tenth, and nearly nothing of it", 10, 0.1, 0],
    ["less than a tenth, and nearly nothing of it", 9.9, 0.1, 1],
    ["less than a tenth, and a fifth of it", 9.9, 0.2, 0],
    ["less than a tenth, of no known cost", 9.9, undefined, 0],
    ["nothing", 0, 0.1, 0],
    ["less than nothing", -1, 0.1, 0],
    ["text", "1", 0.1, 0],
  ])("%s", (_, value, share, count) => expect(rate(value, share)).toHaveLength(count));
  test("beside no head unit with a price nothing is said", () =>
    expect(told({ units: [{ price: 0 }] }, { labour_rate: 0.1 })).toEqual([]));
});

describe("reels in feet", () => {
  const reels = (unit: string, ...each: readonly (number | string)[]): Finding[] =>
    told({ cables: each.map((reel) => ({ reel })) }, { site_unit: unit });
  test("of the lengths of a job in metres", () =>
    expect(reels("FT", 100, 150, 500, "9")).toStrictEqual([
      {
        weight: "doubtful",
        place: atField("site_unit"),
        message: "All lengths are in feet, and the reels are of about 150.",
        expected: "m, if these are metres; reels in feet have 200 or more (common practice, no source).",
        meant: "m",
        effect: "Every run loses a third of what it does, and a third of the cable is bought.",
        remedy: "Compare with the price list; a change of the unit changes no length.",
      },
    ]));
  test("in metres, of usual lengths, too few to tell, or of no unit: nothing", () => {
    expect(reels("m", 100, 150, 150)).toEqual([]);
    expect(reels("ft", 100, 200, 250)).toEqual([]);
    expect(reels("ft", 100, 150)).toEqual([]);
    expect(told({ cables: [{ reel: 100 }, { reel: 100 }, { reel: 100 }] })).toEqual([]);
  });
});
