/** What an input field or a block of a template is called on its sheet. */
import type { WorkbookDefinition } from "../workbooks/definition";

/** @returns with its sheet: “Site, Tax is on”; the name itself where the template has no such thing */
export function labelOf({ sheets }: WorkbookDefinition, name: string): string {
  for (const sheet of sheets)
    for (const part of sheet.parts) {
      if (part.kind === "block" && part.name === name) return `${sheet.name}, ${part.heading}`;
      const field = part.kind === "fields" && part.fields.find((one) => one.name === name);
      if (field) return `${sheet.name}, ${field.label}`;
    }
  return name;
}
