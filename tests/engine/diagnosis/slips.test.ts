/**
 * Both sides of every limit by which readings are doubted. Units by their definitions: dBmV = dBµV − 60,
 * dBm = dBµV − 108.75 in 75 Ω, dBµV = 20·log10(µV). The limits themselves are the project's assumptions, stated
 * beside them in the sources: no source.
 */
import { exchangeOf } from "../../../src/engine/diagnosis/exchangedColumns";
import { mistakenUnit, shown, slipOf } from "../../../src/engine/diagnosis/mistakenUnit";
import { columnInWords, type Level, type TypedOutlet } from "../../../src/engine/diagnosis/typedOutlet";
import type { TypedReading } from "../../../src/engine/diagnosis/typedReading";

const value = (number: number, unit?: string): TypedReading =>
  unit === undefined ? { kind: "value", value: number } : { kind: "value", value: number, unit };
const BLANK: TypedReading = { kind: "blank" };

const outletOf = (
  outlet: string,
  predicted: readonly (number | null)[],
  levels: readonly (number | TypedReading)[],
  more: Partial<TypedOutlet> = {},
): TypedOutlet => ({
  outlet,
  head: "H1",
  frequencies: [950, 2150].slice(0, predicted.length),
  predicted,
  levels: levels.map((one) => (typeof one === "number" ? value(one) : one)),
  volts: BLANK,
  voltsPredicted: null,
  ...more,
});

/** Of outlets of one level each, its supply as predicted unless it says otherwise. */
const levelsOf = (pairs: readonly (readonly [value: number, predicted: number])[], volts = 18): Level[] =>
  pairs.map(([read, predicted], at) => ({
    outlet: outletOf(`R${at + 1}`, [predicted], [read], { volts: value(volts), voltsPredicted: 18 }),
    column: 0,
    value: read,
    predicted,
  }));
const times = (count: number, read: number, predicted: number): [number, number][] =>
  Array.from({ length: count }, () => [read, predicted]);
const said = (
  pairs: readonly (readonly [number, number])[],
  of: "job" | "part" | "outlet" = "job",
  volts = 18,
) => mistakenUnit(levelsOf(pairs, volts), "here", of)?.message;

describe("a unit of all readings", () => {
  test.each([
    ["dBmV: 60 less", times(4, 10, 70), "dBmV"],
    ["dBmV below zero, 9 dB off", times(4, -19, 50), "dBmV"],
    ["dBmV above zero, 5 dB off", times(4, 25, 80), "dBmV"],
    ["dBm: 108.75 less", times(4, -38.75, 70), "dBm"],
    ["µV: 10^(70/20)", times(4, 3162, 70), "µV"],
    ["ten times too large, above what a meter shows", times(4, 131, 14), "decimal point"],
    ["the sign", times(4, -71, 70), "only the sign"],
    ["zeros", times(4, 0, 70), "0 stands"],
    ["shares up to 1", [...times(3, 0.8, 70), [1, 70] as const], "percent"],
    ["differences up to 10, predicted above the noise", times(4, 2, 50), "differences"],
    ["differences of just 10", times(4, -10, 31), "differences"],
    ["carrier to noise below 21", times(4, 20.9, 37), "carrier to noise"],
    ["whole numbers far above the prediction", times(4, 95, 60), "whole numbers up to 100"],
    ["not whole, far above", times(4, 95.5, 60), "no fault makes levels so high"],
    ["whole, above 100", times(4, 101, 60), "no fault makes levels so high"],
    ["just as high as a meter shows", times(4, 130, 13), "no fault makes levels so high"],
  ] as const)("%s", (_, pairs, words) => {
    expect(said(pairs)).toContain(words);
    expect(said(pairs)).toMatch(/^These readings do not look like dBµV: typically .+ is predicted; /);
  });

  test.each([
    ["three readings are too few", times(3, 10, 70)],
    ["within 9 dB of the prediction", times(4, 61, 70)],
    ["15 dB too much may be a strong head unit", times(4, 75, 60)],
    ["dBmV above zero, more than 5 dB off", times(4, 25.1, 80)],
    ["far too little may be a fault", times(4, 40, 70)],
    ["differences where nothing was to be heard", times(4, 9.9, 30)],
    ["carrier to noise of 21", times(4, 21, 37)],
    ["carrier to noise near the noise", times(4, 20, 36)],
  ] as const)("none: %s", (_, pairs) => {
    expect(said(pairs)).toBeUndefined();
  });

  test("most are seven of ten", () => {
    const mixed = (count: number) => [...times(count, -38.75, 70), ...times(10 - count, 45, 70)];
    expect(said(mixed(7))).toContain("dBm");
    expect(said(mixed(6))).toBeUndefined();
    const fine = (count: number) => [...times(count, 70, 70), ...times(10 - count, -38.75, 70)];
    expect(said(fine(7))).toBeUndefined();
    expect(said(fine(2))).toContain("dBm");
  });

  test("what may be noise is no unit where the supply is off, or the readings spread", () => {
    expect(said(times(4, 2, 50), "job", 12.5)).toBeUndefined();
    expect(said(times(4, 2, 50), "job", 12.7)).toContain("differences");
    // Half of the outlets fed is not most of them.
    const fed = levelsOf(times(2, 2, 50));
    const unfed = levelsOf(times(2, 2, 50), 0);
    expect(mistakenUnit([...fed, ...unfed], "here", "job")).toBeUndefined();
    expect(mistakenUnit([...levelsOf(times(3, 2, 50)), ...unfed], "here", "job")?.message).toContain(
      "differences",
    );
    expect(said([...times(3, -3, 75), [9, 75]])).toContain("differences");
    expect(said([...times(3, -3, 75), [9.1, 75]])).toBeUndefined();
  });

  test("one value filled down: eight readings, predictions more than 3 dB apart", () => {
    const filled = (count: number, apart: number) =>
      Array.from({ length: count }, (_, at): [number, number] => [45, at === 0 ? 70 + apart : 70]);
    expect(said(filled(8, 3.1))).toContain("The same value, 45 dBµV, stands in all");
    expect(said(filled(8, 3))).toBeUndefined();
    expect(said(filled(7, 3.1))).toBeUndefined();
    expect(said([...filled(7, 3.1), [45.1, 70]])).toBeUndefined();
  });

  test("the middle reading is named, with the middle prediction", () => {
    expect(
      said([
        [8, 70],
        [12, 73],
        [10, 71],
        [11, 72],
      ]),
    ).toContain("typically 11 where 72 is predicted");
  });

  test("of a part, only what is converted", () => {
    expect(said(times(4, 10, 70), "part")).toContain("dBmV");
    for (const read of [0, 0.8, 1, 95]) expect(said(times(4, read, 50), "part")).toBeUndefined();
    expect(said(times(3, 10, 70), "part")).toBeUndefined();
  });

  test("of an outlet, two readings, where one cannot be noise", () => {
    expect(said(times(2, -1, 60), "outlet")).toContain("dBmV");
    expect(
      said(
        [
          [-1, 60],
          [1, 60],
        ],
        "outlet",
      ),
    ).toContain("dBmV");
    expect(said(times(2, 1, 60), "outlet")).toBeUndefined();
    expect(said(times(2, 3162, 70), "outlet")).toContain("µV");
    expect(said(times(1, -1, 60), "outlet")).toBeUndefined();
  });

  test("numbers are shown to a tenth, with a true minus, and huge ones in short", () => {
    expect([3.14159, -12.36, 999_999, 1e6, -2.5e7].map(shown)).toEqual([
      "3.1",
      "−12.4",
      "999999",
      "1.0e+6",
      "-2.5e+7",
    ]);
  });
});

