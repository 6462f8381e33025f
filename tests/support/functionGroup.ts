/** What every group of sheet functions is held to: its examples, its wording, and bad input in any place. */
import { isFault } from "../../src/engine/faults";
import { allFunctions } from "../../src/functions/all";
import type { Argument, Cell, Matrix } from "../../src/functions/core/cells";
import type { Group, SheetFunction } from "../../src/functions/core/declare";
import { exampleCall } from "../../src/help/exampleCall";
import { withBlanksAs } from "./blanks";

/** Calls a sheet function by its name; a blank cell in a range is the same to it as null and as an empty text. */
export function call(name: string, ...args: Argument[]): Cell | Matrix {
  const found = allFunctions.find((one) => one.name === name);
  if (!found) throw new Error(`no function ${name}`);
  const result = found.call(args);
  expect(found.call(args.map((arg) => withBlanksAs("", arg)))).toEqual(result);
  return result;
}

/** The sentence of a fault, in the first cell where the result is a matrix. */
export function sentence(value: Cell | Matrix): string {
  const cell = Array.isArray(value) ? (value as Matrix)[0]![0] : value;
  if (!isFault(cell)) throw new Error(`a fault was expected, not ${JSON.stringify(value)}`);
  return cell.message;
}

/** Values that no argument expects; with those that one does expect, each must end in a value or a sentence. */
const BAD: readonly Argument[] = [
  null,
  "",
  "  ",
  "text",
  "12",
  "1,5",
  true,
  NaN,
  Infinity,
  -0,
  1e308,
  -1e308,
  [[]],
  [["a", null, 1e308]],
  [[1], ["x"], [null]],
];

const isSound = (cell: unknown): boolean =>
  isFault(cell)
    ? /^.{20,400}$/s.test(cell.message) && !cell.message.includes("mistake in Rigsheet")
    : typeof cell === "string" ||
      typeof cell === "boolean" ||
      (typeof cell === "number" && Number.isFinite(cell) && !Object.is(cell, -0));

export function describeGroup(group: Group): void {
  const functions = allFunctions.filter((one) => one.group === group);
  const examples = functions.flatMap((one) => one.examples.map((example) => ({ one, example })));
  const rows = (value: unknown): unknown[][] => (Array.isArray(value) ? value : [[value]]);

  describe("documented examples", () => {
    test("every function has one", () => {
      expect(functions.length).toBeGreaterThan(0);
      expect(functions.filter((one) => one.examples.length === 0).map(({ name }) => name)).toEqual([]);
    });

    test.each(examples.map((row) => [row.example.formula, row] as const))(
      "%s",
      (formula, { one, example }) => {
        const { name, args } = exampleCall(formula);
        expect(name).toBe(one.name);
        const expected = rows(example.result);
        const actual = rows(one.call(args));
        expect(actual.map((row) => row.length)).toEqual(expected.map((row) => row.length));
        expected.forEach((row, i) =>
          row.forEach((value, j) => {
            const got = actual[i]![j];
            if (typeof value !== "number") return expect(got).toBe(value);
            expect(typeof got).toBe("number");
            expect(Math.abs((got as number) - value)).toBeLessThanOrEqual(example.tolerance ?? 0);
          }),
        );
      },
    );
  });

  describe("bad input in any place gives a value or a sentence, never an exception", () => {
    test.each(functions.map((one) => [one.name, one] as const))("%s", (_name, one: SheetFunction) => {
      const { args } = exampleCall(one.examples[0]!.formula);
      one.parameters.forEach((_, place) => {
        for (const bad of BAD) {
          const given = one.parameters.map((_, index) => (index === place ? bad : (args[index] ?? null)));
          for (const row of rows(one.call(given))) {
            for (const cell of row) {
              if (!isSound(cell)) {
                throw new Error(
                  `${one.name}, argument ${place + 1} ${JSON.stringify(bad)}: ${JSON.stringify(cell)}`,
                );
              }
            }
          }
        }
      });
      // One that takes any number has too many only where it hands them on.
      const takesAny = one.parameters.at(-1)?.shape === "repeated" && one.name !== "SHOWWORK";
      if (takesAny) return;
      expect(sentence(one.call([...args, ...one.parameters.map(() => null), 1]))).toContain("arguments");
    });
  });

  test("see-also names exist", () => {
    const known = new Set(allFunctions.map(({ name }) => name));
    expect(functions.flatMap(({ seeAlso }) => seeAlso).filter((name) => !known.has(name))).toEqual([]);
  });
}
