import type { Book } from "../workbooks/book";
import { notedIn } from "./again/noted";
import { factsOf } from "./facts";
import { review } from "./review";
import { DEFAULT_MARGIN_FLOOR } from "./rule";
import type { FullReview } from "./reviewInFull";

/** What the rules say of a workbook whose cells are live, where no copy can be computed: without amounts. */
export function reviewByRules(book: Book): FullReview {
  const findings = review(book);
  return {
    findings,
    facts: factsOf(book, { read: book, own: book, options: { marginFloor: DEFAULT_MARGIN_FLOOR } }, findings),
    noted: notedIn(book, findings),
  };
}
