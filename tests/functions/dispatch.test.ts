/** How the dispatcher combines arguments row by row, by the rules of its description. */
import { isFault, type Fault } from "../../src/engine/faults";
import type { Argument, Cell, Matrix } from "../../src/functions/core/cells";
import { declare, type Declared } from "../../src/functions/core/declare";
import { list, number, optional, repeated, text, type Parameter } from "../../src/functions/core/parameters";

const help = "";
const words = (value: unknown): string => {
  if (!isFault(value as Cell)) throw new Error(`a fault was expected, not ${JSON.stringify(value)}`);
  return (value as Fault).message;
};
const OTHER: Fault = { kind: "fault", code: "#N/A", message: "another cell's fault" };

/** A function of the test's own, with what a declaration must have. */
const made = <const P extends readonly Parameter<unknown>[]>(
  parameters: P,
  rest: { result: Declared<P>["result"]; compute: (...values: never[]) => unknown },
) =>
  declare({
    name: "MADEUP",
    group: "About",
    summary: "",
    equation: "",
    source: "",
    accuracy: "",
    tasks: [],
    examples: [],
    seeAlso: [],
    parameters,
    ...rest,
  } as unknown as Declared<P>);
const first = (value: Cell | Matrix): Cell =>
  Array.isArray(value) ? (value as Matrix)[0]![0]! : (value as Cell);

describe("one value a row", () => {
  const plus = made([number({ name: "a", help }), optional(number({ name: "b", help }), 10)], {
    result: { shape: "cell", help },
    compute: (a: number, b: number) => a + b,
  });
  const call = (...args: Argument[]) => plus.call(args);

  test("single values, alone, as arrays of one, left out", () => {
    expect(call(1, 2)).toBe(3);
    expect(call([[1]], [[2]])).toBe(3);
    expect([call(1), call(1, null), call(1, [[]]), call(1, [])]).toEqual([11, 11, 11, 11]);
  });
  test("columns row by row, a single value for all; a row beside a column fills a block", () => {
    expect(call([[1], [2]], [[30], [40]])).toEqual([[31], [42]]);
    expect(call([[1], [2]], 5)).toEqual([[6], [7]]);
    expect(call([[1, 2]], 5)).toEqual([[6, 7]]);
    expect(call([[1], [2]], [[10, 20, 30]])).toEqual([
      [11, 21, 31],
      [12, 22, 32],
    ]);
    expect(
      call(
        [
          [1, 2],
          [3, 4],
        ],
        [[10], [20]],
      ),
    ).toEqual([
      [11, 12],
      [23, 24],
    ]);
  });
  test("a row blank in what changes is blank; a missing single value is named", () => {
    expect(call([[1], [null], [" "]], [[10], [20], [30]])).toEqual([[11], [""], [""]]);
    expect(call([[1, null]], 5)).toEqual([[6, ""]]);
    expect(call([[1], [null]], [[10, 20]])).toEqual([
      [11, 21],
      ["", ""],
    ]);
    // The required argument is the same for all rows, so the optional column makes no row blank.
    expect(call(1, [[5], [null]])).toEqual([[6], [11]]);
    expect(call(null)).toBe("");
    expect(call(null, 5)).toBe("");
    const two = made([number({ name: "a", help }), number({ name: "b", help })], {
      result: { shape: "cell", help },
      compute: (a: number, b: number) => a + b,
    });
    const row = two.call([
      [[1], [null], [null]],
      [[2], [3], [null]],
    ]) as Matrix;
    expect([row[0]![0], row[2]![0]]).toEqual([3, ""]);
    expect(words(row[1]![0])).toMatch(/^a is missing\. Enter a number\./);
    const across = two.call([[[1, null, null]], [[2, 3, null]]]) as Matrix;
    expect([across[0]![0], words(across[0]![1]).slice(0, 12), across[0]![2]]).toEqual([
      3,
      "a is missing",
      "",
    ]);
    expect(words(two.call([1, null]))).toMatch(/^b is missing/);
    expect(words((two.call([[[1], [2]], null]) as Matrix)[1]![0])).toMatch(/^b is missing/);
    // Only optional ones: they decide.
    const maybe = made([optional(number({ name: "a", help }), 1)], {
      result: { shape: "cell", help },
      compute: (a: number) => a,
    });
    expect(maybe.call([[[3], [null]]])).toEqual([[3], [""]]);
  });
  test("a list beside it keeps a blank single value from passing", () => {
    const withList = made([number({ name: "a", help }), list(number({ name: "runs", help }))], {
      result: { shape: "cell", help },
      compute: (a: number, runs: number[]) => a + runs.length,
    });
    expect(withList.call([1, [[1], [2]]])).toBe(3);
    expect(words(withList.call([null, [[1], [2]]]))).toMatch(/^a is missing/);
    expect(words(withList.call([1]))).toMatch(/^runs is missing/);
    expect(
      withList.call([
        [[1], [null]],
        [[1], [2]],
      ]),
    ).toEqual([[3], [""]]);
    expect(
      words(
        withList.call([
          1,
          [
            [1, 2],
            [3, 4],
          ],
        ]),
      ),
    ).toMatch(/^runs is 2 rows by 2 columns/);
  });
  test("a column that is too short, down and across", () => {
    const down = call([[1], [2], [3]], [[1], [2]]) as Matrix;
    expect(down.slice(0, 2)).toEqual([[2], [4]]);
    expect(words(down[2]![0])).toMatch(/^b has 2 entries where the other columns have 3\./);
    const across = call([[1, 2, 3]], [[1, 2]]) as Matrix;
    expect(across[0]!.slice(0, 2)).toEqual([2, 4]);
    expect(words(across[0]![2])).toMatch(/^b has 2 entries where the other columns have 3\./);
    const both = call(
      [
        [1, 2, 3],
        [4, 5, 6],
      ],
      [
        [1, 2],
        [3, 4],
      ],
    ) as Matrix;
    expect(words(both[0]![2])).toMatch(/^b has 2 entries where the other columns have 3\./);
  });
  test("a fault stays in its row", () => {
    const found = call([[1], ["x"], [3]], 1) as Matrix;
    expect([found[0]![0], found[2]![0]]).toEqual([2, 4]);
    expect(words(found[1]![0])).toMatch(/^a is .x., which is not a number/);
  });
  test("rows of different lengths, in the first argument and in the second", () => {
    expect(words(call([[1], [2, 3]]))).toMatch(/^a has rows of different lengths/);
    expect(words(call(1, [[1, 2], [3]]))).toMatch(/^b has rows of different lengths/);
  });
  test("too many arguments", () => {
    expect(words(call(1, 2, 3))).toBe("MADEUP was given 3 arguments; it takes 2 at the most.");
  });
  test.each([
    ["nothing", null, ""],
    ["text", "yes", "yes"],
    ["yes or no", false, false],
    ["minus zero", -0, 0],
    ["a fault", OTHER, OTHER],
  ])("%s as a result", (_, outcome, expected) => {
    const one = made([number({ name: "a", help })], {
      result: { shape: "cell", help },
      compute: () => outcome,
    });
    expect(Object.is(one.call([1]), expected)).toBe(true);
  });
  test("a result that is none, and a mistake of ours", () => {
    const giving = (compute: () => unknown) =>
      words(made([number({ name: "a", help })], { result: { shape: "cell", help }, compute }).call([1]));
    expect(giving(() => NaN)).toMatch(/^MADEUP has no finite answer/);
    expect(giving(() => Infinity)).toMatch(/^MADEUP has no finite answer/);
    expect(giving(() => ({}))).toMatch(/^MADEUP failed inside \(a result of no known kind\)/);
    expect(
      giving(() => {
        throw new Error("made up");
      }),
    ).toMatch(/^MADEUP failed inside \(made up\)/);
  });
});

