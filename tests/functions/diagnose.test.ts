/** DIAGNOSE on the sheet. */
import type { Matrix } from "../../src/functions/core/cells";
import { call, sentence } from "../support/functionGroup";

const outlets = [["R1"], ["R2"], ["R3"]];
const from = [["B1"], ["B1"], ["B1"]];
const predicted = [
  [62, 58],
  [61, 57],
  [63, 60],
];
const block = (...args: Parameters<typeof call>): Matrix => call(...args) as Matrix;
/** All chances nought but those given. */
const onlyChances = (chances: Readonly<Record<string, number>>): Matrix =>
  [
    "misaligned",
    "wrong or wet cable",
    "unrated splitter in the run",
    "bad connector",
    "leg that passes no power",
    "wrong port",
    "inserter missing or weak",
    "over-level",
    "something not in this list",
  ].map((cause) => [cause, chances[cause] ?? 0]);

test("one run that falls off steeply towards the top: an unrated splitter, with its figures and what to do", () => {
  const measured = [
    [62.4, 57.6],
    [57.2, 44.9],
    [62.8, 60.3],
  ];
  const [first] = block("DIAGNOSE", outlets, from, predicted, measured);
  expect(first!.slice(0, 2)).toEqual(["unrated splitter in the run", "R2"]);
  expect(first![3]).toContain("R2: −3.8 dB at the lowest frequency and −12.1 dB at the highest frequency");
  expect(first![4]).toContain("1000 MHz");
});

test("all outlets down alike: misaligned; all up: over-level; equal: nothing stands out", () => {
  const shifted = (by: number) => predicted.map((row) => row.map((level) => level + by));
  expect(block("DIAGNOSE", outlets, from, predicted, shifted(-6))[0]!.slice(0, 2)).toEqual([
    "misaligned",
    "B1",
  ]);
  expect(block("DIAGNOSE", outlets, from, predicted, shifted(7))[0]![0]).toBe("over-level");
  expect(block("DIAGNOSE", outlets, from, predicted, predicted)[0]![0]).toBe("nothing stands out");
});

test("the chances are the sheet's: without levels or volts' meaning, a cause keeps its chance", () => {
  // Volts equal to the prediction speak alike for every cause that keeps the supply, so by
  // hand, with one outlet and one cause: P = chance.
  const args = [[["R1"]], [["H1"]], [[62, 58]], [["", ""]], null, [[18]], [[18]], null, null] as const;
  const rows = block("DIAGNOSE", ...args, onlyChances({ misaligned: 0.3 }));
  expect(rows.map(([cause, , probability]) => [cause, Number((probability as number).toFixed(9))])).toEqual([
    ["nothing stands out", 0.7],
    ["misaligned", 0.3],
  ]);
});

test("a leg without power shows by its volts alone; below a branch, the branch is named", () => {
  const volts = [[18], [0], [18]];
  const one = block("DIAGNOSE", outlets, from, predicted, predicted, null, volts, [[18]]);
  expect(one[0]!.slice(0, 2)).toEqual(["leg that passes no power", "R2"]);
  const branch = block(
    "DIAGNOSE",
    [...outlets, ["R4"], ["R5"]],
    [["B1"], ["B1"], ["B2"], ["B2"], ["B2"]],
    [...predicted, [60, 55], [59, 54]],
    [...predicted, [60, 55], [59, 54]],
    null,
    [[18], [18], [0], [0], [0]],
    [[18]],
    [["B1"], ["B2"]],
    [["H1"], ["B1"]],
  );
  expect(branch[0]!.slice(0, 2)).toEqual(["leg that passes no power", "B2"]);
});

describe("sentences", () => {
  test.each([
    [
      "an unknown cause",
      [outlets, from, predicted, predicted, null, null, null, null, null, [["gremlins", 0.1]]],
      "gremlins",
    ],
    [
      "a chance of 2",
      [outlets, from, predicted, predicted, null, null, null, null, null, [["misaligned", 2]]],
      "chance of a cause is 2",
    ],
    ["a column too many", [outlets, from, predicted, predicted, [[950, 1500, 2150]]], "3 columns"],
    ["frequencies that fall", [outlets, from, predicted, predicted, [[2150, 950]]], "must rise"],
    [
      "a level without prediction",
      [
        outlets,
        from,
        [
          [62, ""],
          [61, 57],
          [63, 60],
        ],
        predicted,
      ],
      "Predicted level of R1",
    ],
    ["a name that stands twice", [[["R1"], ["R1"], ["R3"]], from, predicted, predicted], "R1"],
    ["a short list", [outlets, [["B1"]], predicted, predicted], "fed_from"],
  ] as const)("%s", (_, args, words) => {
    expect(
      sentence(
        call(
          "DIAGNOSE",
          ...(args as unknown as Parameters<typeof block> extends [unknown, ...infer A] ? A : never),
        ),
      ),
    ).toContain(words);
  });
});
