/** How many checks of a computed workbook fail. */
import type { Book } from "./book";
import { checks } from "./checkNames";
import { namedValue } from "./named";

/** @returns 0 for a workbook that has no checks; undefined where they can't be counted */
export function failingCount(book: Book): number | undefined {
  if (!book.names.some(({ name }) => name === checks.failed.name)) return 0;
  const failed = namedValue(book, checks.failed.name);
  return typeof failed === "number" ? failed : undefined;
}

/** @returns for instance "2 checks need attention"; empty where none does */
export function failingInWords(book: Book): string {
  const failing = failingCount(book);
  if (failing === undefined) return "its checks can't be counted";
  if (failing === 0) return "";
  return failing === 1 ? "1 check needs attention" : `${failing} checks need attention`;
}
