import type { Book } from "../workbooks/book";
import { notedIn } from "./again/noted";
import { factsOf } from "./facts";
import { review } from "./review";
import type { FullReview } from "./reviewInFull";

/** What the rules say of a workbook whose cells are live, where no copy can be computed: without amounts. */
export function reviewByRules(book: Book): FullReview {
  const findings = review(book);
  return { findings, facts: factsOf(book, book, findings), noted: notedIn(book, findings) };
}
