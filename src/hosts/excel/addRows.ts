/** Adds rows to the block of the chosen cell and to those that mirror it. */
import { HostTrouble } from "../../pane/host";
import { parseAddress } from "../../workbooks/address";
import { planAddedRows } from "../../workbooks/planAddedRows";
import { templateOf, type Template } from "../../workbooks/templates";
import { troubles } from "./excelTrouble";
import { factsOf, type WorkbookFacts } from "./readWorkbook";
import { selectedCell } from "./selectedCell";

const MOST_ROWS = 1_000;

/** @returns what was done, in a sentence or two */
export async function addRows(context: Excel.RequestContext, count: number): Promise<string> {
  if (!Number.isInteger(count) || count < 1 || count > MOST_ROWS) {
    throw new HostTrouble(troubles.badCount(count, MOST_ROWS));
  }
  const loaded = factsOf(context.workbook);
  const { sheet, at } = await selectedCell(context);
  const facts = loaded();
  const { template, note } = knownTemplate(facts);
  const plan = planAddedRows(template.definition, facts.names, sheet, parseAddress(at)!.row);
  if (typeof plan === "string") throw new HostTrouble(plan);
  // The lowest first: what is inserted there leaves the rows above where they are.
  for (const insert of [...plan.inserts].sort((a, b) => b.row - a.row)) {
    context.workbook.worksheets
      .getItem(insert.sheet)
      .getRange(`${insert.row + 1}:${insert.row + count}`)
      .insert("Down");
  }
  await context.sync();
  const others = new Set(plan.inserts.map((insert) => insert.sheet));
  others.delete(sheet);
  const mirrored = others.size > 0 ? ` ${[...others].join(", ")} grew with it.` : "";
  const done = `${count} ${count === 1 ? "row" : "rows"} added at the end of ${plan.heading}.${mirrored}`;
  return note ? `${done} ${note}` : done;
}

/** The template of a workbook of ours, with a note where it is an older version of it. */
function knownTemplate({ template: id, templateVersion }: WorkbookFacts): {
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
