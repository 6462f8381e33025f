/** Everything that the rules find in one workbook. */
import type { Book } from "../workbooks/book";
import { WEIGHTS, type Finding } from "./finding";
import { labelsIn } from "./labels";
import { restoredBook } from "./restoredBook";
import { DEFAULT_MARGIN_FLOOR, type ReviewOptions, type Reviewed } from "./rule";
import { rules } from "./ruleList";
import { changedFormulas } from "./rules/changedFormulas";
import { sameTemplate } from "./rules/origin";

export type Compute = (book: Book) => Book;

/**
 * @param read the workbook as it is stored
 * @param compute computes a book anew; a host brings it
 * @returns the weightiest first
 */
export function review(read: Book, compute: Compute, options: Partial<ReviewOptions> = {}): Finding[] {
  const definition = sameTemplate(read)?.definition;
  const computed = compute(read);
  const labelAt = labelsIn(read, definition);
  const changed = definition !== undefined && changedFormulas(read, definition, labelAt).length > 0;
  const reviewed: Reviewed = {
    read,
    computed,
    expected: changed ? compute(restoredBook(read, definition)) : computed,
    definition,
    labelAt,
    options: { marginFloor: DEFAULT_MARGIN_FLOOR, ...options },
  };
  const found = rules.flatMap(({ id, find }) =>
    find(reviewed).map((finding): Finding => ({ ...finding, rule: id })),
  );
  const told = withoutRepeats(found);
  return told.sort((a, b) => WEIGHTS.indexOf(a.weight) - WEIGHTS.indexOf(b.weight));
}

/** A check that only counts what another rule names cell by cell says nothing more. */
function withoutRepeats(found: readonly Finding[]): Finding[] {
  const key = (place: Finding["place"]): string => `${place?.sheet}!${place?.cell}`;
  const named = new Set(found.filter(({ rule }) => rule !== "failing check").map(({ place }) => key(place)));
  return found.filter(({ rule, cause }) => rule !== "failing check" || !cause || !named.has(key(cause)));
}
