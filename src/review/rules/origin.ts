/** A workbook that is not ours, or made from another version of its template. */
import type { Book } from "../../workbooks/book";
import { templateOf, type Template } from "../../workbooks/templates";
import type { Finding } from "../finding";

/** How a workbook's version of its template stands to the one known here. */
export type Made = "now" | "earlier" | "later";

export interface Origin {
  readonly template: Template;
  readonly made: Made;
}

/** @returns undefined for a workbook of no template that is known here */
export function originOf({
  template: id,
  templateVersion,
}: Pick<Book, "template" | "templateVersion">): Origin | undefined {
  const template = templateOf(id);
  if (!template) return undefined;
  const { version } = template.definition;
  const made =
    templateVersion === version ? "now" : Number(templateVersion) > Number(version) ? "later" : "earlier";
  return { template, made };
}

export function origin(book: Book): Finding[] {
  const found = originOf(book);
  if (!found) {
    return [
      {
        weight: "worth knowing",
        message: book.template
          ? `This workbook says that it was made from the template “${book.template}”, which is not known here. Only its errors were looked for.`
          : "This workbook was not made from one of our templates. Only its errors were looked for.",
        remedy:
          "Start a workbook from a template and copy the inputs over; or read on, if it is meant to be another.",
      },
    ];
  }
  const { template, made } = found;
  if (made === "now") return [];
  const { version } = template.definition;
  const message = `This workbook was made from version ${book.templateVersion || "unknown"} of “${template.title}”.`;
  return [
    {
      weight: "doubtful",
      message:
        made === "earlier"
          ? `${message} Its formulas were not compared with today's template.`
          : `${message} This is an older Rigsheet, which does not know that template. Only errors were looked for.`,
      expected: `Version ${version}.`,
      remedy:
        made === "earlier"
          ? "Start a workbook from today's template and copy the inputs over, block by block."
          : "Review it with a Rigsheet as new as the workbook.",
    },
  ];
}
