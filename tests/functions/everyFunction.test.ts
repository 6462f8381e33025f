/** What every sheet function is held to, whatever its trade. */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { isFault, type Fault } from "../../src/engine/faults";
import { allFunctions } from "../../src/functions/all";
import { isBlank, type Argument, type Cell, type Matrix } from "../../src/functions/core/cells";
import type { Example, SheetFunction } from "../../src/functions/core/declare";
import { exampleCall } from "../../src/help/exampleCall";
import { evaluateFormula } from "../../src/hosts/headless/evaluateFormula";
import { loadLibrary } from "../../src/hosts/headless/loadLibrary";
import { call } from "../support/functionGroup";
import { heldTo, type Basis } from "../support/heldTo";
import { validArguments } from "../support/validArguments";
import { tries } from "../support/tries";

const project = path.join(__dirname, "../..");
const each = allFunctions.map((one) => [one.name, one] as const);
const rowsOf = (value: unknown): unknown[][] => (Array.isArray(value) ? value : [[value]]);

describe("declarations", () => {
  test("the list of functions is what the folders hold", () => {
    const script =
      'const { listFunctions } = await import("./src/build/list-functions.mjs"); process.stdout.write(listFunctions());';
    const listed = execFileSync(process.execPath, ["--input-type=module", "-e", script], {
      cwd: project,
      encoding: "utf8",
    });
    expect(readFileSync(path.join(project, "src/functions/all.ts"), "utf8")).toBe(listed);
  });

  test("names are given once", () => {
    expect(new Set(allFunctions.map(({ name }) => name)).size).toBe(allFunctions.length);
  });

  test.each(each)("%s", (name, one) => {
    expect(name).toMatch(/^[A-Z][A-Z0-9]{2,30}$/);
    expect(isCellAddress(name)).toBe(false);
    expect(builtIns().has(name)).toBe(false);
    expect(one.summary).toMatch(/^[A-Z][^.]*\.$/);
    expect(one.summary.length).toBeLessThanOrEqual(120);
    expect(one.examples.length).toBeGreaterThan(0);
    expect(one.tasks.length).toBeGreaterThan(0);
    for (const words of [one.equation, one.source, one.accuracy, one.result.help])
      expect(words).toMatch(/\S/);
    for (const task of one.tasks) expect(task).toMatch(/^[A-Z].*\?$/);
    for (const { name, help } of one.parameters) {
      expect(name).toMatch(/^[a-z][a-z0-9_]*$/);
      expect([name, help.length > 4]).toEqual([name, true]);
    }
    const firstOptional = one.parameters.findIndex(({ optional }) => optional);
    if (firstOptional >= 0) {
      // A required argument after one that may be left out could not be told from it.
      expect(one.parameters.slice(firstOptional).every(({ optional }) => optional)).toBe(true);
    }
    const known = new Set(allFunctions.map((other) => other.name));
    expect(one.seeAlso.filter((other) => !known.has(other) || other === name)).toEqual([]);
  });
});

/** Excel takes A1 to XFD1048576 for a cell. */
function isCellAddress(name: string): boolean {
  const [, letters, digits] = /^([A-Z]{1,3})(\d{1,7})$/.exec(name) ?? [];
  if (!letters || !digits) return false;
  const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
  return column <= 16_384 && Number(digits) >= 1 && Number(digits) <= 1_048_576;
}

const builtIns = (): ReadonlySet<string> =>
  new Set(
    Object.keys(loadLibrary().registries.functionRegistry.content).filter((name) => !name.includes("RIG.")),
  );

test("the grid library's own functions are known, so that a clash would be seen", () => {
  expect(builtIns().size).toBeGreaterThan(300);
  expect(builtIns().has("SUMIFS")).toBe(true);
  expect(isCellAddress("XFD1048576")).toBe(true);
  expect(isCellAddress("XFE1")).toBe(false);
});

