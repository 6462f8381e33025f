/** What a file says of itself, by which a workbook of ours is known again. */
import type { WorkbookProperties } from "hucre";
import type { Book } from "../../workbooks/book";
import { COPY_NAMES } from "./copy/copyNames";
import type { Freezing } from "./writtenSheet";
import { fromStoredText, toStoredText } from "./storedText";

/** Custom properties of the file, in Excel's own hands too. */
export const TEMPLATE = "RigsheetTemplate";
export const TEMPLATE_VERSION = "RigsheetTemplateVersion";
/** A fixed instant, so that the same book gives the same bytes; the job's own dates are in its cells. */
const WRITTEN = new Date(Date.UTC(2026, 0, 1));

export function toProperties(book: Book, freezing: Freezing): WorkbookProperties {
  const { title, template, templateVersion } = book;
  const description = freezing.all
    ? `${COPY_NAMES.sealed}.`
    : freezing.ours
      ? `${COPY_NAMES.office}: the cells that call Rigsheet are frozen to their values; all other formulas are alive.`
      : undefined;
  return {
    creator: "Rigsheet",
    created: WRITTEN,
    modified: WRITTEN,
    ...(title && { title: toStoredText(title, "The title") }),
    ...(description && { description }),
    custom: {
      ...(template && { [TEMPLATE]: toStoredText(template, "The template's name") }),
      ...(templateVersion && { [TEMPLATE_VERSION]: toStoredText(templateVersion, "The template's version") }),
    },
  };
}

export function fromProperties(
  properties: WorkbookProperties | undefined,
): Pick<Book, "title" | "template" | "templateVersion"> {
  const own = (key: string): string => {
    const value = properties?.custom?.[key];
    return typeof value === "string" ? fromStoredText(value) : "";
  };
  return {
    title: fromStoredText(properties?.title ?? ""),
    template: own(TEMPLATE),
    templateVersion: own(TEMPLATE_VERSION),
  };
}
