/** A job as one line of a list: what it is, for whom, what it comes to. */
import { isBookError, type Book } from "./book";
import { checks } from "./checkNames";
import { jobLabelOf, type JobLabel } from "./jobLabel";
import { estimate } from "./multiRoom/names";
import { namedValue } from "./named";
import { standards } from "./standards/names";
import { isoDate } from "./sheetDate";

export interface ShelfLine extends JobLabel {
  readonly customer: string;
  /** Of the quote, as 2026-11-02; empty where none is filled in. */
  readonly date: string;
  /** As it was last computed: with tax, in the job's currency. Absent where the job has none, or it is not known. */
  readonly total?: number;
  readonly currency: string;
  /** It is no job but what jobs draw on. */
  readonly standards?: true;
  /** The workbook's own words: "all checks pass", or how many to look at. */
  readonly verdict: string;
}

/** @param book as it was read; nothing is computed anew */
export const shelfLineOf = (book: Book): ShelfLine =>
  shelfLineFrom((name) => {
    const found = namedValue(book, name);
    return isBookError(found) ? undefined : found;
  }, book.title);

/**
 * @param value of a named cell; undefined where the workbook has no such name, or an error stands there
 * @param title what the workbook calls itself
 */
export function shelfLineFrom(value: (name: string) => unknown, title: string): ShelfLine {
  const text = (name: string): string => {
    const found = value(name);
    return typeof found === "string" ? found.trim() : "";
  };
  const edition = value(standards.edition.name);
  const date = value(estimate.site.date.name) ?? value(standards.date.name);
  const total = value(estimate.quote.total.name);
  const label = jobLabelOf(value);
  return {
    // A revision alone would name nothing.
    ...(label.number || label.name ? label : { number: "", revision: "", name: title }),
    customer: text(estimate.site.customer.name),
    date: typeof date === "number" ? isoDate(date) : "",
    ...(typeof total === "number" && { total }),
    ...(edition !== undefined && { standards: true }),
    currency: text(estimate.site.currency.name),
    verdict: text(checks.verdict.name),
  };
}
