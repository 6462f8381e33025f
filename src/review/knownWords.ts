/** The words that stand in a workbook, by which another job's names are told from its own. */
import type { Book } from "../workbooks/book";
import { seenAs } from "./lookAlike";

/** Of pages of any office. */
const COMMON = new Set(
  "quotation quote offer estimate page draft copy revision version date number tender proposal customer client job site project prepared multi room rigsheet workbook template confidential demonstration invented the for and with from mrs mr ms dr".split(
    " ",
  ),
);

const wordsOf = (text: string): string[] => seenAs(text).match(/\p{L}[\p{L}'’-]+/gu) ?? [];

const known = new WeakMap<Book, ReadonlySet<string>>();

function wordsIn(book: Book): ReadonlySet<string> {
  const before = known.get(book);
  if (before) return before;
  // The same words stand in very many cells.
  const texts = new Set<string>();
  for (const { name, cells, results } of book.sheets) {
    texts.add(name);
    for (const { value } of Object.values(cells)) if (typeof value === "string") texts.add(value);
    for (const value of Object.values(results)) if (typeof value === "string") texts.add(value);
  }
  const words = new Set([...texts].flatMap((text) => wordsOf(text).map((word) => word.toLowerCase())));
  known.set(book, words);
  return words;
}

/** @returns the names of the text, words with a capital letter, that stand nowhere in the workbook */
export function strangeNames(book: Book, text: string): string[] {
  const names = wordsOf(text).filter((word) => /^\p{Lu}/u.test(word) && !COMMON.has(word.toLowerCase()));
  if (names.length === 0) return [];
  const there = wordsIn(book);
  return names.filter((word) => !there.has(word.toLowerCase()));
}
