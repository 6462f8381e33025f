/**
 * Names of the template that lead elsewhere than the template's cells lie: found by their neighbours, which moved
 * together when rows came or went, and put back in a copy.
 */
import { address, parseRange, rangeOf, type Zone } from "../formula/address";
import type { Book, BookName, BookSheet } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import { blankBook } from "./blankBook";

export interface NameTrouble {
  readonly name: string;
  /** Where it belongs. */
  readonly meant: BookName;
  /** Where it leads now; undefined where it leads to no cells of the workbook. */
  readonly now?: BookName;
}

export interface PutBack {
  readonly troubles: readonly NameTrouble[];
  /** The same book where nothing was to be put back. */
  readonly book: Book;
}

/** More names than these are not lost by a slip of the hand: then sheets or rows are gone. */
const MOST_LOST = 5;

interface Here {
  readonly name: string;
  readonly from: Zone;
  readonly now?: { readonly sheet: string; readonly zone: Zone; readonly entry: BookName };
}

export function namesPutBack(book: Book, definition: WorkbookDefinition): PutBack {
  const blank = blankBook(definition);
  const now = new Map(book.names.map((one) => [one.name, one]));
  const troubles: NameTrouble[] = [];
  for (const fresh of blank.sheets) {
    const own = blank.names
      .filter(({ sheet }) => sheet === fresh.name)
      .flatMap(({ name, range }): Here[] => {
        const from = parseRange(range);
        const entry = now.get(name);
        const zone = entry && parseRange(entry.range);
        return from
          ? [{ name, from, ...(entry && zone && { now: { sheet: entry.sheet, zone, entry } }) }]
          : [];
      });
    troubles.push(...ofSheet(own, fresh, book));
  }
  const lost = troubles.filter((one) => !one.now);
  const meant = lost.length > MOST_LOST ? troubles.filter((one) => one.now) : troubles;
  if (meant.length === 0) return { troubles: [], book };
  const put = new Map(meant.map((one) => [one.name, one.meant]));
  const names = book.names.map((one) => put.get(one.name) ?? one);
  const added = meant.flatMap((one) => (one.now ? [] : [one.meant]));
  return { troubles: meant, book: { ...book, names: [...names, ...added] } };
}

function ofSheet(own: readonly Here[], fresh: BookSheet, book: Book): NameTrouble[] {
  const there = own.flatMap((one) => (one.now ? [one as Here & { now: NonNullable<Here["now"]> }] : []));
  const sheetName = mostly(there.map(({ now }) => now.sheet));
  const sheet = book.sheets.find(({ name }) => name === sheetName);
  if (sheetName === undefined || !sheet) return [];
  const here = there.filter(({ now }) => now.sheet === sheetName);
  const rows = moves(
    here.flatMap(({ from, now: { zone } }) => [
      { from: from.top, to: zone.top, ends: false },
      { from: from.bottom, to: zone.bottom, ends: from.bottom > from.top },
    ]),
  );
  const columns = moves(
    here.flatMap(({ from, now: { zone } }) => [
      { from: from.left, to: zone.left, ends: false },
      { from: from.right, to: zone.right, ends: from.right > from.left },
    ]),
  );
  return own.flatMap(({ name, from, now }): NameTrouble[] => {
    const zone: Zone = {
      top: rows(from.top),
      left: columns(from.left),
      bottom: rows(from.bottom),
      right: columns(from.right),
    };
    const meant = { name, sheet: sheetName, range: rangeOf(zone) };
    if (now?.sheet === sheetName && now.entry.range === meant.range) return [];
    if (!labelsAgree(fresh, sheet, from, zone)) return [];
    if (now && wasMoved(book, now.entry, meant)) return [];
    return [{ name, meant, ...(now && { now: now.entry }) }];
  });
}

function mostly<T>(values: readonly T[]): T | undefined {
  const counts = new Map<T, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
}

/** So many names that agree are no slip. */
const SURE = 3;

interface Move {
  readonly from: number;
  readonly to: number;
  /** The last line of a name of several: rows come and go before it. */
  readonly ends: boolean;
}

/** Where a row, or a column, lies now: as most of its names say, unless its neighbours on both sides say otherwise. */
function moves(all: readonly Move[]): (index: number) => number {
  const byLine = new Map<number, Move[]>();
  for (const one of all) {
    const known = byLine.get(one.from);
    if (known) known.push(one);
    else byLine.set(one.from, [one]);
  }
  const lines = [...byLine]
    .sort((a, b) => a[0] - b[0])
    .map(([from, some]) => {
      const delta = mostly(some.map(({ to }) => to - from))!;
      const agreed = some.filter(({ to }) => to - from === delta);
      return { from, delta, sure: agreed.length, ends: agreed.every(({ ends }) => ends) };
    });
  lines.forEach((line, index) => {
    if (line.sure >= SURE) return;
    const before = lines[index - 1];
    const after = lines[index + 1];
    const near = [before, after].flatMap((one) => (one ? [one.delta] : []));
    // The last list of a sheet grows and shrinks with nothing below it that would tell.
    if (near.length === 0 || (!after && line.ends)) return;
    if (line.delta < Math.min(...near) || line.delta > Math.max(...near))
      line.delta = (before ?? after)!.delta;
  });
  return (index) => {
    const last = lines.findLast(({ from }) => from <= index);
    return index + (last?.delta ?? 0);
  };
}

/** The words that stand left of the cells, or over them, are those of the template. */
function labelsAgree(fresh: BookSheet, sheet: BookSheet, from: Zone, zone: Zone): boolean {
  for (let column = from.left - 1; column >= 0; column--) {
    const own = fresh.cells[address(from.top, column)];
    if (own?.formula !== undefined) return true;
    if (own?.value === undefined) continue;
    return sheet.cells[address(zone.top, column + zone.left - from.left)]?.value === own.value;
  }
  for (let row = from.top - 1; row >= 0; row--) {
    const own = fresh.cells[address(row, from.left)];
    if (own?.value === undefined) continue;
    return sheet.cells[address(row + zone.top - from.top, zone.left)]?.value === own.value;
  }
  return true;
}

/** A cell that was cut and pasted takes its name along, and leaves its place empty. */
function wasMoved(book: Book, now: BookName, meant: BookName): boolean {
  const holds = ({ sheet, range }: BookName): boolean => {
    const zone = parseRange(range);
    const cell = zone && book.sheets.find(({ name }) => name === sheet)?.cells[address(zone.top, zone.left)];
    return cell?.value !== undefined || cell?.formula !== undefined;
  };
  const others = book.names.some(
    (one) => one.name !== now.name && one.sheet === now.sheet && one.range === now.range,
  );
  return !others && holds(now) && !holds(meant);
}
