/**
 * What is worked out of a book again and again, kept for as long as the book is. Only of books that nobody changes any
 * more: whoever has one in hand says so.
 */
import type { Book } from "./book";

const kept = new WeakMap<Book, Map<string, unknown>>();

/** From now on what is worked out of this very book is kept: it must not be changed. */
export function finished(book: Book): Book {
  if (!kept.has(book)) kept.set(book, new Map());
  return book;
}

/**
 * @param key what is worked out
 * @param work worked anew each time of a book that is not finished
 */
export function remembered<T>(book: Book, key: string, work: () => T): T {
  const known = kept.get(book);
  if (!known) return work();
  if (!known.has(key)) known.set(key, work());
  return known.get(key) as T;
}
