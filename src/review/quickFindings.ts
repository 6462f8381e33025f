/** What can be said of a workbook at once, from one computed reading of it. */
import type { Book } from "../workbooks/book";
import { WEIGHTS, type Finding } from "./finding";
import { formulaDifferences } from "./formulaDifferences";
import { labelsIn } from "./labels";
import { errorCells } from "./rules/errorCells";
import { failingChecks } from "./rules/failingChecks";
import { origin, sameTemplate } from "./rules/origin";

/**
 * @param book a computed book
 * @returns the weightiest first
 */
export function quickFindings(book: Book): Finding[] {
  const template = sameTemplate(book);
  const labelAt = labelsIn(book, template?.definition);
  const findings = [
    ...origin(book),
    ...(template ? formulaDifferences(book, template.definition, labelAt) : []),
    ...errorCells(book, labelAt),
    ...failingChecks(book),
  ];
  return findings.sort((a, b) => WEIGHTS.indexOf(a.weight) - WEIGHTS.indexOf(b.weight));
}
