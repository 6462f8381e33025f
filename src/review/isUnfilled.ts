/** Whether a workbook holds what its template starts from and nothing more. */
import type { Book } from "../workbooks/book";
import { fillingOf } from "../workbooks/fillingOf";
import { templateOf, type Template } from "../workbooks/templates";

const starts = new WeakMap<Template, string>();

export function isUnfilled(book: Book): boolean {
  const template = templateOf(book.template);
  if (!template) return false;
  const filled = (one: Book): string => JSON.stringify(fillingOf(template.definition, one));
  let start = starts.get(template);
  if (start === undefined) {
    start = filled(template.empty());
    starts.set(template, start);
  }
  return filled(book) === start;
}
