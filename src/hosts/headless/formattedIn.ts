import { WRITING_FIELD, writingOf } from "../../workbooks/typed/writing";
import type { Book } from "../../workbooks/book";
import { namedValue } from "../../workbooks/named";
import type { Typesetting } from "../../workbooks/paperSheet";
import { formattedAs } from "../grid/asWritten";
import { loadLibrary } from "./loadLibrary";

/** @returns how figures of a book are shown, as its people write them, where no screen shows them */
export function formattedIn(book: Book): Typesetting["formatted"] {
  const library = loadLibrary();
  const writing = writingOf(namedValue(book, WRITING_FIELD));
  return (value, format) => formattedAs(library, value, format, writing);
}
