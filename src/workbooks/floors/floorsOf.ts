/** What a floor is copied from: the rows of Rooms and Distribution as they were typed, and the names of the head units. */
import type { Book } from "../book";
import { jobInputsOf } from "../jobInputsOf";
import { multiRoom } from "../multiRoom/definition";
import { branches } from "../multiRoom/names/branches";
import { heads } from "../multiRoom/names/headUnits";
import { rooms } from "../multiRoom/names/rooms";
import type { RowsOfBlocks } from "../inputBlock";
import { OF } from "../names";
import type { FloorCopy, Floors } from "./copyFloor";

/** @returns undefined for a workbook without a Rooms sheet of ours */
export function floorsIn(book: Book): Floors | undefined {
  if (book.template !== multiRoom.id || !book.names.some(({ name }) => name === rooms.outlet.name))
    return undefined;
  const { blocks = {} } = jobInputsOf(multiRoom, book);
  return {
    rooms: blocks[rooms[OF].name] ?? [],
    devices: blocks[branches[OF].name] ?? [],
    heads: (blocks[heads[OF].name] ?? []).map((row) => String(row[heads.id.key] ?? "")),
  };
}

/** The copy as rows of its blocks. */
export const rowsOfCopy = ({ rooms: outlets, devices }: FloorCopy): RowsOfBlocks =>
  [
    { block: branches[OF].name, rows: devices },
    { block: rooms[OF].name, rows: outlets },
  ].filter(({ rows }) => rows.length > 0);
