/** SHOWWORK: every line is arithmetic that holds, and the last one is the function's own value. */
import fc from "fast-check";
import { isFault } from "../../src/engine/faults";
import { allFunctions } from "../../src/functions/all";
import { workedFunctions } from "../../src/functions/about/worked";
import type { Argument, Cell, Matrix } from "../../src/functions/core/cells";
import type { SheetFunction } from "../../src/functions/core/declare";
import { exampleCall } from "../../src/help/exampleCall";
import { call, sentence } from "../support/functionGroup";
import { validArguments } from "../support/validArguments";
import { valueOfLine } from "../support/valueOfLine";
import { tries } from "../support/tries";

const worked: readonly (readonly [string, SheetFunction])[] = workedFunctions.map((one) => [one.name, one]);

const single = (args: readonly Argument[], one: SheetFunction): Argument[] =>
  args.map((arg, place) =>
    one.parameters[place]!.shape === "each" && Array.isArray(arg) ? (arg[0] as Cell[])[0]! : arg,
  );

/** The function's value, the last of several; or its first fault. */
function ownOf(value: Cell | Matrix): Cell {
  const cells = Array.isArray(value) ? (value as Matrix).flat() : [value as Cell];
  return cells.find(isFault) ?? cells.at(-1)!;
}

const numRuns = tries(100, 1000);
/** Fewer would say little; more than chance can bring where three in ten runs have no fault. */
const LEAST = tries(20, 300);

describe(`the last row is the function's own value, ${numRuns} runs each`, () => {
  test.each(worked)("%s", (name, one) => {
    let values = 0;
    fc.assert(
      fc.property(validArguments(one, 1), (columns) => {
        const args = single(columns, one);
        const own = ownOf(one.call(args));
        const work = call("SHOWWORK", name, ...args);
        if (isFault(own)) return expect(work).toEqual(own);
        values += 1;
        expect((work as Matrix).at(-1)![2]).toBe(own);
      }),
      { numRuns },
    );
    // Were most runs faults, the property would say little.
    expect(values).toBeGreaterThan(LEAST);
  });
});

describe("every line holds: worked out with its numbers as they stand, it gives the value beside it", () => {
  const lines = (work: Cell | Matrix): Matrix => (work as Matrix).filter((row) => row[4] !== "");

  test.each(worked)("%s", (name, one) => {
    let held = 0;
    fc.assert(
      fc.property(validArguments(one, 1), (columns) => {
        const work = call("SHOWWORK", name, ...single(columns, one));
        if (isFault(work)) return;
        for (const [symbol, , value, , line] of lines(work)) {
          const { result, greatest } = valueOfLine(line as string);
          // Eight digits of each number in the line are shown.
          const slack = 1e-6 * Math.max(greatest, Math.abs(value as number), 1e-9);
          if (!(Math.abs(result - (value as number)) <= slack)) {
            throw new Error(
              `${name}, ${String(symbol)}: ${String(line)} gives ${result}, not ${String(value)}`,
            );
          }
          held += 1;
        }
      }),
      { numRuns },
    );
    expect(held).toBeGreaterThan(LEAST);
  });
});

