/** What is said of each measured value beside its prediction, and of a workbook's age, each finding whole and each bound on both sides. */
import type { OtherResult } from "../../src/review/earlierDifferences";
import type { Finding } from "../../src/review/finding";
import { earlierVersion } from "../../src/review/rules/earlierVersion";
import { measured } from "../../src/review/rules/measured";
import { bookOf, emptySheet } from "../support/books";
import { at, found, smallBook, type Row } from "./smallBook";

describe("what was measured", () => {
  const LIMITS = { commission_tolerance: 3, commission_volts_tolerance: 1 };
  /** The second outlet's due range; the commissioning list goes row by row with the outlets. */
  const due: Row = { low_from: 60, low_to: 62, high_from: 55, high_to: 59, volts_due: 24 };
  const outlet = (built: Row, more: Row = {}, fields: Row = LIMITS): Finding[] =>
    found(
      measured,
      smallBook(
        { rooms: [{ outlet: "a" }, { outlet: "b", ...built }], commission: [{}, { ...due, ...more }] },
        fields,
      ),
    );
  const DIAGNOSIS = {
    weight: "doubtful",
    remedy: "Read Diagnosis for likely causes and the next measurement; measure again first.",
  };
  test("at an outlet: each end of the range, and volts", () =>
    expect(outlet({ built_low: 65.5, built_high: 50, built_volts: 22 })).toStrictEqual([
      {
        ...DIAGNOSIS,
        place: at("rooms_built_low", 2),
        message: "b reads 65.5 dBµV at the lowest frequency, 3.5 dB over the prediction.",
        expected: "60.0 to 62.0 dBµV, ± 3.",
      },
      {
        ...DIAGNOSIS,
        place: at("rooms_built_high", 2),
        message: "b reads 50 dBµV at the highest frequency, 5.0 dB under the prediction.",
        expected: "55.0 to 59.0 dBµV, ± 3.",
      },
      {
        ...DIAGNOSIS,
        place: at("rooms_built_volts", 2),
        message: "b reads 22 V at the outlet, 2.0 V under the prediction.",
        expected: "24.0 V, ± 1.",
      },
    ]));
  test.each<[number | string, number]>([
    [65, 0],
    [65.01, 1],
    [57, 0],
    [56.99, 1],
    [61, 0],
    ["no signal", 0],
    ["", 0],
  ])("%j of 60 to 62, ± 3: %d", (built_low, count) => expect(outlet({ built_low })).toHaveLength(count));
  // 0.1 + 0.2 is a little more than 0.3: what just reaches the tolerance is within it.
  test("no noise of a subtraction is told", () =>
    expect(
      outlet({ built_low: 0.1 + 0.2 }, { low_from: 0, low_to: 0 }, { commission_tolerance: 0.3 }),
    ).toEqual([]));
  test("without a tolerance there is none; without a prediction nothing is held to it", () => {
    expect(outlet({ built_low: 62.1 }, {}, {})).toMatchObject([{ expected: "60.0 to 62.0 dBµV, ± 0." }]);
    expect([outlet({ built_low: 99 }, { low_from: "" }), outlet({ built_low: 99 }, { low_to: "?" })]).toEqual(
      [[], []],
    );
  });

  const head = (built: Row, more: Row = {}): Finding[] =>
    found(
      measured,
      smallBook(
        {
          heads: [
            {
              id: "H1",
              fed_low_hot: 70,
              fed_low_cold: 72,
              fed_high_hot: 66,
              fed_high_cold: 69,
              fed_least: 20,
              fed_off: 23,
              fed_alone: 24,
              fed_on: 21,
              ...built,
              ...more,
            },
          ],
        },
        LIMITS,
      ),
    );
  test("at a head unit: the ends of its cable, and its volts from the least to the most of all it is fed", () => {
    const cable = {
      weight: "doubtful",
      remedy: "Look at its cable and at the dish's aim; measure again at its own connector.",
    };
    expect(head({ built_low: 66, built_high: 73, built_volts: 18.5 })).toStrictEqual([
      {
        ...cable,
        place: at("heads_built_low", 1),
        message:
          "H1 reads 66 dBµV at the end of its cable, at the lowest frequency, 4.0 dB under the prediction.",
        expected: "70.0 to 72.0 dBµV, ± 3.",
      },
      {
        ...cable,
        place: at("heads_built_high", 1),
        message:
          "H1 reads 73 dBµV at the end of its cable, at the highest frequency, 4.0 dB over the prediction.",
        expected: "66.0 to 69.0 dBµV, ± 3.",
      },
      {
        weight: "doubtful",
        place: at("heads_built_volts", 1),
        message: "H1 reads 18.5 V at the head unit, 1.5 V under the prediction.",
        expected: "20.0 to 24.0 V, ± 1.",
        remedy: "Measure at the supply's output and along its cable, under load; look for a bad contact.",
      },
    ]);
    expect([
      head({ built_volts: 25 }),
      head({ built_volts: 25.1 }).length,
      head({ built_volts: 24.9 }, { fed_alone: "" }).length,
    ]).toEqual([[], 1, 1]);
    expect(head({ built_volts: 9 }, { fed_off: "", fed_alone: "", fed_on: "" })).toEqual([]);
  });
});

