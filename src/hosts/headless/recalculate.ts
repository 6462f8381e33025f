/** Computes a book without a screen. */
import type { Book } from "../../workbooks/book";
import type { GridModel } from "../grid/library";
import { toBareDocument, toDocument } from "../grid/toDocument";
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
