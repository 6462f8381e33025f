/** What the cells of a computed book show, as its sheets print it. */
import { address } from "../formula/address";
import type { Named } from "../formula/build";
import { isBookError, type Book } from "../workbooks/book";
import { namedZone } from "../workbooks/named";
import type { Typesetting } from "../workbooks/paperSheet";

export interface Shown {
  /** The text of a named cell; empty for a blank, an error and an unknown name. */
  readonly at: (of: Named) => string;
  /** The first column of a named range, row by row. */
  readonly down: (of: Named) => readonly string[];
}

/** Signs that no paper shows, and those that turn the direction of all that follows them. */
// eslint-disable-next-line no-control-regex -- control characters are what is looked for
const UNSEEN = /[\x00-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]+/g;

/** A text on one line. */
export const tidy = (text: string): string => text.replace(UNSEEN, " ").replace(/ {2,}/g, " ").trim();

/** @param formatted shows a number as the book's people write it */
export function shownIn(book: Book, formatted: Typesetting["formatted"]): Shown {
  const down = ({ name }: Named): readonly string[] => {
    const found = namedZone(book, name);
    if (!found) return [];
    const { sheet, zone } = found;
    return Array.from({ length: zone.bottom - zone.top + 1 }, (_, row) => {
      const at = address(zone.top + row, zone.left);
      const cell = sheet.cells[at];
      const value = sheet.results[at] ?? cell?.value;
      if (value === undefined || isBookError(value)) return "";
      return tidy(
        typeof value === "string"
          ? value
          : formatted(value, wholeShare(value, book.looks[cell?.look ?? -1]?.format)),
      );
    });
  };
  return { down, at: (of) => down(of)[0] ?? "" };
}

const PERCENT = /^0(?:\.0+)?%$/;
const MOST_DIGITS = 4;

/** A customer works the tax out again: a rate has all its digits, and none that say nothing. */
function wholeShare(value: number | boolean, format: string | undefined): string | undefined {
  if (typeof value !== "number" || format === undefined || !PERCENT.test(format)) return format;
  const digits =
    Number((100 * value).toFixed(MOST_DIGITS))
      .toString()
      .split(".")[1] ?? "";
  return digits === "" ? "0%" : `0.${"0".repeat(digits.length)}%`;
}
