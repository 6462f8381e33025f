/** Everything that the rules find in one workbook. */
import type { Book } from "../workbooks/book";
import { WEIGHTS, type Finding } from "./finding";
import { folded } from "./folded";
import { formulaDifferences } from "./formulaDifferences";
import { isUnfilled } from "./isUnfilled";
import { labelsIn } from "./labels";
import { recognised } from "./recognised";
import { restoredBook } from "./restoredBook";
import { DEFAULT_MARGIN_FLOOR, type ReviewOptions, type Reviewed } from "./rule";
import { rules } from "./ruleList";
import { sameTemplate } from "./rules/origin";

/** What an empty workbook says of its blanks is no news. */
const FROM_BLANKS: ReadonlySet<string> = new Set(["error", "failing check"]);

const UNFILLED: Finding = {
  weight: "worth knowing",
  says: "Nothing is filled in yet: this is what the template starts from.",
  rule: "nothing filled in",
  wayOut: "Fill the boxed cells, or review the file that was meant.",
};

/** What a program that dropped the file's own properties leaves to know. */
const UNMARKED: Finding = {
  weight: "worth knowing",
  says: "The file no longer says from which template it was made; the About sheet does, and was believed.",
  effect: "A program that drops such properties saved it; the desk and the add-in will not know its blocks.",
  rule: "not our template",
  wayOut: "Start a workbook from the template and copy the inputs over, if rows are to be added.",
};

export type Compute = (book: Book) => Book;

/**
 * @param stored the workbook as it is stored, or as a live one shows it
 * @param compute computes a book anew; absent in a host whose cells are live and that cannot compute another book
 * @returns the weightiest first
 */
export function review(stored: Book, compute?: Compute, options: Partial<ReviewOptions> = {}): Finding[] {
  const read = recognised(stored);
  const definition = sameTemplate(read)?.definition;
  const computed = compute ? compute(read) : read;
  const labelAt = labelsIn(read, definition);
  const differences = definition ? formulaDifferences(read, definition, labelAt) : [];
  const reviewed: Reviewed = {
    read,
    computed,
    expected: definition && differences.length > 0 ? compute?.(restoredBook(read, definition)) : computed,
    definition,
    differences,
    labelAt,
    options: { marginFloor: DEFAULT_MARGIN_FLOOR, ...options },
  };
  const found = rules.flatMap(({ id, find }) =>
    find(reviewed).map((finding): Finding => ({ ...finding, rule: id })),
  );
  if (read !== stored) found.push(UNMARKED);
  const told = isUnfilled(read)
    ? [...found.filter(({ rule }) => !FROM_BLANKS.has(rule!)), UNFILLED]
    : folded(found, read, computed);
  return told.sort((a, b) => WEIGHTS.indexOf(a.weight) - WEIGHTS.indexOf(b.weight));
}
