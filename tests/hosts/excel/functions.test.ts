/** The functions as Excel calls them: registered, given matrices and error cells, answering with matrices. */
import { allFunctions } from "../../../src/functions/all";
import type { Argument, Cell, Matrix } from "../../../src/functions/core/cells";
import { exampleCall } from "../../../src/help/exampleCall";
import { associateAll } from "../../../src/hosts/excel/associate";
import { functionMetadata } from "../../../src/hosts/excel/functionMetadata";
import { isFault } from "../../../src/engine/faults";
import { ExcelStandIn } from "../../support/excelStandIn";

const excel = new ExcelStandIn();
let remove: () => void;
beforeAll(() => {
  remove = excel.install();
  associateAll(allFunctions);
});
afterAll(() => remove());

interface ExcelError {
  readonly code: string;
  readonly message?: string;
}
type Answer = (number | string | boolean | ExcelError)[][];

/** As Excel calls: every argument a matrix, an omitted one null, a record of the call at the end. */
function call(name: string, args: readonly Argument[]): Answer {
  const { parameters } = allFunctions.find((one) => one.name === name)!;
  const asMatrix = (argument: Argument): unknown =>
    argument === null
      ? null
      : Array.isArray(argument)
        ? argument.map((row: Cell[]) => row.map(asGiven))
        : [[asGiven(argument as Cell)]];
  const repeats = parameters.at(-1)?.shape === "repeated";
  const declared = repeats ? parameters.length - 1 : parameters.length;
  const given: unknown[] = Array.from({ length: declared }, (_, index) => asMatrix(args[index] ?? null));
  if (repeats) given.push(args.slice(declared).map(asMatrix));
  return excel.associated.get(name)!(...given, { functionName: name }) as Answer;
}

/** A blank cell of a range comes as empty text. */
const asGiven = (cell: Cell): unknown =>
  isFault(cell)
    ? new CustomFunctions.Error(CustomFunctions.ErrorCode.invalidValue, cell.message)
    : (cell ?? "");

test("every declared function is associated under its id, and nothing else is", () => {
  const ids = functionMetadata(allFunctions).functions.map(({ id }) => id);
  expect(allFunctions.length).toBeGreaterThan(40);
  expect([...excel.associated.keys()].sort()).toEqual([...ids].sort());
  expect(ids.sort()).toEqual(allFunctions.map(({ name }) => name).sort());
});

describe("every example comes out of the associated function as its source has it", () => {
  test.each(allFunctions.flatMap((one) => one.examples.map((example) => ({ name: one.name, ...example }))))(
    "$formula",
    ({ name, formula, result, tolerance }) => {
      const answer = call(name, exampleCall(formula).args);
      const wanted = Array.isArray(result) ? result : [[result]];
      expect(answer.length).toBe(wanted.length);
      wanted.forEach((row: readonly (number | string)[], down: number) =>
        row.forEach((value, across) => {
          const cell = answer[down]![across]!;
          if (typeof value === "number")
            expect(Math.abs((cell as number) - value)).toBeLessThanOrEqual(tolerance ?? 0);
          else expect(cell).toBe(value);
        }),
      );
    },
  );
});

/** One value as a 1 × 1 matrix; a fault as Excel's error with the same sentence. */
function asExcel(outcome: Cell | Matrix): unknown {
  const cell = (one: Cell): unknown =>
    isFault(one) ? { code: one.code, message: one.message } : (one ?? "");
  return Array.isArray(outcome) ? (outcome as Matrix).map((row) => row.map(cell)) : [[cell(outcome as Cell)]];
}

const plain = (answer: Answer): unknown =>
  answer.map((row) =>
    row.map((cell) => (typeof cell === "object" ? { code: cell.code, message: cell.message } : cell)),
  );

const BAD: readonly Cell[] = [
  null,
  "",
  " ",
  "text",
  "12",
  "1,5",
  true,
  false,
  NaN,
  Infinity,
  -0,
  1e308,
  -1e308,
  "#N/A",
];

test("bad input in any place gives a value or an error with a sentence", () => {
  let errors = 0;
  for (const one of allFunctions) {
    const sample = exampleCall(one.examples[0]!.formula).args;
    one.parameters.forEach((_, place) => {
      for (const bad of BAD) {
        for (const given of [bad, [[bad], [bad]], [[bad, bad]]] as Argument[]) {
          const args = one.parameters.map((__, index) => (index === place ? given : (sample[index] ?? null)));
          const answer = call(one.name, args);
          const width = answer[0]!.length;
          expect(answer.every((row) => row.length === width && width > 0)).toBe(true);
          for (const cell of answer.flat()) {
            if (typeof cell !== "object") continue;
            errors += 1;
            expect(["#VALUE!", "#N/A"]).toContain(cell.code);
            expect(cell.message).toMatch(/^\S.{10,}\.$/s);
          }
        }
      }
    });
  }
  expect(errors).toBeGreaterThan(1000);
});

test("a fault in one row stays in its cell", () => {
  const answer = call("AZIMUTH", [[[35], [91], [35]], [[-100], [-100], [""]], [[-90]]]);
  expect(typeof answer[0]![0]).toBe("number");
  expect(answer[1]![0]).toMatchObject({
    code: "#VALUE!",
    message: expect.stringMatching(/91.*-?90/) as string,
  });
  expect(answer[2]![0]).toMatchObject({
    code: "#VALUE!",
    message: expect.stringMatching(/longitude/) as string,
  });
});

describe("error cells among the arguments", () => {
  const azimuth = (cell: unknown): Answer =>
    excel.associated.get("AZIMUTH")!([[cell], [35]], [[-100]], [[-90]]) as Answer;

  test("an error of another formula is named, and its neighbours are answered", () => {
    const answer = azimuth({ code: "#DIV/0!" });
    expect(answer[0]![0]).toMatchObject({ message: expect.stringMatching(/#DIV\/0!/) as string });
    expect(typeof answer[1]![0]).toBe("number");
  });
  test("a fault of ours passes on with its own sentence", () => {
    expect(plain(azimuth({ code: "#N/A", message: "The slot lies below the horizon." }))).toMatchObject([
      [{ code: "#N/A", message: "The slot lies below the horizon." }],
      [expect.any(Number)],
    ]);
  });
  test("an error as a data type", () => {
    expect(azimuth({ type: "Error", basicType: "Error", basicValue: "#REF!" })[0]![0]).toMatchObject({
      message: expect.stringMatching(/#REF!/) as string,
    });
  });
});

test("omitted arguments arrive as null or not at all", () => {
  const loss = excel.associated.get("CABLELOSS")!;
  const { examples } = allFunctions.find(({ name }) => name === "CABLELOSS")!;
  const args = exampleCall(examples[0]!.formula).args.map((one) => (Array.isArray(one) ? one : [[one]]));
  const withNulls = loss(...args, null, null, {});
  expect(plain(withNulls as Answer)).toEqual(plain(loss(...args) as Answer));
  expect(plain(withNulls as Answer)).toEqual(plain(loss(...args, undefined) as Answer));
});

test("every answer is the dispatcher's, as a matrix", () => {
  for (const one of allFunctions) {
    for (const { formula } of one.examples) {
      const { args } = exampleCall(formula);
      expect(plain(call(one.name, args))).toEqual(asExcel(one.call(args)));
    }
  }
});
