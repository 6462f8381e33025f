/**
 * A workbook in whose rows of Rooms the values of their types stand: what is printed, sealed or reviewed shows what
 * counts, and not a blank that means it.
 */
import { address, parseRange } from "../../formula/address";
import { isBookError, lookIndex, type Book, type BookCell, type Look } from "../book";
import { OWN_LOOK } from "../looks";
import { namedColumn } from "../named";
import { rooms } from "./names/rooms";
import { types } from "./names/roomTypes";
import { BY_TYPE } from "./roomTypes";

const plain = (value: unknown): string =>
  typeof value === "object" ? "" : String(value ?? "").toLowerCase();

/** @returns the same book where no row leaves anything to a type */
export function withTypes(book: Book): Book {
  const zoneOf = (name: string) => book.names.find((one) => one.name === name);
  const place = zoneOf(rooms.type.name);
  const sheet = place && book.sheets.find(({ name }) => name === place.sheet);
  const zone = place && parseRange(place.range);
  const names = namedColumn(book, types.name.name).map(plain);
  if (!sheet || !zone || names.every((name) => name === "")) return book;

  const column = (key: (typeof BY_TYPE)[number]) => ({
    left: parseRange(zoneOf(rooms[key].name)?.range ?? "")?.left,
    ofTypes: namedColumn(book, types[key].name),
  });
  const columns = BY_TYPE.map(column);
  const typed = namedColumn(book, rooms.type.name).map(plain);
  const looks = [...book.looks];
  const filled: Record<string, BookCell> = {};
  typed.forEach((name, row) => {
    const type = name === "" ? -1 : names.indexOf(name);
    if (type < 0) return;
    for (const { left, ofTypes } of columns) {
      const value = ofTypes[type];
      if (left === undefined || value === undefined || value === "" || isBookError(value)) continue;
      const at = address(zone.top + row, left);
      const { value: own, formula, look } = sheet.cells[at] ?? {};
      if ((own ?? "") !== "" || formula !== undefined) {
        filled[at] = { ...sheet.cells[at], look: withLook(looks, look, OWN_LOOK) };
        continue;
      }
      filled[at] = { value, look: withLook(looks, look, OF_TYPE_LOOK) };
    }
  });
  if (Object.keys(filled).length === 0) return book;
  // All of them are filled now: what was the row's own has its look for good.
  const marks = sheet.marks.filter(({ overList }) => !overList);
  return {
    ...book,
    looks,
    sheets: book.sheets.map((one) =>
      one === sheet ? { ...one, cells: { ...one.cells, ...filled }, marks } : one,
    ),
  };
}

/** It stands on the sheet Room types. */
const OF_TYPE_LOOK: Look = { italic: true };

const withLook = (looks: Look[], look: number | undefined, over: Look): number =>
  lookIndex({ looks }, { ...(look === undefined ? {} : looks[look]), ...over });
