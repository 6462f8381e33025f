/**
 * The cell of another revision that stands for one of this: by the workbook's
 * names, and within a block by the row's own name, wherever the row lies now.
 */
import { address, parseAddress, parseRange, type Place, type Zone } from "../formula/address";
import type { Book, BookResult } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import { placedBlocks, placeIn } from "../workbooks/placedBlocks";
import { rowKey } from "../workbooks/rowKey";

export interface CellOf {
  readonly sheet: string;
  /** As `B23`. */
  readonly cell: string;
}

/**
 * @param at a cell of `book`
 * @returns finds it in another revision of the job; undefined there where its row or its name is gone
 */
export function sameCell(
  definition: WorkbookDefinition,
  book: Book,
  at: CellOf,
): (other: Book) => CellOf | undefined {
  const place = parseAddress(at.cell)!;
  const block = placedBlocks(definition, placeIn(book.names)).find(
    ({ sheet, zone }) => sheet === at.sheet && isWithin({ ...place, column: zone.left }, zone),
  );
  const name = smallestName(book, at.sheet, place);
  if (!name) return () => at;
  const shift = { down: place.row - name.zone.top, right: place.column - name.zone.left };
  const keyName = block && `${block.block.name}_${rowKey(block.block.columns) ?? ""}`;
  const row = keyName === undefined ? undefined : rowNamed(book, keyName, place.row);
  return (other) => {
    const there = placeIn(other.names)(name.name);
    if (!there) return undefined;
    const found = row === undefined ? there.zone.top + shift.down : rowOf(other, keyName!, row);
    const column = there.zone.left + shift.right;
    const isThere = found !== undefined && found <= there.zone.bottom && column <= there.zone.right;
    return isThere ? { sheet: there.sheet, cell: address(found, column) } : undefined;
  };
}

const isWithin = ({ row, column }: Place, { top, left, bottom, right }: Zone): boolean =>
  top <= row && row <= bottom && left <= column && column <= right;

/** Of the names that lie over a cell the one that says the most of it. */
function smallestName(book: Book, sheet: string, place: Place): { name: string; zone: Zone } | undefined {
  const over = book.names.flatMap(({ name, sheet: on, range }) => {
    const zone = on === sheet ? parseRange(range) : undefined;
    return zone && isWithin(place, zone) ? [{ name, zone }] : [];
  });
  const size = ({ zone }: { zone: Zone }): number =>
    (zone.bottom - zone.top + 1) * (zone.right - zone.left + 1);
  return over.sort((one, other) => size(one) - size(other))[0];
}

interface NamedRow {
  readonly key: string;
  /** How many rows above have the same name. */
  readonly before: number;
}

const keysOf = (book: Book, name: string): { row: number; key: string }[] => {
  const place = placeIn(book.names)(name);
  const sheet = book.sheets.find((one) => one.name === place?.sheet);
  if (!place || !sheet) return [];
  const { top, bottom, left } = place.zone;
  return Array.from({ length: bottom - top + 1 }, (_, index) => {
    const row = top + index;
    const at = address(row, left);
    const value: BookResult | undefined = sheet.results[at] ?? sheet.cells[at]?.value;
    return { row, key: typeof value === "object" || value === undefined ? "" : String(value) };
  });
};

/** @returns undefined where the rows have no names, or this one is blank: it is then known by where it stands */
function rowNamed(book: Book, name: string, row: number): NamedRow | undefined {
  const keys = keysOf(book, name);
  const own = keys.find((one) => one.row === row);
  if (!own || own.key === "") return undefined;
  return { key: own.key, before: keys.filter((one) => one.row < row && one.key === own.key).length };
}

const rowOf = (book: Book, name: string, { key, before }: NamedRow): number | undefined =>
  keysOf(book, name).filter((one) => one.key === key)[before]?.row;
