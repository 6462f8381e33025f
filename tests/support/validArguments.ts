/** Random arguments that a function accepts, made from what its parameters declare. */
import fc from "fast-check";
import type { Argument, Cell } from "../../src/functions/core/cells";
import type { SheetFunction } from "../../src/functions/core/declare";
import type { Parameter } from "../../src/functions/core/parameters";
import { exampleCall } from "../../src/help/exampleCall";

/** Beyond these no argument without limits of its own is tried. */
const WIDEST = 1e6;

const TEXTS: Readonly<Record<string, readonly string[]>> = {
  cable: ["series 59", "series 6", "series 6, copper", "Series 11, copper-clad steel"],
  receivers: ["receiver", "recorder, 2 tuners", "Recorder, 4 tuners", "receiver, 3 tuners"],
};

/** Arguments that only mean something together: readings of one level, a step apart. */
const TOGETHER: Readonly<Record<string, Readonly<Record<string, readonly [number, number]>>>> = {
  EQUALDROPS: { plus: [54, 60], here: [58, 62], minus: [54, 60] },
};

function numberFor({ limits }: Parameter<unknown>): fc.Arbitrary<number> {
  const min = limits?.min ?? -WIDEST;
  const max = limits?.max ?? WIDEST;
  if (limits?.integer) return fc.integer({ min: limits.aboveMin ? min + 1 : min, max });
  const even = fc.integer({ min: 1, max: 1_000_000 }).map((part) => min + ((max - min) * part) / 1_000_000);
  const everyday = fc.integer({ min: 1, max: 1000 }).map((part) => Math.min(max, min + part / 10));
  // Uneven on purpose: fast-check's doubles crowd about the ends and about 0.
  return fc.oneof(even, everyday, fc.double({ min, max, minExcluded: limits?.aboveMin, noNaN: true }));
}

/** One accepted cell of a parameter. */
function cellFor(parameter: Parameter<unknown>, seen: readonly Cell[]): fc.Arbitrary<Cell> {
  if (parameter.choices) return fc.constantFrom(...parameter.choices);
  switch (parameter.kind) {
    case "number":
      return numberFor(parameter);
    case "slot":
      return fc.oneof(
        fc.integer({ min: -1800, max: 1800 }).map((tenths) => tenths / 10),
        fc.constantFrom("97W", "13.5E", "180 E", "0W"),
      );
    case "date":
      return fc.oneof(
        fc.integer({ min: 45_700, max: 47_400 }),
        fc.constantFrom("2026-07-04", "2027-03-20 12:30", 2026.5),
      );
    default:
      return fc.constantFrom<Cell>(
        ...(TEXTS[parameter.name] ?? []),
        ...seen,
        ...(seen.length ? [] : ["a", "12"]),
      );
  }
}

/** What the examples of the function have in that place. */
function seenIn(one: SheetFunction, place: number): Argument[] {
  return one.examples.flatMap(({ formula }) => {
    const given = exampleCall(formula).args[place];
    return given === undefined || given === null ? [] : [given];
  });
}

const asColumn = (cells: readonly Cell[]): Argument => cells.map((cell) => [cell]);
const cellsOf = (args: readonly Argument[]): Cell[] =>
  args.flatMap((arg) => (Array.isArray(arg) ? (arg as Cell[][]).flat() : [arg as Cell]));

/**
 * @param rows how many rows the one-value-a-row arguments have
 * @returns for each parameter an argument: a column of `rows`, a list or table, or null when left out
 */
export function validArguments(one: SheetFunction, rows: number): fc.Arbitrary<Argument[]> {
  const listLength = fc.integer({ min: 1, max: 6 });
  return listLength.chain((length) =>
    fc.tuple(
      ...one.parameters.map((parameter, place): fc.Arbitrary<Argument> => {
        const seen = seenIn(one, place);
        const near = TOGETHER[one.name]?.[parameter.name];
        const cell = near
          ? fc.integer({ min: near[0] * 10, max: near[1] * 10 }).map((tenths): Cell => tenths / 10)
          : cellFor(parameter, cellsOf(seen));
        const column = (size: number): fc.Arbitrary<Argument> =>
          fc.array(cell, { minLength: size, maxLength: size }).map(asColumn);
        const orLeftOut = (given: fc.Arbitrary<Argument>) =>
          parameter.optional ? fc.option(given, { freq: 4 }) : given;
        if (parameter.shape === "each") return orLeftOut(column(rows));
        if (parameter.shape === "list") return orLeftOut(column(length));
        // A table has a meaning of its own for each function; its examples' tables stand for it.
        return fc.constantFrom(...(seen.length > 0 ? seen : [null]));
      }),
    ),
  );
}
