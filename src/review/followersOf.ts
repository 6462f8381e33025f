/** Which cells hang on given ones, by the formulas between. */
import { isInside, parseAddress, type Place } from "../formula/address";
import { meet, readAreas, type Area } from "../formula/readAreas";
import type { Book } from "../workbooks/book";
import type { FindingPlace } from "./finding";

interface Filled {
  readonly area: Area;
  readonly reads: readonly Area[];
}

/** The cells that a formula fills: its own where it has no reach. */
export function filledArea(sheet: string, cell: string, { rows, columns } = { rows: 1, columns: 1 }): Area {
  const { row, column } = parseAddress(cell)!;
  return { sheet, zone: { top: row, left: column, bottom: row + rows - 1, right: column + columns - 1 } };
}

export type Follows = (sheet: string, place: Place) => boolean;

/** @returns whether a cell is one of those, is filled by its formula, or follows from it */
export const followersOf = (book: Book, from: readonly FindingPlace[]): Follows => followersIn(book)(from);

/** To ask more than once of one book. */
export function followersIn(book: Book): (from: readonly FindingPlace[]) => Follows {
  const formulas = book.sheets.flatMap(({ name: sheet, cells }) =>
    Object.entries(cells).flatMap(([at, { formula, spill }]): Filled[] => {
      if (formula === undefined) return [];
      return [{ area: filledArea(sheet, at, spill), reads: readAreas(book, sheet, formula) }];
    }),
  );
  return (from) => followersAmong(formulas, from);
}

function followersAmong(formulas: readonly Filled[], from: readonly FindingPlace[]): Follows {
  const reached: Area[] = [];
  const left = new Set(formulas);
  let next = from.flatMap(({ sheet, cell }): Area[] => {
    const { row, column } = parseAddress(cell)!;
    return [{ sheet, zone: { top: row, left: column, bottom: row, right: column } }];
  });
  // The named ones with all that they fill, or should.
  next = next.map((area) => formulas.find((one) => meet(one.area, area))?.area ?? area);
  while (next.length > 0) {
    reached.push(...next);
    const found = [...left].filter(({ reads }) =>
      reads.some((read) => next.some((area) => meet(read, area))),
    );
    for (const one of found) left.delete(one);
    next = found.map(({ area }) => area);
  }
  return (sheet, { row, column }) =>
    reached.some((area) => area.sheet === sheet && isInside(area.zone, row, column));
}
