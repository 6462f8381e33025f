/**
 * Computed workbooks by what was computed: a fault at each call leads the same
 * workbook through the same states again and again.
 */
import type { Book } from "../../../src/workbooks/book";

/**
 * A large workbook's results take some megabytes. The demonstrations of one trial come to sixteen states, and a trial in
 * an Excel that computes otherwise must not drive them all out before the next.
 */
const MOST_KEPT = 40;
const kept = new Map<string, Book>();

/** @returns the results for what was asked, shared: nobody changes them */
export function resultsOf(asked: string, compute: () => Book): Book {
  const found = kept.get(asked) ?? compute();
  // Put in again, the oldest comes first and goes first.
  kept.delete(asked);
  kept.set(asked, found);
  if (kept.size > MOST_KEPT) kept.delete(kept.keys().next().value!);
  return found;
}
