/** What DIAGNOSE's arguments become: readings below each head unit, or a fault that names what is wrong. */
import { CAUSES } from "../../src/engine/diagnosis/causes";
import { isFault, type Fault } from "../../src/engine/faults";
import type { Cell } from "../../src/functions/core/cells";
import {
  causesOf,
  frequenciesOf,
  readingsOf,
  type Given,
  type Sorted,
} from "../../src/functions/signal/diagnosisArguments";

const OTHER: Fault = { kind: "fault", code: "#N/A", message: "another cell's fault" };
const words = (value: unknown): string => {
  if (!isFault(value as Cell)) throw new Error(`a fault was expected, not ${JSON.stringify(value)}`);
  return (value as Fault).message;
};

/** Two outlets on a branch, a third one behind a second branch, a fourth on a head unit of its own. */
const JOB: Given = {
  outlets: ["R1", "R2", "R3", "R4"],
  fedFrom: ["B1", "B1", "B2", "H2"],
  predicted: [
    [64, 55],
    [62, 53],
    [60, 51],
    [70, 66],
  ],
  measured: [
    [63, 54],
    [61, ""],
    [null, null],
    ["no signal", 65.5],
  ],
  frequencies: [950, 2150],
  volts: [17, "", "none", 18],
  voltsPredicted: [18],
  branches: ["B1", "B2"],
  branchesFrom: ["H1", "B1"],
  heads: [],
  headVolts: [],
  headVoltsPredicted: [],
};
const sorted = (more: Partial<Given> = {}): Sorted => {
  const found = readingsOf({ ...JOB, ...more });
  if (isFault(found)) throw new Error(found.message);
  return found;
};
const refused = (more: Partial<Given>): string => words(readingsOf({ ...JOB, ...more }));
const outlet = (name: string, more: Partial<Given> = {}) =>
  sorted(more)
    .heads.flatMap(({ readings }) => readings)
    .find((one) => one.outlet === name);

test("readings stand below their head unit, with the branches above each, nearest first", () => {
  expect(sorted()).toEqual({
    above: [],
    doubts: [],
    heads: [
      {
        head: "H1",
        readings: [
          {
            outlet: "R1",
            path: ["B1"],
            frequencies: [950, 2150],
            predicted: [64, 55],
            measured: [63, 54],
            silent: [false, false],
            volts: 17,
            voltsPredicted: 18,
          },
          {
            outlet: "R2",
            path: ["B1"],
            frequencies: [950],
            predicted: [62],
            measured: [61],
            silent: [false],
            volts: null,
            voltsPredicted: 18,
          },
          {
            outlet: "R3",
            path: ["B2", "B1"],
            frequencies: [],
            predicted: [],
            measured: [],
            silent: [],
            volts: 0,
            voltsPredicted: 18,
          },
        ],
      },
      {
        head: "H2",
        readings: [
          {
            outlet: "R4",
            path: [],
            frequencies: [950, 2150],
            predicted: [70, 66],
            // Not heard: the most that the meter could have overlooked.
            measured: [30, 65.5],
            silent: [true, false],
            volts: 18,
            voltsPredicted: 18,
          },
        ],
      },
    ],
  });
});

test("an outlet that others are looped through is a place on the way to them, and to itself", () => {
  const looped: Partial<Given> = { fedFrom: ["B1", "R1", "R2", "H2"] };
  expect(outlet("R1", looped)!.path).toEqual(["R1", "B1"]);
  expect(outlet("R2", looped)!.path).toEqual(["R2", "R1", "B1"]);
  // The last one feeds nobody.
  expect(outlet("R3", looped)!.path).toEqual(["R2", "R1", "B1"]);
});

