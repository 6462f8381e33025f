/** Which column of Rooms tells what counts at an outlet: its row alone, or with its type. */
import type { Book } from "../book";
import { rooms } from "./names/rooms";
import type { BY_TYPE } from "./roomTypes";

/** @returns the key of the column; workbooks before version 6 had no types */
export const keyThatCounts = (book: Book, key: (typeof BY_TYPE)[number]): string =>
  book.names.some(({ name }) => name === rooms[`${key}_used`].name) ? `${key}_used` : key;
