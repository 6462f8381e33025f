/**
 * A sheet of values without the rows that were made ready for filling and stayed
 * empty, and without rows of units in which no column has one: on paper they
 * would be white space between the lines of a list. What prints ends with the
 * last row that shows something: the thin row that closes a block can fall on a
 * page of its own, which is then blank.
 */
import { address, parseAddress, parseRange, rangeOf, type Zone } from "../../../formula/address";
import type { BookName, BookSheet } from "../../../workbooks/book";

export interface SheetWithoutEmptyRows {
  readonly sheet: BookSheet;
  /** The names on it, where they lie now. */
  readonly names: readonly BookName[];
}

/**
 * @param sheet no cell of it calculates
 * @param names the names that lie on it; the first and last row of each stay
 * @param byHand blocks whose empty rows are written into on paper: they stay
 */
export function withoutEmptyRows(
  sheet: BookSheet,
  names: readonly BookName[],
  byHand: readonly string[] = [],
): SheetWithoutEmptyRows {
  const isByHand = ({ name }: BookName): boolean => byHand.some((block) => name.startsWith(`${block}_`));
  const shown = shownRows(sheet);
  const dropped = emptyRows(
    shown,
    names.filter((one) => !isByHand(one)),
  );
  const written = names.filter(isByHand).map(({ range }) => parseRange(range)?.bottom ?? 0);
  const last = sheet.pictures ? Infinity : [...shown, ...written].reduce((a, b) => Math.max(a, b), 0);
  const moved = new Map<number, number>();
  const rows = Math.max(sheet.rowCount, lastRow(sheet));
  for (let row = 0, next = 0; row <= rows; row++) {
    moved.set(row, next);
    if (!dropped.has(row)) next++;
  }
  const to = (row: number): number => moved.get(row) ?? row - dropped.size;
  const range = (text: string): string => {
    const zone = parseRange(text);
    return zone ? rangeOf({ ...zone, top: to(zone.top), bottom: to(zone.bottom) }) : text;
  };
  const byAddress = <T>(record: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(
      Object.entries(record).flatMap(([at, one]) => {
        const place = parseAddress(at)!;
        return dropped.has(place.row) ? [] : [[address(to(place.row), place.column), one]];
      }),
    );
  const { print } = sheet;
  return {
    sheet: {
      ...sheet,
      cells: byAddress(sheet.cells),
      results: byAddress(sheet.results),
      rowHeights: Object.fromEntries(
        Object.entries(sheet.rowHeights).flatMap(([row, height]) =>
          dropped.has(Number(row)) ? [] : [[to(Number(row)), height]],
        ),
      ),
      rowCount: to(sheet.rowCount),
      ...(sheet.merges && { merges: sheet.merges.map(range) }),
      print: print && {
        ...print,
        ...(print.area && { area: endingAt(range(print.area), to(last)) }),
        ...(print.repeatFrom && { repeatFrom: to(print.repeatFrom - 1) + 1 }),
        // The last repeated row may be the row of units that has gone.
        ...(print.repeatTo && { repeatTo: to(print.repeatTo) }),
        ...(print.breaks && { breaks: print.breaks.map(to) }),
      },
    },
    names: names.map((name) => ({ ...name, range: range(name.range) })),
  };
}

function endingAt(area: string, row: number): string {
  const zone = parseRange(area);
  return zone && zone.bottom > row ? rangeOf({ ...zone, bottom: Math.max(zone.top, row) }) : area;
}

function shownRows(sheet: BookSheet): Set<number> {
  const shown = new Set<number>();
  for (const [at, { value }] of Object.entries(sheet.cells)) {
    if (value !== undefined && value !== "") shown.add(parseAddress(at)!.row);
  }
  for (const [at, result] of Object.entries(sheet.results)) {
    if (result !== "") shown.add(parseAddress(at)!.row);
  }
  return shown;
}

function emptyRows(shown: ReadonlySet<number>, names: readonly BookName[]): Set<number> {
  const zones = names
    .map(({ range }) => parseRange(range))
    .filter((zone): zone is Zone => zone !== undefined);
  const ends = new Set(zones.flatMap(({ top, bottom }) => [top, bottom]));
  const empty = new Set<number>();
  for (const { top, bottom } of zones) {
    if (bottom - top < 2) continue;
    // From the row of units above a block to the last one in it.
    for (let row = Math.max(0, top - 1); row < bottom; row++) {
      if (!shown.has(row) && !ends.has(row)) empty.add(row);
    }
  }
  return empty;
}

function lastRow({ cells }: BookSheet): number {
  let last = 0;
  for (const at of Object.keys(cells)) last = Math.max(last, parseAddress(at)?.row ?? 0);
  return last;
}