describe("several values side by side", () => {
  const both = made([number({ name: "a", help }), optional(number({ name: "b", help }), 1)], {
    result: { shape: "row", help, columns: ["sum", "difference"] },
    compute: (a: number, b: number) => (a === 13 ? OTHER : [a + b, a - b]),
  });
  test("a row for each row; a fault or a blank in all its columns", () => {
    expect(both.call([5, 2])).toEqual([[7, 3]]);
    expect(
      both.call([
        [[5], [13], [null]],
        [[2], [2], [2]],
      ]),
    ).toEqual([
      [7, 3],
      [OTHER, OTHER],
      ["", ""],
    ]);
  });
  test("cannot be stretched sideways", () => {
    expect(words(first(both.call([[[1, 2]]])))).toBe(
      "a is 1 rows by 2 columns; it must be a value or one column.",
    );
    expect(
      words(
        first(
          both.call([
            1,
            [
              [1, 2],
              [3, 4],
            ],
          ]),
        ),
      ),
    ).toMatch(/^b is 2 rows by 2 columns/);
  });
});

describe("a column as long as a list", () => {
  const doubled = made([list(number({ name: "runs", help })), optional(number({ name: "by", help }), 2)], {
    result: { shape: "column", help },
    compute: (runs: readonly (number | null | Fault)[], by: number) =>
      by === 13 ? OTHER : runs.map((run) => (typeof run === "number" ? run * by : run)),
  });
  test("lies as its list does", () => {
    expect(doubled.call([[[1], [null], [3]]])).toEqual([[2], [""], [6]]);
    expect(doubled.call([[[1, null, 3]], 3])).toEqual([[3, "", 9]]);
    expect(doubled.call([[[4]]])).toEqual([[8]]);
    expect(doubled.call([4])).toEqual([[8]]);
    expect(doubled.call([[[4]], 13])).toBe(OTHER);
  });
  test("takes single values only beside it", () => {
    expect(
      words(
        doubled.call([
          [[1], [2]],
          [[1], [2]],
        ]),
      ),
    ).toBe("by is 2 rows by 1 columns; it must be a single value.");
    expect(words(doubled.call([[[1], [2]], [[1, 2]]]))).toBe(
      "by is 1 rows by 2 columns; it must be a single value.",
    );
    expect(words(doubled.call([]))).toMatch(/^runs is missing/);
  });
});

describe("a block of its own size", () => {
  const block = made([repeated({ name: "more", help, wanted: "more" })], {
    result: { shape: "table", help, columns: ["n"] },
    compute: (all: readonly Argument[]) => (all.length === 0 ? OTHER : all.map((one) => [one, null, -0])),
  });
  test("takes as many arguments as there are", () => {
    expect(block.call([1, 2])).toEqual([
      [1, "", 0],
      [2, "", 0],
    ]);
    expect(block.call([])).toBe(OTHER);
  });
  test("the last of several", () => {
    const named = made([text({ name: "name", help }), repeated({ name: "more", help, wanted: "more" })], {
      result: { shape: "table", help, columns: ["n"] },
      compute: (name: string, all: readonly Argument[]) => [[name, all.length]],
    });
    expect(named.call(["x", 1, 2])).toEqual([["x", 2]]);
    expect(named.call(["x"])).toEqual([["x", 0]]);
  });
});
