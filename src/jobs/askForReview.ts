import type { FullReview } from "../review/reviewInFull";
import type { Book } from "../workbooks/book";
import { shelfLineOf } from "../workbooks/shelfLine";
import type { AskedReview } from "./reviews";

/**
 * What is kept of a review.
 * @param file its name, for people
 * @param marks by which the job is known beside its quote number
 */
export function askForReview(
  book: Book,
  { headline, facts, noted: { noted, rows } }: FullReview,
  file: string,
  marks: readonly string[],
): AskedReview {
  const { number, name, customer } = shelfLineOf(book);
  const { quoted, shouldBe } = headline ?? {};
  return {
    job: { number, name, customer, marks },
    review: {
      file,
      version: facts.version,
      ...(quoted !== undefined && { quoted }),
      ...(shouldBe !== undefined && { shouldBe }),
    },
    noted,
    rows,
  };
}
