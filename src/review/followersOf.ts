/** Which cells hang on given ones, by the formulas between. */
import { parseAddress, type Place } from "../formula/address";
import { AreasFound } from "../formula/areasFound";
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
  const readers = new AreasFound(formulas.flatMap((one) => one.reads.map((read) => [read, one] as const)));
  return (from) => followersAmong(formulas, readers, from);
}

function followersAmong(
  formulas: readonly Filled[],
  readers: AreasFound<Filled>,
  from: readonly FindingPlace[],
): Follows {
  const found = new Set<Filled>();
  // The named ones with all that they fill, or should.
  const reached = from.map(({ sheet, cell }): Area => {
    const area = filledArea(sheet, cell);
    return formulas.find((one) => meet(one.area, area))?.area ?? area;
  });
  const take = readers.taker();
  // It grows while it is gone through.
  for (const area of reached)
    for (const reader of take(area)) {
      if (found.has(reader)) continue;
      found.add(reader);
      reached.push(reader.area);
    }
  const places = new AreasFound(reached.map((area) => [area, undefined] as const));
  return (sheet, { row, column }) =>
    places.any({ sheet, zone: { top: row, left: column, bottom: row, right: column } });
}