describe("one reading's slip", () => {
  const slip = (read: number, predicted: number) => slipOf(levelsOf([[read, predicted]])[0]!)?.what;
  test.each([
    [700, 70, "10 times too large"],
    [-64, 70, "only the sign"],
    [7, 70, "10 times too small"],
    [6.1, 70, "10 times too small"],
    [3.1, 31, "10 times too small"],
  ] as const)("%d where %d is predicted", (read, predicted, words) => {
    expect(slip(read, predicted)).toContain(words);
  });
  test.each([
    [800, 70],
    [-60, 70],
    [6, 70],
    [3, 30],
    [45, 70],
  ] as const)("%d where %d is predicted is none", (read, predicted) => {
    expect(slip(read, predicted)).toBeUndefined();
  });
});

describe("columns exchanged at one outlet", () => {
  const columns = (
    predicted: readonly (number | null)[],
    levels: readonly (number | TypedReading)[],
    volts?: number,
    due: number | null = null,
  ) =>
    exchangeOf(
      outletOf("R1", predicted, levels, {
        volts: volts === undefined ? BLANK : value(volts),
        voltsPredicted: due,
      }),
    )?.columns;
  test.each([
    ["the two ends", columns([60, 40], [40, 60]), "lowest frequency and highest frequency"],
    ["saves 12 dB in all", columns([60, 54], [54, 60]), "lowest frequency and highest frequency"],
    ["4 dB a reading left over", columns([60, 40], [44, 64]), "lowest frequency and highest frequency"],
    [
      "the highest frequency and the volts",
      columns([60, 40], [60, 18], 40, 18),
      "highest frequency and volts",
    ],
    ["the lowest frequency and the volts", columns([60, 40], [18, 40], 60, 18), "lowest frequency and volts"],
    [
      "all three, one way round",
      columns([60, 40], [40, 18], 60, 18),
      "lowest frequency, highest frequency and volts",
    ],
    [
      "all three, the other way round",
      columns([60, 40], [18, 60], 40, 18),
      "lowest frequency, highest frequency and volts",
    ],
    [
      "without a prediction at the highest frequency",
      columns([60, null], [18, 33], 60, 18),
      "lowest frequency and volts",
    ],
  ])("%s", (_, found, words) => {
    expect(found).toBe(words);
  });
  test.each([
    ["as predicted", columns([60, 40], [60, 40])],
    ["saves less than 12 dB", columns([60, 54.1], [54.1, 60])],
    ["more than 4 dB a reading left over", columns([60, 40], [44.1, 64])],
    ["one of them blank", columns([60, 40], [40, BLANK])],
    ["one frequency only", columns([60], [18], 60, 18)],
    ["one prediction only", columns([60, null], [40, 60])],
  ])("not: %s", (_, found) => {
    expect(found).toBeUndefined();
  });
});

test("a column is named by its end, or by its frequency where there are more than two", () => {
  const two = outletOf("R1", [60, 50], [60, 50]);
  expect([0, 1].map((column) => columnInWords(two, column))).toEqual([
    "lowest frequency",
    "highest frequency",
  ]);
  expect(columnInWords({ ...two, frequencies: [950, 1350, 2150] }, 1)).toBe("1350 MHz");
  expect(columnInWords({ ...two, frequencies: [950] }, 0)).toBe("950 MHz");
});
