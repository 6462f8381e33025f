/** Whether a workbook holds what its template starts from and nothing more. */
import type { Book } from "../workbooks/book";
import type { JobInputs } from "../workbooks/definition";
import { jobInputsOf } from "../workbooks/jobInputsOf";
import { templateOf, type Template } from "../workbooks/templates";

const starts = new WeakMap<Template, JobInputs>();

export function isUnfilled(book: Book): boolean {
  const template = templateOf(book.template);
  if (!template) return false;
  const filled = jobInputsOf(template.definition, book);
  // To lay out another workbook takes longer than most of a review.
  if (hasMoreRows(filled, template.start)) return false;
  let start = starts.get(template);
  if (start === undefined) {
    start = jobInputsOf(template.definition, template.empty());
    starts.set(template, start);
  }
  return JSON.stringify(filled) === JSON.stringify(knownTo(book, start));
}

const hasMoreRows = ({ blocks: filled = {} }: JobInputs, { blocks: start = {} }: JobInputs): boolean =>
  Object.entries(filled).some(([block, rows]) => rows.length > (start[block]?.length ?? 0));

/** Without what an earlier version of the template had no cell for. */
function knownTo({ names }: Book, { fields = {}, blocks = {} }: JobInputs): JobInputs {
  const known = new Set(names.map(({ name }) => name));
  return {
    fields: Object.fromEntries(Object.entries(fields).filter(([name]) => known.has(name))),
    blocks: Object.fromEntries(
      Object.entries(blocks).flatMap(([block, rows]) => {
        const kept = rows.map((row) =>
          Object.fromEntries(Object.entries(row).filter(([key]) => known.has(`${block}_${key}`))),
        );
        return kept.some((row) => Object.keys(row).length > 0) ? [[block, kept]] : [];
      }),
    ),
  };
}