describe("documented examples, through the spreadsheet's own engine", () => {
  const basisOf = ({ source }: Example): Basis => {
    if (/from memory/i.test(source)) return "from memory";
    if (/common practice/i.test(source)) return "common practice, no source";
    if (/by hand|followed|package\.json/i.test(source)) return "derivation";
    return /satellite\.js|astronomy|library|magvar/i.test(source) ? "reference library" : "published";
  };

  describe.each(each)("%s", (name, one) => {
    const sources = new Map(
      one.examples.map((example) => [
        example.source,
        heldTo({
          what: name,
          source: example.source,
          basis: basisOf(example),
          unit: one.result.unit ?? "",
          example: true,
        }),
      ]),
    );

    test.each(one.examples.map((example) => [example.formula, example] as const))(
      "%s",
      (formula, example) => {
        const held = sources.get(example.source)!;
        const expected = rowsOf(example.result);
        const actual = rowsOf(evaluateFormula(formula));
        expect(actual.map((row) => row.length)).toEqual(expected.map((row) => row.length));
        expected.forEach((row, i) =>
          row.forEach((value, j) => {
            const label = row.length * expected.length > 1 ? `${formula}, cell ${i + 1}, ${j + 1}` : formula;
            if (typeof value === "number" && example.tolerance) {
              held.row(label, actual[i]![j], value, example.tolerance);
            } else held.same(label, actual[i]![j], value as string | number);
          }),
        );
      },
    );
  });
});

/** A fault that comes from another cell. */
const PASSED_ON: Fault = { kind: "fault", code: "#N/A", message: "A sentence of another cell." };

const WRONG: readonly (readonly [string, Argument])[] = [
  ["null", null],
  ["blank", ""],
  ["blanks", "  "],
  ["text", "text"],
  ["numeric text", "12"],
  ["decimal comma", "1,5"],
  ["TRUE", true],
  ["FALSE", false],
  ["an error value", PASSED_ON],
  ["NaN", NaN],
  ["infinity", Infinity],
  ["minus infinity", -Infinity],
  ["minus zero", -0],
  ["1e308", 1e308],
  ["-1e308", -1e308],
  ["the least number", 5e-324],
  ["an array of one", [[5]]],
  ["an array of one blank", [[null]]],
  ["an empty array", []],
  ["an array of an empty row", [[]]],
  ["a ragged array", [[1, 2], [3]]],
  ["a ragged array that widens", [[1], [2, 3]]],
  ["a column of all sorts", [[1], ["x"], [null], [PASSED_ON]]],
  ["a row of all sorts", [["a", null, 1e308]]],
];

const cellsOf = (value: Cell | Matrix): Cell[] => rowsOf(value).flat() as Cell[];