describe("what stands above the head units", () => {
  const above = (more: Partial<Given>) => sorted({ heads: ["H1", "H2"], ...more }).above;
  test("nothing, where nothing is said of it", () => expect(above({})).toEqual([]));
  test("a dish, with the head units that are its feeds; the only one where a head unit names none", () => {
    expect(above({ headDishes: ["D1", "D2"] })).toEqual([
      { where: "D1", of: "dish", heads: ["H1"] },
      { where: "D2", of: "dish", heads: ["H2"] },
    ]);
    expect(above({ headDishes: [null, null], dishes: ["D1", null] })).toEqual([
      { where: "D1", of: "dish", heads: ["H1", "H2"] },
    ]);
    expect(above({ headDishes: [null, "d2"], dishes: ["D1", "D2"] })).toEqual([
      { where: "D2", of: "dish", heads: ["H2"] },
    ]);
  });
  test("feeders, and a switch before another: what is behind them, however far", () => {
    expect(
      above({
        headDishes: [null, null],
        dishes: ["D1"],
        feedersFrom: ["D1", "H1", null],
        feedersTo: ["h1", "H2", null],
      }),
    ).toEqual([
      { where: "D1", of: "dish", heads: ["H1", "H2"] },
      { where: "D1 to h1", of: "feeder", heads: ["H1", "H2"] },
      { where: "H1 to H2", of: "feeder", heads: ["H2"] },
      { where: "H1", of: "switch before", heads: ["H1", "H2"] },
    ]);
  });
  test("switches in a ring end nowhere, and are passed through once", () => {
    expect(
      above({ feedersFrom: ["H1", "H2"], feedersTo: ["H2", "H1"] }).map(({ where, heads }) => [where, heads]),
    ).toEqual([
      ["H1 to H2", ["H2", "H1"]],
      ["H2 to H1", ["H1", "H2"]],
      ["H1", ["H1", "H2"]],
      ["H2", ["H2", "H1"]],
    ]);
  });
});

test("volts at a head unit are one more reading below it, however its name is written", () => {
  const { heads } = sorted({
    heads: ["h2", null, "H3"],
    headVolts: [17.5, 3, ""],
    headVoltsPredicted: [18, 18, 18],
  });
  expect(heads.map(({ readings }) => readings.map((one) => one.outlet))).toEqual([
    ["R1", "R2", "R3"],
    ["R4", "h2"],
  ]);
  expect(heads[1]!.readings[1]).toEqual({
    outlet: "h2",
    path: [],
    frequencies: [],
    predicted: [],
    measured: [],
    volts: 17.5,
    voltsPredicted: 18,
  });
});

test("a row without a name is passed over; what is fed from nowhere is fed from the head unit", () => {
  expect(outlet("R2", { outlets: ["R1", null, "R3", "R4"] })).toBeUndefined();
  const { heads } = sorted({ fedFrom: [null, "B1", "B2", "H2"] });
  expect(heads.map(({ head }) => head)).toEqual(["the head unit", "H1", "H2"]);
});

test("weaker than what a meter shows, the prediction itself may have been overlooked", () => {
  const at = (due: number) =>
    outlet("R4", {
      predicted: [
        [64, 55],
        [62, 53],
        [60, 51],
        [due, 66],
      ],
    })!.measured[0];
  expect([at(29), at(30), at(31)]).toEqual([29, 30, 30]);
});

describe("predictions are asked for where something was measured", () => {
  const predictedFor = (...row: Cell[]): Partial<Given> => ({ predicted: [row, ...JOB.predicted.slice(1)] });
  test("none", () => {
    expect(refused(predictedFor(64, ""))).toBe("Predicted level of R1 is missing. Enter a level in dBµV.");
  });
  test("none that can be", () => {
    expect(refused(predictedFor(64, 201))).toContain("predicted is 201 dBµV");
    expect(refused(predictedFor(OTHER, 55))).toBe(OTHER.message);
    expect(outlet("R1", predictedFor(64, 199))!.predicted).toEqual([64, 199]);
  });
  test("not where nothing was read", () => {
    const nothing: Partial<Given> = {
      ...predictedFor(OTHER, ""),
      measured: [[null, "room locked"], ...JOB.measured.slice(1)],
    };
    expect(outlet("R1", nothing)!.predicted).toEqual([]);
    expect(sorted(nothing).doubts.map(({ message }) => message)).toEqual([
      "Not a reading, and taken as not measured: R1, highest frequency (“room locked”).",
    ]);
  });
  test("volts too: one for all, or one for each", () => {
    expect(outlet("R4", { voltsPredicted: [18, 17, 16, 15] })!.voltsPredicted).toBe(15);
    expect(outlet("R1", { voltsPredicted: [18, 17, 16, 15] })!.voltsPredicted).toBe(18);
    expect(outlet("R1", { voltsPredicted: [] })!.voltsPredicted).toBeNull();
    expect(refused({ voltsPredicted: [OTHER, 17, 16, 15] })).toBe(OTHER.message);
    expect(outlet("R2", { voltsPredicted: [18, OTHER, 16, 15] })!.voltsPredicted).toBeNull();
  });
  test("and at head units", () => {
    const heads = (headVolts: Cell[], headVoltsPredicted: (number | Fault)[]) => ({
      heads: ["H1", "H2"],
      headVolts,
      headVoltsPredicted,
    });
    expect(refused(heads([17, 17], [18, OTHER]))).toBe(OTHER.message);
    expect(sorted(heads([17, ""], [18, OTHER])).heads[0]!.readings.at(-1)!.outlet).toBe("H1");
    expect(refused({ ...heads([17, 17], [18, 18]), heads: ["H1", OTHER] })).toBe(OTHER.message);
  });
});

