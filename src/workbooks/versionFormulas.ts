/**
 * The names that each earlier version of a template had, each with the formulas
 * that ever stood at it in that version. So a formula of a person's own is told
 * from one that the template has only changed since. `npm run generate` adds a
 * version when it is closed; the first ones are from this repository's history.
 */
import { isInside, parseAddress, parseRange } from "../formula/address";
import type { Book } from "./book";
import kept from "./versionFormulas.json";
import { formulaMark } from "./formulaMark";
import { todaysName } from "./renamedNames";

/** By template, version and name: the marks of its formulas, with blanks between; empty for what is no formula. */
export type FormulaRecord = Readonly<
  Record<string, Readonly<Record<string, Readonly<Record<string, string>>>>>
>;

/** By name, its own and today's. */
export type VersionFormulas = ReadonlyMap<string, ReadonlySet<string>>;

export const formulaRecord: FormulaRecord = kept;

/** @returns undefined for a version that is not kept */
export function versionFormulas(template: string, version: string): VersionFormulas | undefined {
  const names = formulaRecord[template]?.[version];
  return (
    names &&
    new Map(
      Object.entries(names).flatMap(([name, marks]) => {
        const of = new Set(marks.split(" ").filter((one) => one !== ""));
        return [name, todaysName(name) ?? name].map((either) => [either, of] as const);
      }),
    )
  );
}

/** What a book adds to the record: each of its names with the marks of the formulas in its cells. */
export function marksIn(book: Book): Record<string, string> {
  const sheets = new Map(
    book.sheets.map(({ name, cells }) => [
      name,
      Object.entries(cells).flatMap(([at, { formula }]) =>
        formula === undefined ? [] : [{ ...parseAddress(at)!, mark: formulaMark(formula) }],
      ),
    ]),
  );
  return Object.fromEntries(
    book.names.map(({ name, sheet, range }) => {
      const zone = parseRange(range);
      const inside = (sheets.get(sheet) ?? []).filter(
        ({ row, column }) => zone && isInside(zone, row, column),
      );
      return [name, [...new Set(inside.map(({ mark }) => mark))].sort().join(" ")];
    }),
  );
}