function soundOrWhy(cell: Cell): string | undefined {
  if (isFault(cell)) {
    if (cell.code !== "#VALUE!" && cell.code !== "#N/A") return `the code ${String(cell.code)}`;
    return /^[^\n]{15,450}\.$/.test(cell.message) && !/failed inside|undefined|\[object/.test(cell.message)
      ? undefined
      : `the sentence ${cell.message}`;
  }
  if (typeof cell === "number")
    return Number.isFinite(cell) && !Object.is(cell, -0) ? undefined : `the number ${cell}`;
  return typeof cell === "string" || typeof cell === "boolean" ? undefined : `a ${typeof cell}`;
}

/** The arguments of the first example, padded to the full length. */
const usual = (one: SheetFunction): Argument[] => {
  const { args } = exampleCall(one.examples[0]!.formula);
  const length = Math.max(args.length, one.parameters.length);
  return Array.from({ length }, (_, place) => args[place] ?? null);
};

const withArgument = (one: SheetFunction, place: number, argument: Argument): Cell | Matrix =>
  one.call(usual(one).map((usualOne, index) => (index === place ? argument : usualOne)));

describe("any value in any place: a number, a text or a fault with its sentence, never an exception", () => {
  test.each(each)("%s", (_name, one) => {
    usual(one).forEach((_, place) => {
      for (const [label, argument] of WRONG) {
        for (const cell of cellsOf(withArgument(one, place, argument))) {
          expect([place, label, soundOrWhy(cell)]).toEqual([place, label, undefined]);
        }
      }
    });
  });

  /** With a single argument that must be given, a blank one leaves the whole row blank. */
  const requiredEach = ({ parameters }: SheetFunction): number =>
    parameters.filter(({ optional, shape }) => !optional && shape === "each").length;
  const firstReplaced = (list: Argument, by: Cell): Matrix =>
    (list as Matrix).map((cells, row) => (row === 0 ? [by] : cells));
  const said = (value: Cell | Matrix): string =>
    cellsOf(value)
      .filter(isFault)
      .map(({ message }) => message)
      .join(" ");

  test.each(each)("%s says what is wrong with it", (_name, one) => {
    one.parameters.forEach((parameter, place) => {
      const { kind, name, optional, shape } = parameter;
      if (shape === "repeated") return;
      const give = (argument: Argument) => said(withArgument(one, place, argument));
      expect([name, give([[1, 2], [3]])]).toEqual([
        name,
        expect.stringContaining("rows of different lengths"),
      ]);
      if (shape === "table" || (shape === "list" && usual(one)[place] === null)) return;
      const giveCell = (cell: Cell) =>
        give(shape === "list" ? firstReplaced(usual(one)[place]!, cell) : cell);
      expect([name, giveCell(PASSED_ON)]).toEqual([name, expect.stringContaining(PASSED_ON.message)]);
      if (kind === "number") {
        expect([name, giveCell("12")]).toEqual([
          name,
          expect.stringContaining('"12", which is not a number'),
        ]);
        expect([name, giveCell("1,5")]).toEqual([name, expect.stringContaining("Write 1.5")]);
        for (const value of [true, NaN, Infinity]) {
          expect([name, giveCell(value)]).toEqual([name, expect.stringContaining("which is not a number")]);
        }
      }
      if (!optional && shape === "each" && requiredEach(one) > 1) {
        expect([name, give(null)]).toEqual([name, expect.stringContaining(`${name} is missing`)]);
      }
    });
  });

  test.each(each)("%s takes an array of one for a value", (_name, one) => {
    const args = usual(one);
    const boxed = args.map((argument) =>
      Array.isArray(argument) || argument === null ? argument : [[argument as Cell]],
    );
    expect(one.call(boxed)).toEqual(one.call(args));
  });

  test.each(each)("%s refuses more arguments than it takes", (name, one) => {
    if (one.parameters.at(-1)?.shape === "repeated") return;
    const outcome = one.call([...one.parameters.map(() => null), null]);
    expect(said(outcome)).toContain(`${name} was given ${one.parameters.length + 1} arguments`);
  });

  test.each(each)("%s without any argument", (_name, one) => {
    for (const cell of cellsOf(one.call([]))) expect(soundOrWhy(cell)).toBeUndefined();
  });
});

/** Functions whose one-value arguments may be columns. */
const broadcasting = each.filter(
  ([, { parameters, result }]) =>
    parameters.some(({ shape }) => shape === "each") && (result.shape === "cell" || result.shape === "row"),
);

const isColumn = (one: SheetFunction, place: number, argument: Argument): argument is Matrix =>
  one.parameters[place]!.shape === "each" && Array.isArray(argument);

const rowOf = (one: SheetFunction, args: readonly Argument[], row: number): Argument[] =>
  args.map((argument, place) => (isColumn(one, place, argument) ? argument[row]![0]! : argument));

const reordered = (one: SheetFunction, args: readonly Argument[], order: readonly number[]): Argument[] =>
  args.map((argument, place) =>
    isColumn(one, place, argument) ? order.map((row) => argument[row]!) : argument,
  );

const RUNS = { numRuns: tries(100, 1000) };

describe("columns, 1,000 runs each", () => {
  const columns = (one: SheetFunction) =>
    fc.integer({ min: 2, max: 4 }).chain((rows) => fc.tuple(fc.constant(rows), validArguments(one, rows)));

  test.each(broadcasting)(
    "%s: a column gives what its rows give, in any order, a blank row apart",
    (_name, one) => {
      let values = 0;
      fc.assert(
        fc.property(columns(one), fc.nat(), ([rows, args], turn) => {
          const whole = rowsOf(one.call(args));
          expect(whole).toHaveLength(rows);
          const rowAlone = (row: number) => rowsOf(one.call(rowOf(one, args, row)));
          const order = Array.from({ length: rows }, (_, row) => (row + turn) % rows).reverse();
          const blankRow = turn % rows;
          const withBlank = args.map((argument, place) =>
            isColumn(one, place, argument)
              ? argument.map((cells, row): Cell[] => (row === blankRow ? [null] : [...cells]))
              : argument,
          );
          const besideBlank = rowsOf(one.call(withBlank));
          const blankStays = besideBlank[blankRow]!.every((cell) => isBlank(cell as Cell));
          // All at once: hundreds of thousands of calls of `expect` took longer than what they look at.
          expect({
            each: whole.map((_, row) => rowAlone(row)),
            turned: rowsOf(one.call(reordered(one, args, order))),
            blankStays,
            beside: besideBlank.map((cells, row) => (row === blankRow ? "blank" : cells)),
          }).toEqual({
            each: whole.map((cells) => [cells]),
            turned: order.map((row) => whole[row]),
            blankStays: true,
            beside: whole.map((cells, row) => (row === blankRow ? "blank" : cells)),
          });
          values += whole.filter((cells) => !isFault(cells[0]!)).length;
        }),
        RUNS,
      );
      // Were all rows faults, the property would say little. A pair of slots that a dish sees is drawn now and then only.
      expect(values).toBeGreaterThan(tries(10, 300));
    },
  );
});

describe("the order of a list doesn't matter where it should not, 1,000 runs each", () => {
  const shuffled = <T>(entry: fc.Arbitrary<T>, max = 8) =>
    fc
      .array(entry, { minLength: 1, maxLength: max })
      .chain((list) =>
        fc.tuple(
          fc.constant(list),
          fc.shuffledSubarray(list, { minLength: list.length, maxLength: list.length }),
        ),
      );
  const column = (cells: readonly Cell[]): Matrix => cells.map((cell) => [cell]);
  const number = (value: Cell | Matrix): number => {
    if (typeof value !== "number") throw new Error(`a number was expected, not ${JSON.stringify(value)}`);
    return value;
  };

  test("CASCADELOSS", () => {
    const stage = fc.tuple(fc.integer({ min: 1, max: 16 }), fc.double({ min: 0, max: 5, noNaN: true }));
    fc.assert(
      fc.property(shuffled(stage), ([one, other]) => {
        const loss = (stages: [number, number][]) =>
          number(
            call(
              "CASCADELOSS",
              column(stages.map(([ways]) => ways)),
              column(stages.map(([, excess]) => excess)),
            ),
          );
        expect(Math.abs(loss(one) - loss(other))).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  test("SUMLEVEL", () => {
    fc.assert(
      fc.property(shuffled(fc.double({ min: 20, max: 120, noNaN: true })), ([one, other]) => {
        const level = (levels: number[]) => number(call("SUMLEVEL", column(levels)));
        expect(Math.abs(level(one) - level(other))).toBeLessThan(1e-9);
      }),
      RUNS,
    );
  });

  test("REELS", () => {
    fc.assert(
      fc.property(shuffled(fc.integer({ min: 1, max: 100 })), ([one, other]) => {
        expect(call("REELS", column(other), 100)).toBe(call("REELS", column(one), 100));
      }),
      RUNS,
    );
  });

  test("ALLOT: as many head units, whatever the order of the rows", () => {
    fc.assert(
      fc.property(shuffled(fc.integer({ min: 0, max: 8 })), ([one, other]) => {
        const most = (tuners: number[]) =>
          Math.max(
            0,
            ...cellsOf(call("ALLOT", column(tuners), 8)).filter((cell) => typeof cell === "number"),
          );
        expect(most(other)).toBe(most(one));
      }),
      RUNS,
    );
  });

  test("TREELOSS and TREEROOT: each row keeps its answer wherever it stands", () => {
    const tree = fc
      .array(fc.tuple(fc.nat(), fc.double({ min: 0, max: 30, noNaN: true })), { minLength: 1, maxLength: 8 })
      .map((rows) =>
        rows.map(([feeder, loss], index) => ({
          id: `R${index}`,
          from: index === 0 || feeder % (index + 1) === index ? "Top" : `R${feeder % index}`,
          loss,
        })),
      );
    const two = tree.chain((rows) =>
      fc.tuple(
        fc.constant(rows),
        fc.shuffledSubarray(rows, { minLength: rows.length, maxLength: rows.length }),
      ),
    );
    type Row = { id: string; from: string; loss: number };
    const answers = (rows: Row[]): Map<string, Cell[]> => {
      const ids = column(rows.map(({ id }) => id));
      const from = column(rows.map(({ from }) => from));
      const losses = rowsOf(call("TREELOSS", ids, from, column(rows.map(({ loss }) => loss)), "Top"));
      const roots = rowsOf(call("TREEROOT", ids, from, "Top"));
      return new Map(rows.map(({ id }, row) => [id, [losses[row]![0], roots[row]![0]] as Cell[]]));
    };
    fc.assert(
      fc.property(two, ([one, other]) => {
        const first = answers(one);
        expect([...first.values()].every(([, root]) => root === "Top")).toBe(true);
        for (const [id, answer] of answers(other)) expect(answer).toEqual(first.get(id));
      }),
      RUNS,
    );
  });
});
