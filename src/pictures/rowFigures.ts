/** What the rows of all lists have, as items of the picture. */
import { CORNERS } from "../workbooks/multiRoom/corners";
import { isBookError, type Book } from "../workbooks/book";
import { nameKey } from "../engine/signal/nameKey";
import { filledRows, numberOf, textOf, type Row } from "./columns";
import type { Span } from "./items";

/** @param columns what the names of its four columns begin with */
export function cornersOf({ at }: Row, columns = "level"): readonly number[] | undefined {
  const levels = Object.keys(CORNERS).map((corner) => numberOf(at(`${columns}_${corner}`)));
  return levels.every((level) => level !== undefined) ? levels : undefined;
}

export const spanOf = (corners: readonly number[] | undefined): Span | undefined =>
  corners && { least: Math.min(...corners), most: Math.max(...corners) };

/** What a column of verdicts holds where nothing is wrong. */
const GOOD = new Set(["ok", "yes", "not judged", "unused", ""]);

/**
 * @param words by the column of a verdict, what to say where it is not good
 * @returns the words of all verdicts that are not; only unknown where a row was not worked out
 */
export function troublesOf({ at }: Row, words: Readonly<Record<string, string>>): string[] {
  const columns = Object.keys(words);
  // The first says whether the row was worked out at all.
  if (at(columns[0]!) === undefined || columns.some((column) => isBookError(at(column)))) return ["unknown"];
  return columns.filter((column) => !GOOD.has(textOf(at(column)))).map((column) => words[column]!);
}

export const sentenceOf = ({ at }: Row): string => textOf(at("check_trouble"));

/** How a port of that kind is called on the sheets. */
export const THROUGH = "through";

/** By the key of a part's name: its ports that something hangs on. */
export type PortsTaken = ReadonlyMap<string, readonly string[]>;

export function portsTaken(book: Book): PortsTaken {
  const taken = new Map<string, string[]>();
  for (const [block, port] of [
    ["branches", "level_port"],
    ["rooms", "place_port"],
  ] as const)
    for (const { at } of filledRows(book, block, "from")) {
      const key = nameKey(textOf(at("from")));
      taken.set(key, [...(taken.get(key) ?? []), textOf(at(port))]);
    }
  return taken;
}
