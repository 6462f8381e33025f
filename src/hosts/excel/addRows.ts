/** Adds rows to the block of the chosen cell and to those that mirror it. */
import { HostTrouble } from "../../pane/host";
import { parseAddress } from "../../formula/address";
import { placedBlocks, placeIn } from "../../workbooks/placedBlocks";
import { planAddedRows } from "../../workbooks/planAddedRows";
import { troubles } from "./excelTrouble";
import { insertRows } from "./insertRows";
import { knownTemplate } from "./knownTemplate";
import { factsOf } from "./readWorkbook";
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
  const blocks = placedBlocks(template.definition, placeIn(facts.names));
  const plan = planAddedRows(blocks, sheet, parseAddress(at)!.row);
  if (typeof plan === "string") throw new HostTrouble(plan);
  insertRows(context, plan, count);
  await context.sync();
  const others = new Set(plan.growing.map((block) => block.sheet));
  others.delete(sheet);
  const mirrored = others.size > 0 ? ` ${[...others].join(", ")} grew with it.` : "";
  const done = `${count} ${count === 1 ? "row" : "rows"} added at the end of ${plan.heading}.${mirrored}`;
  return note ? `${done} ${note}` : done;
}
