/**
 * What was typed as a reading, and whether it can be one. Expected values by arithmetic from the definitions:
 * dBmV = dBµV − 60; dBm = dBµV − 108.75 in 75 Ω (10·log10(75 Ω · 1 mW / (1 µV)²) = 108.75); dBµV = 20·log10(µV).
 */
import { plausible } from "../../../src/engine/diagnosis/plausibility";
import type { TypedHead, TypedOutlet } from "../../../src/engine/diagnosis/typedOutlet";
import { typedReading, type TypedReading } from "../../../src/engine/diagnosis/typedReading";

test.each([
  [72.4, { kind: "value", value: 72.4 }],
  ["72,4", { kind: "value", value: 72.4 }],
  ["72.4 dBuV", { kind: "value", value: 72.4, unit: "dBµV" }],
  ["72.4 dBμV", { kind: "value", value: 72.4, unit: "dBµV" }],
  ["−12,4 dBmV", { kind: "value", value: -12.4, unit: "dBmV" }],
  ["24.1V", { kind: "value", value: 24.1, unit: "V" }],
  ["87%", { kind: "value", value: 87, unit: "%" }],
  ["no signal", { kind: "no signal" }],
  [" No Signal ", { kind: "no signal" }],
  ["dead", { kind: "no signal" }],
  ["< 30 dBµV", { kind: "no signal" }],
  ["", { kind: "blank" }],
  ["  ", { kind: "blank" }],
  [null, { kind: "blank" }],
  ["n/a", { kind: "unread", text: "n/a" }],
  ["room locked", { kind: "unread", text: "room locked" }],
  ["1,234.5", { kind: "unread", text: "1,234.5" }],
  ["9.5 kg", { kind: "unread", text: "9.5 kg" }],
  [true, { kind: "unread", text: "TRUE" }],
  [{ error: "#N/A" }, { kind: "unread", text: "#N/A" }],
] as const)("%j is read as it stands", (typed, expected) => {
  expect(typedReading(typed)).toEqual(expected);
});

const PREDICTED: readonly (readonly [low: number, high: number])[] = [
  [72, 63],
  [70, 60],
  [69, 58],
  [66, 52],
  [61, 44],
];
/** Off the prediction as a meter is. */
const NOISE = [0.4, -0.7, 1.1, -0.2, 0.6];

const value = (number: number): TypedReading => ({ kind: "value", value: number });

function job(
  typed: (due: number, outlet: number, column: number) => number,
  volts: readonly number[] = [18, 18, 18, 18, 18],
): TypedOutlet[] {
  return PREDICTED.map((predicted, at) => ({
    outlet: `R${at + 1}`,
    head: "H1",
    frequencies: [950, 2150],
    predicted,
    levels: predicted.map((due, column) => value(typed(due + NOISE[at]!, at, column))),
    volts: value(volts[at]!),
    voltsPredicted: 18,
  }));
}

const asked = (outlets: TypedOutlet[], heads: TypedHead[] = []) => {
  const { doubts, refused } = plausible(outlets, heads);
  return { refused, message: doubts.map(({ where, message }) => `${where}: ${message}`).join("\n") };
};

describe("as a whole", () => {
  test.each([
    ["dBmV", (due: number) => due - 60, "dBmV"],
    ["dBm", (due: number) => due - 108.75, "dBm"],
    ["µV", (due: number) => 10 ** (due / 20), "µV"],
    ["the point left out", (due: number) => Math.round(due * 10), "decimal point"],
    ["a minus sign", (due: number) => -due, "sign"],
    ["shares of quality", (_: number, at: number) => 0.9 + at / 100, "percent"],
    ["percents of quality", (_: number, at: number, column: number) => 88 + at + 3 * column, "percent"],
    ["carrier to noise", (_: number, at: number, column: number) => 12 + at / 5 - column, "carrier to noise"],
    ["differences", (_: number, at: number) => NOISE[at]!, "differences"],
    ["one value filled down", () => 71, "filled down"],
    ["zeros", () => 0, "0 stands"],
  ] as const)("levels in %s are asked about", (_, typed, message) => {
    const found = asked(job(typed));
    expect(found.refused).toBe(true);
    expect(found.message).toContain(message);
  });

  test("columns exchanged at most outlets", () => {
    const outlets = job((due) => due).map((one) => ({ ...one, levels: [...one.levels].reverse() }));
    expect(asked(outlets)).toEqual({ refused: true, message: expect.stringContaining("swapped") as string });
  });
});

