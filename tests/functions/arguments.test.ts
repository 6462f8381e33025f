/** How arguments are read and combined: both sides of each limit. Dates by the calendar and by Excel's own numbers. */
import { isFault, type Fault } from "../../src/engine/faults";
import type { Argument, Cell, Matrix } from "../../src/functions/core/cells";
import { declare, type Declared } from "../../src/functions/core/declare";
import {
  choice,
  date,
  list,
  number,
  optional,
  repeated,
  slot,
  table,
  text,
  type EachParameter,
  type Parameter,
} from "../../src/functions/core/parameters";

const help = "";
const words = (value: unknown): string => {
  if (!isFault(value as Cell)) throw new Error(`a fault was expected, not ${JSON.stringify(value)}`);
  return (value as Fault).message;
};
const refusal = <T>(parameter: EachParameter<T>, cell: Cell): string => words(parameter.read(cell));
const OTHER: Fault = { kind: "fault", code: "#N/A", message: "another cell's fault" };

describe("numbers", () => {
  const any = number({ name: "run", help, unit: "m" });
  test.each([1.5, -3, 0, 1e300])("%d", (value) => expect(any.read(value)).toBe(value));
  test("no minus zero", () => expect(Object.is(any.read(-0), 0)).toBe(true));
  test("another cell's fault goes on", () => expect(any.read(OTHER)).toBe(OTHER));
  test.each([
    ["1,5", "1.5"],
    [" -12,75 ", "-12.75"],
    ["+0,5", "+0.5"],
  ])("%j has a decimal comma", (typed, suggestion) => {
    expect(refusal(any, typed)).toContain(`text with a decimal comma. Write ${suggestion},`);
  });
  test.each(["1,5,3", "a1,5", "1,5b", "1.234,5", "x", "12", true, NaN, Infinity])(
    "%j is no number",
    (cell) => {
      expect(refusal(any, cell)).toMatch(/^run is .+ which is not a number\. Give a number in m\.$/);
    },
  );
  test("the sentence about a missing one names the unit, where there is one", () => {
    expect(any.wanted).toBe("a number in m");
    expect(number({ name: "n", help }).wanted).toBe("a number");
    expect([any.optional, any.kind, any.shape]).toEqual([false, "number", "each"]);
  });

  const closed = number({ name: "share", help, unit: "%", min: 0, max: 99, advice: "Enter a percentage" });
  test.each([0, 99, 50])("%d lies within 0 to 99", (value) => expect(closed.read(value)).toBe(value));
  test.each([-0.001, 99.001])("%d lies outside", (value) => {
    expect(refusal(closed, value)).toBe(
      `share is ${value} %; it must be from 0 to 99 %. Enter a percentage.`,
    );
  });
  test("above a limit that is itself refused", () => {
    const above = number({ name: "size", help, min: 0, aboveMin: true });
    expect(above.read(1e-9)).toBe(1e-9);
    expect(refusal(above, 0)).toContain("it must be more than 0");
    expect(refusal(above, -1)).toContain("it must be more than 0");
  });
  test("whole numbers", () => {
    const whole = number({ name: "ways", help, integer: true, min: 2 });
    expect(whole.read(3)).toBe(3);
    expect(refusal(whole, 2.5)).toContain("a whole number 2 or more");
    expect(number({ name: "ways", help, integer: false }).read(2.5)).toBe(2.5);
  });
});

describe("text", () => {
  const name = text({ name: "room", help, wanted: "a room" });
  test("is trimmed, and a number is a name", () => {
    expect([name.read("  attic "), name.read(12), name.read(0.5)]).toEqual(["attic", "12", "0.5"]);
    expect(name.read(OTHER)).toBe(OTHER);
    expect([name.optional, name.wanted, text({ name: "x", help }).wanted]).toEqual([false, "a room", "text"]);
  });
  test.each([true, null, NaN, Infinity])("%j is none", (cell) => {
    expect(refusal(name, cell)).toContain("which is not text. Give a room.");
  });
});

describe("one of a few words", () => {
  const kind = choice({ name: "kind", help, choices: ["A", "W", "constant power"] });
  test("whatever its case, and trimmed", () => {
    expect([" w ", "a", "Constant POWER"].map((cell) => kind.read(cell))).toEqual([
      "W",
      "A",
      "constant power",
    ]);
    expect(kind.read(OTHER)).toBe(OTHER);
    expect([kind.optional, kind.wanted]).toEqual([false, "one of A, W, constant power"]);
  });
  test.each(["V", "", "constant  power", 1, true, null])("%j is none of them", (cell) => {
    expect(refusal(kind, cell)).toMatch(/^kind is .+; it must be one of "A", "W", "constant power"\.$/);
  });
});

