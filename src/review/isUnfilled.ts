/** Whether a workbook holds what its template starts from and nothing more. */
import type { Book } from "../workbooks/book";
import type { JobInputs } from "../workbooks/definition";
import { jobInputsOf } from "../workbooks/jobInputsOf";
import { templateOf, type Template } from "../workbooks/templates";

const starts = new WeakMap<Template, JobInputs>();

export function isUnfilled(book: Book): boolean {
  const template = templateOf(book.template);
  if (!template) return false;
  let start = starts.get(template);
  if (start === undefined) {
    start = jobInputsOf(template.definition, template.empty());
    starts.set(template, start);
  }
  const filled = jobInputsOf(template.definition, book);
  return JSON.stringify(filled) === JSON.stringify(knownTo(book, start));
}

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
