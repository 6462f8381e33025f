/** A workbook that is not ours, or made from another version of its template, cannot be held to the template. */
import type { Book } from "../../workbooks/book";
import { templateOf, type Template } from "../../workbooks/templates";
import type { Finding } from "../finding";

export function origin(book: Book): Finding[] {
  const template = templateOf(book.template);
  if (!template) {
    return [
      {
        weight: "worth knowing",
        says: book.template
          ? `This workbook says that it was made from the template “${book.template}”, which is not known here. Only its errors were looked for.`
          : "This workbook was not made from one of our templates. Only its errors were looked for.",
        wayOut:
          "Start a workbook from a template and copy the inputs over; or read on, if it is meant to be another.",
      },
    ];
  }
  const { version } = template.definition;
  if (book.templateVersion === version) return [];
  return [
    {
      weight: "doubtful",
      says: `This workbook was made from version ${book.templateVersion || "unknown"} of “${template.title}”. Its formulas were not compared with the template's.`,
      should: `Version ${version}.`,
      wayOut: "Start a workbook from today's template and copy the inputs over, block by block.",
    },
  ];
}

/** The template that a book can be held to, cell by cell. */
export function sameTemplate(book: Book): Template | undefined {
  const template = templateOf(book.template);
  return template?.definition.version === book.templateVersion ? template : undefined;
}