test("readings that cannot be told from are refused as a whole, with the doubt", () => {
  const { heads, doubts } = sorted({
    measured: JOB.predicted.map((row) => row.map((level) => (level as number) - 60)),
  });
  expect(heads).toEqual([]);
  expect(doubts.map(({ message }) => message)).toEqual([expect.stringContaining("dBmV")]);
});

describe("what does not go together", () => {
  test.each([
    [
      "a prediction too few",
      { predicted: JOB.predicted.slice(1) },
      "predicted has 3 entries where the other columns have 4",
    ],
    [
      "a measurement too many",
      { measured: [...JOB.measured, [1, 1]] },
      "outlets has 4 entries where the other columns have 5",
    ],
    [
      "a prediction too many",
      { predicted: [...JOB.predicted, [1, 1]] },
      "outlets has 4 entries where the other columns have 5",
    ],
    [
      "a measurement too few",
      { measured: JOB.measured.slice(1) },
      "measured has 3 entries where the other columns have 4",
    ],
    ["a feed too few", { fedFrom: ["B1"] }, "fed_from has 1 entries where the other columns have 4"],
    [
      "a feed too many",
      { fedFrom: [...JOB.fedFrom, "B1"] },
      "outlets has 4 entries where the other columns have 5",
    ],
    ["volts too few", { volts: [17] }, "volts has 1 entries where the other columns have 4"],
    [
      "predicted volts too few",
      { voltsPredicted: [18, 18] },
      "predicted_volts has 2 entries where the other columns have 4",
    ],
    ["a branch too few", { branches: ["B1"] }, "branches has 1 entries where the other columns have 2"],
    [
      "a branch's feed too few",
      { branchesFrom: ["H1"] },
      "branches_from has 1 entries where the other columns have 2",
    ],
    [
      "a head unit's dish too many",
      { headDishes: ["D1"] },
      "heads has 0 entries where the other columns have 1",
    ],
    [
      "a feeder that goes nowhere",
      { feedersFrom: ["D1"] },
      "feeders_to has 0 entries where the other columns have 1",
    ],
    ["head volts without a head", { headVolts: [17] }, "heads has 0 entries where the other columns have 1"],
    [
      "predicted head volts without a head",
      { headVoltsPredicted: [17] },
      "heads has 0 entries where the other columns have 1",
    ],
    [
      "a column of predictions too few",
      { predicted: JOB.predicted.map(([low]) => [low!]) },
      "predicted is 4 rows by 1 columns; it must be 2 columns, one for each frequency",
    ],
    [
      "a column of levels too many",
      { measured: JOB.measured.map((row) => [...row, 1]) },
      "measured is 4 rows by 3 columns; it must be 2 columns, one for each frequency",
    ],
    ["a fault among the names", { outlets: ["R1", OTHER, "R3", "R4"] }, OTHER.message],
    ["a fault among the branches", { branches: ["B1", OTHER] }, OTHER.message],
    ["a fault among the feeds", { fedFrom: ["B1", OTHER, "B2", "H2"] }, OTHER.message],
    ["a name twice", { outlets: ["R1", "R1", "R3", "R4"] }, "R1"],
    ["a loop", { branchesFrom: ["B2", "B1"] }, "B"],
  ] as [string, Partial<Given>, string][])("%s", (_, more, sentence) => {
    expect(refused(more)).toContain(sentence);
  });
});

