/** Which column of Rooms tells what counts at an outlet: its row alone, or with its type. */
import type { Book } from "../book";
import { rooms } from "./names/rooms";
import type { BY_TYPE } from "./roomTypes";

export type KeyThatCounts = (key: (typeof BY_TYPE)[number]) => string;

/** @returns what gives the key of the column, asked of the names once; workbooks before version 6 had no types */
export function keysThatCount(book: Book): KeyThatCounts {
  const hasTypes = book.names.some(({ name }) => name === rooms.run_used.name);
  return (key) => (hasTypes ? `${key}_used` : key);
}
