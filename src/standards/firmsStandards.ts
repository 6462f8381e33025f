/** The firm's standards as a job draws on them: read from their workbook, and refused with a sentence where they can't be used. */
import { recognised } from "../review/recognised";
import { originOf } from "../review/rules/origin";
import type { Book } from "../workbooks/book";
import { currentInputs } from "../workbooks/currentInputs";
import type { JobInputs } from "../workbooks/definition";
import { standards } from "../workbooks/standards/names";
import { SHARED_BLOCKS } from "../workbooks/standards/shared";
import { standardsWorkbook } from "../workbooks/standards/definition";
import { isOfSentences, keyed } from "../workbooks/standards/rows";

export interface FirmsStandards {
  readonly inputs: JobInputs;
  readonly firm: string;
  readonly edition: number;
  /** As a sheet has dates. */
  readonly date: number;
  /** That a quote is valid, where they say so. */
  readonly days?: number;
}

/**
 * @param called what a sentence calls the workbook: its file's name
 * @returns a sentence where no job can draw on it
 */
export function firmsStandards(stored: Book, called: string): FirmsStandards | string {
  const book = recognised(stored);
  const origin = originOf(book);
  if (origin?.template.id !== standardsWorkbook.id)
    return `${called} is no workbook of a firm's standards. Give one that was made from the template “${standardsWorkbook.title}”.`;
  if (origin.made === "later")
    return `${called} was made from version ${book.templateVersion} of “${standardsWorkbook.title}”; this Rigsheet is older and knows version ${standardsWorkbook.version}. Take a Rigsheet as new as the workbook.`;
  const { inputs } = currentInputs(origin.template, book);
  const firm = inputs.fields?.[standards.firm.name];
  const edition = inputs.fields?.[standards.edition.name];
  const date = inputs.fields?.[standards.date.name];
  const days = inputs.fields?.[standards.days.name];
  const missing = [
    ...(firm === undefined ? [standards.firm] : []),
    ...(typeof edition !== "number" ? [standards.edition] : []),
    ...(typeof date !== "number" ? [standards.date] : []),
  ].map(({ words }) => words.label);
  if (missing.length > 0)
    return `${called} does not say what jobs are to tell of it: ${missing.join(", ")}. Fill that in on its sheet Standards.`;
  for (const block of SHARED_BLOCKS) {
    if (isOfSentences(block)) continue;
    const seen = new Set<string>();
    for (const [key] of keyed(block, inputs.blocks?.[block.name])) {
      if (seen.has(key))
        return `“${key}” stands twice in ${called} under “${block.heading}”, so it is not known which of the two is meant. Take one of them out, or give it another name.`;
      seen.add(key);
    }
  }
  return {
    inputs,
    firm: String(firm),
    edition: edition as number,
    date: date as number,
    ...(typeof days === "number" && { days }),
  };
}
