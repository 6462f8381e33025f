/** How arguments are read: both sides of each limit. Dates by the calendar and by Excel's own numbers. */
import { isFault, type Fault } from "../../src/engine/faults";
import type { Cell } from "../../src/functions/core/cells";
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
      expect(refusal(any, cell)).toMatch(/^run is .+ which is not a number\. Enter a number in m\.$/);
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
    expect(refusal(name, cell)).toContain("which is not text. Enter a room.");
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
    expect(refusal(when, cell)).toMatch(/^date is .+, which is not a date\. Enter a date cell/);
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
