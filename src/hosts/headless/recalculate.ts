/** Computes a book without a screen. */
import type { Book } from "../../workbooks/book";
import { fromModel } from "../grid/fromModel";
import type { GridModel } from "../grid/library";
import { toDocument } from "../grid/toDocument";
import { loadLibrary, quietly } from "./loadLibrary";

/** A live model of the book: edit it through the library's commands, read it back with `fromModel`. */
export function openModel(book: Book): GridModel {
  const library = loadLibrary();
  return quietly(() => new library.Model(toDocument(book)));
}

/** @returns the same book with every formula computed anew */
export function recalculate(book: Book): Book {
  const library = loadLibrary();
  return quietly(() => fromModel(library, openModel(book)));
}
