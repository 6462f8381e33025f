/** What a workbook says is 0 or missing on purpose: the list on Terms, by what it names. */
import type { Book } from "../workbooks/book";
import { filledCells, isBlank, namedCells, plainWord } from "./namedCells";

/** @param what the name of a row or the label of a field */
export function onPurpose(book: Book): (what: string) => boolean {
  const reasons = namedCells(book, "onpurpose_why");
  const listed = new Set(
    filledCells(book, "onpurpose_what").flatMap(({ value, index }) =>
      isBlank(reasons[index]?.value) ? [] : [plainWord(value)],
    ),
  );
  return (what) => listed.has(what.trim().toLowerCase());
}
