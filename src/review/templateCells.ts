/** The cells of a workbook beside those of its template: each with the look that the template gives it. */
import { address, parseAddress, parseRange, type Place } from "../formula/address";
import type { Book, BookCell, BookResult, BookSheet, Look } from "../workbooks/book";
import type { SheetDefinition, WorkbookDefinition } from "../workbooks/definition";
import { DECIMALS_FIELD, withMoneyShown } from "../workbooks/moneyShown";
import { namedValue } from "../workbooks/named";
import { blankBook } from "./blankBook";

export interface TemplateCell {
  readonly at: string;
  readonly place: Place;
  readonly value: BookResult | undefined;
  readonly cell: BookCell | undefined;
  readonly look: Look;
  /** The template's cell there; undefined where it has none. */
  readonly own: BookCell | undefined;
  readonly ownPlace: Place;
  readonly ownLook: Look;
}

export interface TemplateSheet {
  readonly definition: SheetDefinition;
  readonly sheet: BookSheet;
  readonly fresh: BookSheet;
  /** Of all cells that hold something, in the order of the file. */
  readonly cells: readonly TemplateCell[];
  /** Where a cell of the sheet lies in the template. */
  readonly ownPlaceOf: (place: Place) => Place;
}

const known = new WeakMap<Book, readonly TemplateSheet[]>();
const PLAIN: Look = {};

/** @param book with the template's names in their places */
export function templateSheets(book: Book, definition: WorkbookDefinition): readonly TemplateSheet[] {
  const before = known.get(book);
  if (before) return before;
  const blank = blankBook(definition);
  const looks = withMoneyShown(blank.looks, namedValue(book, DECIMALS_FIELD));
  const now = new Map(book.names.map((one) => [one.name, one]));
  const found = definition.sheets.flatMap((one): TemplateSheet[] => {
    const fresh = blank.sheets.find(({ name }) => name === one.name)!;
    const zones = blank.names
      .filter(({ sheet }) => sheet === one.name)
      .flatMap(({ name, range }) => {
        const here = now.get(name);
        const from = parseRange(range);
        const to = here && parseRange(here.range);
        return from && to ? [{ from, to, sheet: here.sheet }] : [];
      });
    const sheet = book.sheets.find(({ name }) => name === (zones[0]?.sheet ?? one.name));
    if (!sheet) return [];
    const rows = backwards(
      zones.flatMap(
        ({ from, to }) =>
          [
            [from.top, to.top],
            [from.bottom, to.bottom],
          ] as const,
      ),
    );
    const columns = backwards(
      zones.flatMap(
        ({ from, to }) =>
          [
            [from.left, to.left],
            [from.right, to.right],
          ] as const,
      ),
    );
    const ownPlaceOf = ({ row, column }: Place): Place => ({ row: rows(row), column: columns(column) });
    let cells: readonly TemplateCell[] | undefined;
    return [
      {
        definition: one,
        sheet,
        fresh,
        ownPlaceOf,
        get cells() {
          return (cells ??= cellsOf(sheet));
        },
      },
    ];

    function cellsOf({ cells: all, results }: BookSheet): TemplateCell[] {
      const list: TemplateCell[] = [];
      const add = (at: string): void => {
        const cell = all[at];
        const value = results[at] ?? cell?.value;
        if (value === undefined && cell?.formula === undefined) return;
        const place = parseAddress(at)!;
        const ownPlace = ownPlaceOf(place);
        const own = fresh.cells[address(ownPlace.row, ownPlace.column)];
        list.push({
          at,
          place,
          value,
          cell,
          look: (cell?.look === undefined ? undefined : book.looks[cell.look]) ?? PLAIN,
          own,
          ownPlace,
          ownLook: (own?.look === undefined ? undefined : looks[own.look]) ?? PLAIN,
        });
      };
      for (const at of Object.keys(all)) add(at);
      for (const at of Object.keys(results)) if (!all[at]) add(at);
      return list;
    }
  });
  known.set(book, found);
  return found;
}

/** From where a row is to where it was laid out; what was inserted takes the place of the row before. */
function backwards(pairs: readonly (readonly [from: number, to: number])[]): (index: number) => number {
  const sorted = [...new Map(pairs.map(([from, to]) => [to, from]))].sort((a, b) => a[0] - b[0]);
  const known: number[] = [];
  return (index) => (known[index] ??= found(index));

  function found(index: number): number {
    let before: (typeof sorted)[number] | undefined;
    let after: (typeof sorted)[number] | undefined;
    for (let low = 0, high = sorted.length; low < high;) {
      const middle = (low + high) >> 1;
      if (sorted[middle]![0] <= index) {
        before = sorted[middle];
        low = middle + 1;
      } else {
        after = sorted[middle];
        high = middle;
      }
    }
    if (!before) return index;
    const moved = before[1] + index - before[0];
    return after && after[1] > before[1] ? Math.min(moved, after[1] - 1) : moved;
  }
}

/** What the customer gets to see. */
export const isForCustomer = ({ definition }: Pick<TemplateSheet, "definition">): boolean =>
  definition.kind === "print" && CUSTOMERS.has(definition.name);

const CUSTOMERS: ReadonlySet<string> = new Set(["Quote"]);