describe("orbital slots", () => {
  const place = slot({ name: "slot", help });
  test.each([
    ["97W", -97],
    [" 97 w ", -97],
    ["13E", 13],
    ["13.5° e", 13.5],
    ["180E", 180],
    ["180W", -180],
    ["0W", 0],
    [-97.5, -97.5],
    [180, 180],
    [-180, -180],
    [0, 0],
  ])("%j is %d degrees east", (cell, degrees) => expect(Object.is(place.read(cell), degrees)).toBe(true));
  test("no minus zero", () => expect(Object.is(place.read(-0), 0)).toBe(true));
  test.each([
    "180.1W",
    "181E",
    "W97",
    "97",
    "97N",
    "97.W",
    "1234E",
    "x97W",
    "97Wx",
    180.1,
    -180.1,
    NaN,
    true,
    null,
  ])("%j is none", (cell) => expect(refusal(place, cell)).toContain("which is not an orbital slot"));
  test("its limits and its fault", () => {
    expect(place.limits).toEqual({ min: -180, max: 180, unit: "deg east" });
    expect([place.optional, place.read(OTHER)]).toEqual([false, OTHER]);
  });
});

describe("dates", () => {
  const when = date({ name: "date", help });
  const iso = (cell: Cell): string => (when.read(cell) as Date).toISOString();
  test.each([
    // Excel's own numbers: 1 is 1900-01-01 and 60 a day that was not; 36526, 45000 and the last one.
    [36526, "2000-01-01T00:00:00.000Z"],
    [45000.25, "2023-03-15T06:00:00.000Z"],
    [2_958_465, "9999-12-31T00:00:00.000Z"],
    [2_958_465.5, "9999-12-31T12:00:00.000Z"],
    [2200, "1906-01-08T00:00:00.000Z"],
    // Decimal years: half of 365 days is 182.5, of 366 183.
    [1900, "1900-01-01T00:00:00.000Z"],
    [2026.5, "2026-07-02T12:00:00.000Z"],
    [2024.5, "2024-07-02T00:00:00.000Z"],
    [2199.5, "2199-07-02T12:00:00.000Z"],
    ["2026-07-04", "2026-07-04T00:00:00.000Z"],
    [" 2026-07-04 13:30 ", "2026-07-04T13:30:00.000Z"],
    ["2026-07-04T13:30:15.5Z", "2026-07-04T13:30:15.500Z"],
    ["2026-07-04T23:59:59Z", "2026-07-04T23:59:59.000Z"],
    ["2024-02-29", "2024-02-29T00:00:00.000Z"],
    ["1900-01-01", "1900-01-01T00:00:00.000Z"],
  ])("%j", (cell, expected) => expect(iso(cell)).toBe(expected));
  test.each([
    ...["2026-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "2026-01-00", "2026-04-32", "1899-12-31"],
    ...[
      "2026-07-04 24:00",
      "2026-07-04 12:60",
      "2026-07-04 12:00:60",
      "7/4/2026",
      "x2026-07-04",
      "2026-07-04x",
    ],
    ...["2026-7-4", "2026-07-04 1:30", "2026-07-04 12", "0026-07-04"],
    ...[1899.99, 0, 59, -5, 2_958_466, NaN, Infinity],
    ...[true, null],
  ])("%j is none", (cell) => {
    expect(refusal(when, cell)).toMatch(/^date is .+, which is not a date\. Give a date cell/);
  });
  test("another cell's fault goes on", () =>
    expect([when.read(OTHER), when.optional]).toEqual([OTHER, false]));
});

describe("optional arguments and lists", () => {
  test("blank or left out: the default, else what stands there", () => {
    const share = optional(number({ name: "share", help, max: 1 }), 0.55);
    expect([null, "", "  ", 0, 0.7].map((cell) => share.read(cell))).toEqual([0.55, 0.55, 0.55, 0, 0.7]);
    expect([share.optional, share.defaultValue, refusal(share, 2).slice(0, 10)]).toEqual([
      true,
      0.55,
      "share is 2",
    ]);
    expect(optional(number({ name: "share", help })).read(null)).toBeUndefined();
  });
  test("a list is one column or one row; blank entries keep their places, bad ones are faults in theirs", () => {
    const runs = list(number({ name: "runs", help, min: 0 }));
    expect(runs.readWhole([[1], [null], [""], [3]])).toEqual([1, null, null, 3]);
    expect(runs.readWhole([[1, null, 3]])).toEqual([1, null, 3]);
    const [good, bad] = runs.readWhole([[1], [-1]]) as [number, Fault];
    expect([good, bad.message.slice(0, 10)]).toEqual([1, "runs is -1"]);
    expect(
      words(
        runs.readWhole([
          [1, 2],
          [3, 4],
        ]),
      ),
    ).toBe("runs is 2 rows by 2 columns; it must be one column or one row.");
    expect(runs.shape).toBe("list");
    const maybe = optional(runs);
    expect([maybe.optional, maybe.shape, maybe.readWhole([[2]])]).toEqual([true, "list", [2]]);
  });
  test("a block and what follows are handed on as they are", () => {
    const block = table({ name: "cables", help, wanted: "a table" });
    const cells = [
      [1, "a"],
      [null, true],
    ];
    expect([block.readWhole(cells), block.kind, block.optional]).toEqual([cells, "table", false]);
    const rest = repeated({ name: "more", help, wanted: "more" });
    expect([rest.readRest([1, cells]), rest.shape, rest.kind, rest.optional]).toEqual([
      [1, cells],
      "repeated",
      "table",
      true,
    ]);
  });
});

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
    expect(words(row[1]![0])).toMatch(/^a is missing\. Give a number\./);
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