describe("an earlier version", () => {
  const age = (
    templateVersion: string,
    others: Partial<OtherResult>[] = [],
    template = "single-drop",
    fresh = true,
  ): Finding[] => {
    const book = { ...bookOf(emptySheet("S")), template, templateVersion };
    return found(earlierVersion, book, {
      earlier: { ...(fresh && { fresh: book }), others: others as OtherResult[] },
    });
  };
  const REMEDY =
    "Go on with it, or make a workbook of today's version of it: Upgrade in the pane, or rigsheet upgrade THIS.xlsx --out NEW.xlsx.";
  const MADE = (version: string) =>
    `This workbook was made from version ${version} of “Single-drop check”; today's is 3. Its inputs were judged by today's template; formulas, checks and labels that are only otherwise since are not listed.`;
  const THIRD = "Plainer labels, hints and checks, in the terms of the estimate.";
  const UNKNOWN =
    " What formulas that version had is not kept, so only what moves the price is told of a formula that was changed.";
  test.each([
    ["2", `${MADE("2")} Since then: ${THIRD}`],
    [
      "1",
      `${MADE("1")} Since then: Its checks stand on a sheet of their own; About and Checks as in the estimate. ${THIRD}`,
    ],
    [
      "",
      `${MADE("unknown")}${UNKNOWN} Since then: Its checks stand on a sheet of their own; About and Checks as in the estimate. ${THIRD}`,
    ],
    ["3.5", `${MADE("3.5")}${UNKNOWN}`],
  ])("of version %j", (version, message) =>
    expect(age(version)).toStrictEqual([
      { weight: "worth knowing", message, effect: undefined, remedy: REMEDY },
    ]),
  );
  const other = (label: string, own: number, today: number): Partial<OtherResult> => ({
    label,
    own,
    today,
    place: { sheet: "Drop", cell: "B7" },
  });
  test("by which cells come to something else", () => {
    expect(age("2", [other("Level", 50, 52)])).toMatchObject([
      {
        weight: "doubtful",
        effect: "By today's template one cell comes to something else: Level (Drop B7) 52 rather than 50.",
      },
    ]);
    const list = (count: number) =>
      age(
        "2",
        Array.from({ length: count }, (_, index) => other(`L${index}`, 1, 2)),
      )[0]!.effect;
    const four = [0, 1, 2, 3].map((index) => `L${index} (Drop B7) 2 rather than 1`).join("; ");
    expect(list(4)).toBe(`By today's template 4 cells or columns come to something else: ${four}.`);
    expect(list(5)).toBe(
      `By today's template 5 cells or columns come to something else: ${four}; and 1 more.`,
    );
  });
  test("of no template that is known here, of today's, or where nothing was computed: nothing", () => {
    expect([age("2", [], "other"), age("2", [], "single-drop", false)]).toEqual([[], []]);
    expect(
      found(earlierVersion, { ...bookOf(emptySheet("S")), template: "single-drop", templateVersion: "3" }),
    ).toEqual([]);
  });
});