describe("what is, or may be, a fault is left to the ranking", () => {
  test.each([
    ["as predicted", (due: number) => due, [18, 18, 18, 18, 18]],
    ["a dish 12 dB off its peak", (due: number) => due - 12, [18, 18, 18, 18, 18]],
    ["a meter's noise with the supply off", (_: number, at: number) => 20 + at, [0, 0, 0, 0, 0]],
    ["noise near dBmV with the supply off", (_: number, at: number) => 6 + 3 * at, [0, 0, 0, 0, 0]],
    ["a head unit that gives 10 dB more", (due: number) => due + 10, [18, 18, 18, 18, 18]],
    [
      "the last outlet's run full of water",
      (due: number, at: number, column: number) => due - (at === 4 ? 4 + 8 * column : 0),
      [18, 18, 18, 18, 18],
    ],
  ] as const)("%s", (_, typed, volts) => {
    expect(asked(job(typed, volts))).toEqual({ refused: false, message: "" });
  });
});

describe("one reading among good ones is named and left out", () => {
  test.each([
    [
      "ten times too large",
      (due: number, at: number, column: number) => (at === 2 && column === 1 ? 10 * due : due),
      "R3, highest frequency",
    ],
    [
      "the point one place off",
      (due: number, at: number, column: number) => (at === 2 && column === 1 ? due / 10 : due),
      "R3, highest frequency",
    ],
    [
      "one digit wrong",
      (due: number, at: number, column: number) => (at === 2 && column === 0 ? due - 30 : due),
      "R3, lowest frequency",
    ],
    [
      "a date's number",
      (due: number, at: number, column: number) => (at === 2 && column === 0 ? 46214 : due),
      "R3, lowest frequency",
    ],
    [
      "a zero",
      (due: number, at: number, column: number) => (at === 2 && column === 0 ? 0 : due),
      "no signal",
    ],
    [
      "its ends exchanged",
      (due: number, at: number, column: number) => (at === 2 ? PREDICTED[2]![1 - column]! : due),
      "swapped",
    ],
    ["in dBmV", (due: number, at: number) => (at === 4 ? due - 60 : due), "dBmV"],
  ] as const)("%s", (_, typed, message) => {
    const outlets = job(typed);
    const { refused, doubts, outlets: left } = plausible(outlets, []);
    expect(refused).toBe(false);
    expect(doubts.map((one) => one.message)).toEqual([expect.stringContaining(message)]);
    const kept = left.flatMap(({ levels }) => levels).filter(({ kind }) => kind === "value").length;
    expect(kept).toBeLessThan(2 * PREDICTED.length);
    expect(kept).toBeGreaterThanOrEqual(2 * PREDICTED.length - 2);
  });
});

describe("volts", () => {
  const good = (due: number) => due;
  test("mains is told as a danger, and left out", () => {
    const { message, refused } = asked(job(good, [18, 230, 18, 18, 18]));
    expect(refused).toBe(false);
    expect(message).toMatch(/R2.*230.*keep off it until a licensed electrician/);
  });
  test.each([
    ["millivolts", 18_000, "millivolts"],
    ["the probes exchanged", -18, "other way round"],
  ] as const)("%s throughout", (_, volts, message) => {
    expect(asked(job(good, [volts, volts, volts, volts, volts])).message).toContain(message);
  });
  test("no volts at a head unit whose outlets have their levels", () => {
    expect(asked(job(good), [{ head: "H1", volts: value(0), voltsPredicted: 17 }]).message).toContain(
      "Both cannot be",
    );
  });
});

test("what is no reading is named and taken as not measured", () => {
  const outlets = job((due) => due);
  const [first, ...rest] = outlets;
  const typed: TypedReading = { kind: "unread", text: "room locked" };
  const { message, refused } = asked([{ ...first!, levels: [typed, first!.levels[1]!] }, ...rest]);
  expect(refused).toBe(false);
  expect(message).toContain("R1, lowest frequency (“room locked”)");
});
