/**
 * Distributions drawn from a seed, worked by the functions and by the reference program of the tests
 * (tests/support/reference/distribution), every cell of every function. A few in the usual run, 400 in `npm run prove`;
 * JOB_SEED=17 runs that one alone.
 */
import { isFault } from "../../src/engine/faults";
import { allFunctions } from "../../src/functions/all";
import { drawnDistribution } from "../support/drawnDistribution";
import { referenceOf, type Reference } from "../support/reference/distribution";
import { blankOf, NEAR, rangesOf, RESULTS, type Column } from "../support/reference/distribution/columns";
import type { Answer, Tables } from "../support/reference/distribution/tables";
import { plain } from "../support/reference/job";
import { tries } from "../support/tries";

const seeds =
  process.env.JOB_SEED === undefined
    ? Array.from({ length: tries(30, 80, 400) }, (_, seed) => seed)
    : [Number(process.env.JOB_SEED)];

/** How often each column said each word, or gave a figure; and the greatest difference of each unit. */
const said = new Map<string, Map<string, number>>();
const worst: Record<string, number> = { count: 0, dB: 0, V: 0, A: 0 };

function answersOf(name: string, tables: Tables): readonly (readonly unknown[])[] {
  const result = allFunctions.find((one) => one.name === name)!.call(rangesOf(tables));
  if (isFault(result)) throw new Error(`${name}: ${result.message}`);
  return result as readonly (readonly unknown[])[];
}

const isNear = (got: Answer, wanted: Answer, column: keyof typeof NEAR): boolean => {
  if (typeof got !== "number" || typeof wanted !== "number") return got === wanted;
  const off = Math.abs(got - wanted);
  if (off <= NEAR[column]) worst[column] = Math.max(worst[column]!, off);
  return off <= NEAR[column];
};

/** What a port and a list of bands say is the same as a number and as a text. */
const asWord = (cell: Answer): string | null => (cell === null ? null : String(cell));

/** Of several outlets that leave a head unit the same any may be named: by its volts with that one on alone. */
function isAsLow(got: Answer, wanted: Answer, tables: Tables, { OUTLETVOLTS }: Reference): boolean {
  const [here, there] = [got, wanted].map((name) => {
    const row = tables.outlets.findIndex(({ outlet }) => name !== null && plain(outlet) === plain(name!));
    return OUTLETVOLTS[row]?.[0] ?? null;
  });
  return isNear(here!, there!, "V");
}

function isSame(got: Answer, wanted: Answer, column: Exclude<Column, "name">): boolean {
  if (column === "said") return (got === null) === (wanted === null);
  return column === "word" ? asWord(got) === asWord(wanted) : isNear(got, wanted, column);
}

/** A table without rows is handed over as one blank row. */
const atLeastARow = (reference: Reference): Omit<Reference, "NEEDED"> =>
  Object.fromEntries(
    (Object.keys(RESULTS) as (keyof typeof RESULTS)[]).map((name) => [
      name,
      reference[name].length > 0 ? reference[name] : [RESULTS[name].map(() => null)],
    ]),
  ) as unknown as Omit<Reference, "NEEDED">;

function differences(tables: Tables): string[] {
  const filled = referenceOf(tables);
  const wanted = { ...filled, ...atLeastARow(filled) };
  const rows = (Object.keys(RESULTS) as (keyof typeof RESULTS)[]).flatMap((name) => {
    const got = answersOf(name, tables);
    if (got.length !== wanted[name].length)
      return [`${name} has ${got.length} rows, not ${wanted[name].length}`];
    return wanted[name].flatMap((row, index) =>
      RESULTS[name].flatMap((column, place) => {
        const [here, there] = [blankOf(got[index]![place]), row[place] ?? null];
        if (column === "word") {
          const words = said.get(`${name} ${place + 1}`) ?? new Map<string, number>();
          words.set(String(there), (words.get(String(there)) ?? 0) + 1);
          said.set(`${name} ${place + 1}`, words);
        }
        const about = isFault(here) ? `fault: ${here.message}` : JSON.stringify(here);
        const isRight =
          column === "name" ? isAsLow(here, there, tables, filled) : isSame(here, there, column);
        return isRight
          ? []
          : [`${name} row ${index + 1} column ${place + 1}: ${about}, reference ${JSON.stringify(there)}`];
      }),
    );
  });
  const keyed = (kind: unknown, what: unknown): string => `${String(kind)} ${String(what).toLowerCase()}`;
  const needed = new Map(
    answersOf("NEEDED", tables).map(([kind, what, pieces]) => [keyed(kind, what), Number(pieces)]),
  );
  const due = new Map(wanted.NEEDED.map(({ kind, name, quantity }) => [keyed(kind, name), quantity]));
  const counts = [...new Set([...needed.keys(), ...due.keys()])].flatMap((key) =>
    Math.abs((needed.get(key) ?? NaN) - (due.get(key) ?? NaN)) <= 1e-6
      ? []
      : [`NEEDED ${key}: ${needed.get(key)}, reference ${due.get(key)}`],
  );
  return [...rows, ...counts];
}

test.each(seeds)("the distribution of seed %i", (seed) => {
  const { tables, slips } = drawnDistribution(seed);
  expect({ slips, differences: differences(tables) }).toEqual({ slips, differences: [] });
});

/** So many that every word of every check is met. */
const ENOUGH = 400;
const WORDS: Readonly<Record<string, readonly string[]>> = {
  "OUTLETCHECKS 1": ["ok", "bad"],
  "OUTLETCHECKS 2": ["ok", "low", "high"],
  "OUTLETCHECKS 3": ["ok", "steep"],
  "OUTLETCHECKS 4": ["ok", "low", "null"],
  "OUTLETCHECKS 5": ["ok", "dead", "not judged", "null"],
  "OUTLETCHECKS 6": ["ok", "bad"],
  "OUTLETCHECKS 7": ["ok", "too many"],
  "OUTLETCHECKS 8": ["ok", "high"],
  "OUTLETCHECKS 9": ["ok", "left open", "passes power"],
  "DEVICECHECKS 3": ["ok", "bad"],
  "DEVICECHECKS 4": ["ok", "low", "null"],
  "DEVICECHECKS 5": ["ok", "high"],
  "DEVICECHECKS 6": ["ok", "high", "null"],
  "DEVICECHECKS 7": ["ok", "left open", "passes power", "null"],
  "HEADCHECKS 1": ["ok", "bad"],
  "HEADCHECKS 2": ["ok", "low"],
  "HEADCHECKS 3": ["ok", "high"],
  "HEADCHECKS 4": ["ok", "low", "null"],
  "HEADCHECKS 5": ["ok", "low", "null"],
  "HEADCHECKS 6": ["ok", "unused", "null"],
};
if (seeds.length >= ENOUGH)
  test("every word of every check is drawn", () => {
    const missing = Object.entries(WORDS).flatMap(([column, words]) =>
      words.filter((word) => !said.get(column)?.has(word)).map((word) => `${column} ${word}`),
    );
    expect(missing).toEqual([]);
  });

afterAll(() => {
  const units = Object.entries(worst).map(([unit, off]) => `${off.toExponential(1)} ${unit}`);
  process.stdout.write(`  the functions against the reference program, worst: ${units.join(", ")}\n`);
});