describe("known workings", () => {
  test("the look angle's lines, against satellite.js 7.1.0 at the end", () => {
    const work = call("SHOWWORK", "RIG.LOOKANGLES", -18, 178, -175, 10) as Matrix;
    const value = (symbol: string) => work.find((row) => row[0] === symbol)![2] as number;
    expect(value("Az")).toBeCloseTo(21.688964, 5);
    expect(value("El")).toBeCloseTo(67.413966, 5);
    expect(value("d")).toBeCloseTo(36_202.0552, 3);
    // WGS84's own figure (NGA.STND.0036): e² = 6.69437999014e-3.
    expect(value("e²")).toBeCloseTo(6.69437999014e-3, 13);
  });

  test("a constant-power load: 24 V, 6 W, 5.85 ohm, by hand", () => {
    const work = call("SHOWWORK", "VOLTDROP", 24, 6, 5.85, "W") as Matrix;
    expect(work.map(([symbol]) => symbol)).toEqual(["Vs", "R", "P", "D", "V", "Vs − V"]);
    expect(work[3]![2]).toBeCloseTo(435.6, 9); // 576 − 4·6·5.85
    expect(work[4]![2]).toBeCloseTo((24 + Math.sqrt(435.6)) / 2, 9);
    expect(work[3]![4]).toBe("24^2 − 4·6·5.85");
  });

  test("a cascade shows each stage", () => {
    const work = call("SHOWWORK", "cascadeloss", [[2], [null], [4]], [[0.5], [null], [1]]) as Matrix;
    expect(work.map(([symbol]) => symbol)).toEqual(["N1", "x1", "L1", "N3", "x3", "L3", "L"]);
    expect(work[6]![4]).toBe("3.5103 + 7.0205999");
  });

  test("a kind of the catalogue says that it comes from there", () => {
    const own = call("SHOWWORK", "TUNERCOUNT", "Bar", 3, [["bar", 5]]) as Matrix;
    expect(own.at(-1)!.slice(2, 5)).toEqual([15, "tuners", "3·5"]);
    expect(own[2]![5]).toBe("The catalogue");
    const builtIn = call("SHOWWORK", "TUNERCOUNT", "recorder, 2 tuners") as Matrix;
    expect(builtIn[2]![5]).toContain("common practice, no source");
  });

  test("feet are turned into metres in a line of their own", () => {
    const work = call("SHOWWORK", "CABLELOSS", "series 6", 100, 950, null, "ft") as Matrix;
    expect(work[2]!.slice(0, 5)).toEqual(["L", "length in metres", 30.48, "m", "100·0.3048"]);
    expect(work.find((row) => row[0] === "k1")![5]).toContain("from memory");
    const table = [["House", "", 1, 0, 0, ""]];
    const own = call("SHOWWORK", "CABLELOSS", "house", 100, 900, null, null, table) as Matrix;
    expect(own.find((row) => row[0] === "k1")![5]).toBe("The cable table");
    expect(own.find((row) => row[0] === "α")![2]).toBe(30);
  });
});

describe("what cannot be shown", () => {
  test("an unknown function names those that can be shown", () => {
    const said = sentence(call("SHOWWORK", "HOROSCOPE", 1));
    for (const { name } of workedFunctions) expect(said).toContain(name);
    expect(sentence(call("SHOWWORK", "VERSION"))).toContain("cannot be shown");
  });

  test("a column is refused, a list argument is not", () => {
    expect(sentence(call("SHOWWORK", "SPLITLOSS", [[2], [4]]))).toContain("one row of SPLITLOSS at a time");
    expect(Array.isArray(call("SHOWWORK", "CASCADELOSS", [[2], [4]]))).toBe(true);
  });

  test.each([
    ["no name", [null], "function is missing"],
    ["no arguments", ["AZIMUTH"], "arguments is missing"],
    ["an argument short", ["AZIMUTH", 35], "longitude is missing"],
    ["a blank list", ["CASCADELOSS", [[null], [null]]], "ways is missing"],
    ["too many", ["SPLITLOSS", 2, 0, 1], "SPLITLOSS was given 3 arguments"],
    ["out of range", ["AZIMUTH", 91, 0, 0], "latitude is 91 deg"],
    ["the function's own fault", ["LOADVOLTS", 24, 12, 15.6, "W"], "There is no operating point"],
    ["straight under the slot", ["AZIMUTH", 0, 10, 10], "straight under the slot"],
  ] as [string, Argument[], string][])("%s", (_label, args, words) => {
    expect(sentence(call("SHOWWORK", ...args))).toContain(words);
  });
});

test("every function that declares a working is on the list", () => {
  const declared = allFunctions.filter(({ working }) => working).map(({ name }) => name);
  expect([...workedFunctions.map(({ name }) => name)].sort()).toEqual(declared.sort());
});

test("the working of every documented example of one row can be shown", () => {
  const formulas = workedFunctions.flatMap(({ examples }) =>
    examples.flatMap(({ formula, result }) => (Array.isArray(result) && result.length > 1 ? [] : [formula])),
  );
  expect(formulas.length).toBeGreaterThan(workedFunctions.length);
  for (const formula of formulas) {
    const { name, args } = exampleCall(formula);
    expect(Array.isArray(call("SHOWWORK", name, ...args))).toBe(true);
  }
});
