/** The lines of a computed book's checks. */
import { parseRange } from "../formula/address";
import type { Book } from "./book";
import { checks } from "./checkNames";
import { namedRows } from "./named";
import { figureOf, wordsOf, type Figure } from "./shownFigure";

export interface CheckLine {
  readonly what: string;
  readonly found: Figure;
  /** ok, look, note or error. */
  readonly result: string;
  readonly where: string;
}

/** They lie beside the named column of their results. */
export function checkLines(book: Book): CheckLine[] {
  const named = book.names.find(({ name }) => name === checks.result.name);
  const zone = named && parseRange(named.range);
  if (!named || !zone) return [];
  const left: Book = {
    ...book,
    names: [{ ...named, name: "lines", range: `A${zone.top + 1}:E${zone.bottom + 1}` }],
  };
  return namedRows(left, "lines").map(([what, , found, result, where]) => ({
    what: wordsOf(what),
    found: figureOf(found),
    result: wordsOf(result),
    where: wordsOf(where),
  }));
}
