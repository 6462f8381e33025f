/** An empty workbook of a template, laid out once however many workbooks are held to it. Not to be changed. */
import type { Book } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import { layOut } from "../workbooks/layOut";

const laidOut = new WeakMap<WorkbookDefinition, Book>();

export function blankBook(definition: WorkbookDefinition): Book {
  const known = laidOut.get(definition);
  if (known) return known;
  const made = layOut(definition);
  laidOut.set(definition, made);
  return made;
}
