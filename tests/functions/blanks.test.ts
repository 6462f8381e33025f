/**
 * Blank cells as Excel's builds hand them over: null and an empty text are the
 * same to every function and to every workbook; where they come as 0, which no
 * function can tell from a zero that was typed, the workbook says so.
 */
import fc from "fast-check";
import { isFault } from "../../src/engine/faults";
import { allFunctions } from "../../src/functions/all";
import type { Argument, Cell, Matrix } from "../../src/functions/core/cells";
import { exampleCall } from "../../src/help/exampleCall";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import { namedRows, namedValue } from "../../src/workbooks/named";
import { RIGSHEET_VERSION } from "../../src/version";
import { templates } from "../../src/workbooks/templates";
import type { withBlanksAs } from "../support/blanks";
import { BLANKS, type Blank } from "../support/blanks";
import { generatedJob } from "../support/generatedJobs";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { tries } from "../support/tries";
import { validArguments } from "../support/validArguments";

/** What blanks are to the functions that the engine calls; a name that a mock may read. */
let mockBlank: Blank = null;
jest.mock("../../src/functions/all", () => {
  const real = jest.requireActual<{ allFunctions: typeof allFunctions }>("../../src/functions/all");
  const { withBlanksAs: as } = jest.requireActual<{ withBlanksAs: typeof withBlanksAs }>("../support/blanks");
  return {
    ...real,
    allFunctions: real.allFunctions.map((one) => ({
      ...one,
      call: (args: readonly Argument[]) => one.call(args.map((arg) => as(mockBlank, arg))),
    })),
  };
});
afterEach(() => {
  mockBlank = null;
});

function computedWith(blank: Blank, make: () => Book): Book {
  mockBlank = blank;
  return recalculate(make());
}

const cellsOf = (outcome: Cell | Matrix): readonly Cell[] =>
  Array.isArray(outcome) ? (outcome as Matrix).flat() : [outcome as Cell];

/** Some cells of ranges emptied. */
const withHoles = (args: readonly Argument[], holes: readonly boolean[]): Argument[] => {
  let at = 0;
  return args.map((arg) =>
    Array.isArray(arg)
      ? (arg as Matrix).map((row) => row.map((cell) => (holes[at++ % holes.length] ? null : cell)))
      : arg,
  );
};

describe.each(allFunctions.map((one) => [one.name, one] as const))("%s", (_, one) => {
  const given = fc.oneof(
    fc.constantFrom(...one.examples.map(({ formula }) => exampleCall(formula).args)),
    validArguments(one, 3),
  );
  const holes = fc.array(fc.boolean(), { minLength: 7, maxLength: 7 });

  test("null and an empty text are the same, and 0 ends in values or sentences", () => {
    fc.assert(
      fc.property(given, holes, (args, where) => {
        const bare = withHoles(args, where);
        const [none, empty, zero] = BLANKS.map((blank) => {
          mockBlank = blank;
          return one.call(bare);
        });
        expect(empty).toEqual(none);
        for (const cell of cellsOf(zero!))
          expect(isFault(cell) || typeof cell !== "number" || Number.isFinite(cell)).toBe(true);
      }),
      { numRuns: tries(20, 60), seed: 16 },
    );
  });
});

const JOBS: readonly (readonly [string, () => Book])[] = [
  ...templates.flatMap(({ id, demonstration, empty }) => [
    [`${id}, demonstration`, demonstration] as const,
    [`${id}, empty`, empty] as const,
  ]),
  ...Array.from(
    { length: tries(1, 3, 20) },
    (_, index) => [`generated job ${index + 1}`, () => layOut(multiRoom, generatedJob(index + 1))] as const,
  ),
];

describe.each(JOBS)("%s", (_, make) => {
  test("with an empty text for a blank every cell is what it is with null", () => {
    const [none, empty] = [computedWith(null, make), computedWith("", make)];
    for (const [index, { name, results }] of none.sheets.entries())
      expect([name, empty.sheets[index]!.results]).toEqual([name, results]);
    expect(namedValue(none, "about_functions")).toBe(RIGSHEET_VERSION);
    expect(namedValue(none, "about_state")).toBe("ok");
  });

  test("with 0 for a blank it is said at the head of every sheet, and no check passes", () => {
    const zeros = computedWith(0, make);
    expect(namedValue(zeros, "about_functions")).toMatch(/^\d+\.\d+\.\d+, blanks read as 0$/);
    expect(namedValue(zeros, "about_state")).toBe("look");
    for (const { name, results } of zeros.sheets)
      expect([name, results.D1]).toEqual([
        name,
        "This program reads blanks as 0: do not trust levels and volts. See About.",
      ]);
    const results = namedRows(zeros, "checks_result").flat();
    expect(results.length).toBeGreaterThan(3);
    expect(new Set(results)).toEqual(new Set(["error"]));
  });
});

test("what makes that needful: with 0 for a blank levels move; and no price stands beside them", () => {
  const { demonstration } = templates.find(({ id }) => id === "multi-room")!;
  const [none, zeros] = [computedWith(null, demonstration), computedWith(0, demonstration)];
  expect(namedRows(zeros, "rooms_weakest")).not.toEqual(namedRows(none, "rooms_weakest"));
  expect(namedValue(zeros, "quote_total")).toBe("open");
});
