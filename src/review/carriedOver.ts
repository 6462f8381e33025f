/**
 * A workbook of an earlier version, as today's template would have it: what a
 * person filled in is put into a new workbook and computed there, and what that
 * comes to is shown in the old one's own cells. So its inputs are judged by
 * today's rules, and nothing is held against it that was otherwise then.
 */
import { address, parseRange, type Zone } from "../formula/address";
import type { Book, BookName, BookResult, BookSheet } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import { layOut } from "../workbooks/layOut";
import { todaysInputs } from "../workbooks/todaysInputs";

export interface CarriedOver {
  /** Today's template with the old inputs, computed. */
  readonly fresh: Book;
  /** The old workbook, in whose calculated cells stands what today's template comes to; where it has no such cell, nothing. */
  readonly shown: Book;
}

export function carriedOver(
  old: Book,
  definition: WorkbookDefinition,
  compute: (book: Book) => Book,
): CarriedOver {
  const fresh = compute(layOut(definition, todaysInputs(definition, old).inputs));
  const results = new Map(old.sheets.map(({ name }) => [name, {} as Record<string, BookResult>]));
  for (const { from, to } of namesOfBoth(fresh, old)) {
    const here = results.get(to.sheet);
    if (!here) continue;
    for (const [cell, at] of pairedCells(from.zone, to.zone)) {
      const result = from.results[cell];
      if (result !== undefined) here[at] = result;
    }
  }
  return {
    fresh,
    shown: { ...old, sheets: old.sheets.map((sheet) => ({ ...sheet, results: results.get(sheet.name)! })) },
  };
}

interface Named {
  readonly sheet: string;
  readonly zone: Zone;
  readonly results: BookSheet["results"];
}

/**
 * The names that two books share, with where each has it. A name over several columns in one and another number of them
 * in the other is passed over: its columns are others now, and each has a name of its own.
 */
export function namesOfBoth(one: Book, other: Book): { name: string; from: Named; to: Named }[] {
  const others = new Map(other.names.map((name) => [name.name, name]));
  return one.names.flatMap((name) => {
    const match = others.get(name.name);
    const from = named(one, name);
    const to = match && named(other, match);
    return from && to && wide(from.zone) === wide(to.zone) ? [{ name: name.name, from, to }] : [];
  });
}

const wide = ({ left, right }: Zone): number => right - left;

function named(book: Book, { sheet: on, range }: BookName): Named | undefined {
  const zone = parseRange(range);
  const sheet = book.sheets.find(({ name }) => name === on);
  return zone && sheet ? { sheet: on, zone, results: sheet.results } : undefined;
}

/** The cells of two ranges, from their upper left corners as far as both reach. */
export function* pairedCells(one: Zone, other: Zone): Generator<readonly [string, string]> {
  const rows = Math.min(one.bottom - one.top, other.bottom - other.top);
  const columns = Math.min(one.right - one.left, other.right - other.left);
  for (let row = 0; row <= rows; row++)
    for (let column = 0; column <= columns; column++)
      yield [
        address(one.top + row, one.left + column),
        address(other.top + row, other.left + column),
      ] as const;
}
