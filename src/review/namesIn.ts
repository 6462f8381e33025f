/** The defined names that a formula reads. */
import type { Book, BookName } from "../workbooks/book";

/** @param formula without its equals sign; text in quotes is no name */
export function namesIn(book: Pick<Book, "names">, formula: string): BookName[] {
  const bare = formula.replace(/"(?:[^"]|"")*"/g, '""').toUpperCase();
  const words = new Set([...bare.matchAll(/[\p{L}_][\p{L}\p{N}_.]*/gu)].map(([word]) => word));
  return book.names.filter(({ name }) => words.has(name.toUpperCase()));
}
