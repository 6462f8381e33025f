/** Adds rows to the block of the chosen cell and to those that mirror it. */
import { HostTrouble } from "../../pane/host";
import { parseAddress } from "../../formula/address";
import { placedBlocks, placeIn } from "../../workbooks/placedBlocks";
import { planAddedRows, type AddedRows } from "../../workbooks/planAddedRows";
import type { Template } from "../../workbooks/templates";
import { troubles } from "./excelTrouble";
import type { Change } from "./inExcel";
import { insertRows, loadRowsAhead, lostWith, rowsLeft, rowWords, takeRowsBack } from "./insertRows";
import { knownTemplate } from "./knownTemplate";
import { factsOf } from "./readWorkbook";
import { selectedCell } from "./selectedCell";

const MOST_ROWS = 1_000;

interface PlannedRows {
  readonly template: Template;
  readonly sheet: string;
  readonly rows: AddedRows;
  readonly notes: readonly string[];
}

/** Gives what was done, in a sentence or two. */
export const addingRows = (count: number): Change<PlannedRows, string> => ({
  plan: async (context) => {
    if (!Number.isInteger(count) || count < 1 || count > MOST_ROWS) {
      throw new HostTrouble(troubles.badCount(count, MOST_ROWS));
    }
    const loaded = factsOf(context.workbook);
    const { sheet, at } = await selectedCell(context);
    const facts = loaded();
    const known = knownTemplate(facts);
    const blocks = placedBlocks(known.template.definition, placeIn(facts.names));
    const rows = planAddedRows(blocks, sheet, parseAddress(at)!.row);
    if (typeof rows === "string") throw new HostTrouble(rows);
    const lost = lostWith(rows, known.template);
    if (lost.length > 0) throw new HostTrouble(troubles.lostBlocks(lost));
    const ahead = loadRowsAhead(context, rows);
    await context.sync();
    const { refusing, notes } = ahead();
    if (refusing.length > 0) throw new HostTrouble(troubles.noRows(refusing));
    const { template, note } = known;
    return { template, sheet, rows, notes: [...notes, ...(note ? [note] : [])] };
  },
  carryOut: async (context, { sheet, rows, notes }) => {
    insertRows(context, rows, count);
    await context.sync();
    const others = new Set(rows.growing.map((block) => block.sheet));
    others.delete(sheet);
    const mirrored = others.size > 0 ? ` ${[...others].join(" and ")} grew with it.` : "";
    const done = `${count} ${count === 1 ? "row" : "rows"} added at the end of ${rows.heading}.${mirrored}`;
    return [done, ...notes].join(" ");
  },
  takeBack: (context, { template, rows }) => takeRowsBack(context, template, rows, count),
  left: ({ rows }) => rowsLeft(rows, count),
  words: ({ rows }) => rowWords(rows),
});
