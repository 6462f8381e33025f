/**
 * Where a workbook should hold which formula: the template laid out afresh,
 * moved to where the workbook's names lie now. Rows that a person inserted move
 * the names, so the names say how far each cell was moved.
 */
import { parseAddress, parseRange, type Place, type Zone } from "../formula/address";
import type { Corner } from "../formula/reference";
import { withReferences } from "../formula/withReferences";
import type { Book } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import { remembered } from "../workbooks/remembered";
import { blankBook } from "./blankBook";

export interface ExpectedFormula {
  readonly sheet: string;
  readonly place: Place;
  readonly formula: string;
  /** The cells that its results fill. */
  readonly fills: Zone;
}

export interface Expected {
  readonly formulas: readonly ExpectedFormula[];
  /** Names of the template that the workbook lacks. */
  readonly missingNames: readonly string[];
}

export const expectedFormulas = (book: Book, definition: WorkbookDefinition): Expected =>
  remembered(book, `formulas of ${definition.id} ${definition.version}`, () => movedAlong(book, definition));

function movedAlong(book: Book, definition: WorkbookDefinition): Expected {
  const fresh = blankBook(definition);
  const now = new Map(book.names.map((one) => [one.name, one]));
  const formulas: ExpectedFormula[] = [];
  for (const sheet of fresh.sheets) {
    const own = fresh.names.filter((one) => one.sheet === sheet.name);
    const found = own.flatMap(({ name, range }) => {
      const here = now.get(name);
      const from = parseRange(range);
      const to = here && parseRange(here.range);
      return here && from && to ? [{ sheet: here.sheet, from, to }] : [];
    });
    const rows = shifts(
      found.flatMap(({ from, to }) => [
        [from.top, to.top],
        [from.bottom, to.bottom],
      ]),
    );
    const columns = shifts(
      found.flatMap(({ from, to }) => [
        [from.left, to.left],
        [from.right, to.right],
      ]),
    );
    const name = found[0]?.sheet ?? sheet.name;
    for (const [at, { formula, spill }] of Object.entries(sheet.cells)) {
      const place = formula === undefined ? undefined : parseAddress(at);
      if (formula === undefined || !place) continue;
      const top = rows(place.row);
      const left = columns(place.column);
      const { rows: high, columns: wide } = spill ?? { rows: 1, columns: 1 };
      formulas.push({
        sheet: name,
        place: { row: top, column: left },
        formula: moved(formula, rows, columns),
        fills: {
          top,
          left,
          bottom: rows(place.row + high - 1),
          right: columns(place.column + wide - 1),
        },
      });
    }
  }
  return {
    formulas,
    missingNames: fresh.names.filter(({ name }) => !now.has(name)).map(({ name }) => name),
  };
}

type Shift = (index: number) => number;

/** Everything from one known row (or column) up to the next is moved as far as the known one. */
function shifts(pairs: readonly (readonly number[])[]): Shift {
  const known = [...pairs].sort((a, b) => a[0]! - b[0]!);
  return (index) => {
    const last = known.findLast(([from]) => from! <= index);
    return last ? index + last[1]! - last[0]! : index;
  };
}

/** The formula with its own sheet's addresses moved as its cells were. */
const moved = (formula: string, rows: Shift, columns: Shift): string =>
  withReferences(formula, (cells) => {
    if (cells.sheet !== undefined) return cells;
    const shifted = ({ row, column, ...marks }: Corner): Corner => ({
      ...marks,
      ...(row !== undefined && { row: rows(row) }),
      ...(column !== undefined && { column: columns(column) }),
    });
    return { from: shifted(cells.from), ...(cells.to && { to: shifted(cells.to) }) };
  });
