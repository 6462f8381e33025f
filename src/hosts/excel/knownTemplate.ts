import { HostTrouble } from "../../pane/host";
import { templateOf, type Template } from "../../workbooks/templates";
import { troubles } from "./excelTrouble";
import type { WorkbookFacts } from "./readWorkbook";

/** The template of a workbook of ours, with a note where it is an older version of it. */
export function knownTemplate({ template: id, templateVersion }: WorkbookFacts): {
  readonly template: Template;
  readonly note?: string;
} {
  if (id === "") throw new HostTrouble(troubles.notOurs());
  const template = templateOf(id);
  if (!template) throw new HostTrouble(troubles.unknownTemplate(id));
  const { version } = template.definition;
  if (templateVersion === version) return { template };
  if (Number(templateVersion) > Number(version)) {
    throw new HostTrouble(troubles.newerTemplate(templateVersion, version));
  }
  return { template, note: troubles.olderTemplate(templateVersion, version) };
}