describe("a table of causes", () => {
  const figures = (name: string, found = causesOf(undefined)) => {
    if (isFault(found)) throw new Error(found.message);
    const { chance, low, high, spread, tilt } = found.find(({ cause }) => cause === name)!;
    return [chance, low, high, spread, tilt];
  };
  test("none: the built-in ones", () => expect(causesOf(undefined)).toBe(CAUSES));
  test("replaces the figures that it has, and no others", () => {
    const found = causesOf([
      [" Misaligned ", 0.2, "", 6, null, 0.7],
      ["", 0.3, 1, 1, 1, 1],
      ["over-level", null, -9, "", 0.1, ""],
    ]);
    expect(figures("misaligned")).toEqual([0.05, 5, 5, 0.5, 0.3]);
    expect(figures("misaligned", found)).toEqual([0.2, 5, 6, 0.5, 0.7]);
    expect(figures("over-level", found)).toEqual([0.03, -9, -6, 0.1, 0.5]);
    expect(figures("bad connector", found)).toEqual(figures("bad connector"));
    expect(found).toHaveLength(CAUSES.length);
  });
  test.each([
    [
      "one column",
      [["misaligned"]],
      "causes is 1 rows by 1 columns; it must be two to six columns: cause, chance, low-end loss, high-end loss, spread, tilt.",
    ],
    ["seven columns", [["misaligned", 0.1, 1, 1, 1, 1, 1]], "causes is 1 rows by 7 columns"],
    ["an unknown cause", [["gremlins", 0.1]], "gremlins"],
    ["a chance above a half", [["misaligned", 0.51]], "chance of a cause is 0.51; it must be from 0 to 0.5"],
    ["a chance below nought", [["misaligned", -0.1]], "chance of a cause is -0.1"],
    [
      "a loss of 61 dB",
      [["misaligned", 0.1, 61]],
      "low-end loss of a cause is 61 dB; it must be from -60 to 60 dB",
    ],
    ["a gain of 61 dB", [["misaligned", 0.1, 0, -61]], "high-end loss of a cause is -61 dB"],
    ["a spread of 11", [["misaligned", 0.1, 0, 0, 11]], "spread of a cause is 11; it must be from 0 to 10"],
    [
      "a tilt below nought",
      [["misaligned", 0.1, 0, 0, 1, -1]],
      "tilt of a cause is -1 dB; it must be from 0 to 60 dB",
    ],
    ["a name that is none", [[true, 0.1]], "causes is TRUE"],
  ] as [string, Cell[][], string][])("%s is refused", (_, rows, sentence) => {
    expect(words(causesOf(rows))).toContain(sentence);
  });
  test("the limits themselves are taken", () => {
    expect(figures("misaligned", causesOf([["misaligned", 0.5, -60, 60, 10, 60]]))).toEqual([
      0.5, -60, 60, 10, 60,
    ]);
    expect(figures("misaligned", causesOf([["misaligned", 0]]))[0]).toBe(0);
  });
});

describe("frequencies of the columns", () => {
  test("the two ends of the band, or those given", () => {
    expect(frequenciesOf(undefined)).toEqual([950, 2150]);
    expect(frequenciesOf([[5, 1350, 3000]])).toEqual([5, 1350, 3000]);
    expect(frequenciesOf([[950], [2150]])).toEqual([950, 2150]);
  });
  test.each([
    [[[950, ""]], "frequencies is missing. Enter a frequency in MHz for every column."],
    [[[950, 950]], "frequencies has 950 MHz after 950 MHz; they must rise"],
    [[[2150, 950]], "frequencies has 950 MHz after 2150 MHz; they must rise"],
    [[[4.9]], "frequencies is 4.9 MHz; it must be from 5 to 3000 MHz"],
    [[[3000.1]], "frequencies is 3000.1 MHz"],
    [[["x"]], 'frequencies is "x"'],
  ] as [Cell[][], string][])("%j is refused", (row, sentence) => {
    expect(words(frequenciesOf(row))).toContain(sentence);
  });
});
