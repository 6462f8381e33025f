/** Computes a book without a screen. */
import type { Undoing } from "../../review/finding";
import type { Book } from "../../workbooks/book";
import type { GridModel } from "../grid/library";
import { toBareDocument, toDocument } from "../grid/toDocument";
import { trialsOn } from "../grid/trialsOn";
import { withResults } from "../grid/withResults";
import { loadLibrary, quietly } from "./loadLibrary";

/** A live model of the book: edit it through the library's commands, read it back with `fromModel`. */
export function openModel(book: Book): GridModel {
  const library = loadLibrary();
  return quietly(() => new library.Model(toDocument(book)));
}

/** @returns the same book with every formula computed anew */
export function recalculate(book: Book): Book {
  const library = loadLibrary();
  return quietly(() => withResults(library, new library.Model(toBareDocument(book)), book));
}

/** A book that stays open, for what it would come to with some cells changed. */
export function trials(book: Book): (changes: readonly Undoing[]) => Book {
  const library = loadLibrary();
  const trial = quietly(() => trialsOn(library, new library.Model(toBareDocument(book)), book));
  return (changes) => quietly(() => trial(changes));
}
