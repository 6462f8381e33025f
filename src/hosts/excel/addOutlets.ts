/** Writes a survey's outlets into the Rooms sheet: one request to find its names, one to see what is filled, one to write. */
import { HostTrouble } from "../../pane/host";
import { rangeOf } from "../../formula/address";
import { placedBlocks, placeIn } from "../../workbooks/placedBlocks";
import { planAddedRows } from "../../workbooks/planAddedRows";
import { placeOutlets } from "../../workbooks/survey/placeOutlets";
import { TEXT_FORMAT } from "../../workbooks/looks";
import { inWords, type SurveyRow } from "../../workbooks/survey/readSurvey";
import { roomsBlock } from "../../workbooks/survey/roomsBlock";
import { asTyped } from "./asTyped";
import { insertRows } from "./insertRows";
import { knownTemplate } from "./knownTemplate";
import { factsOf } from "./readWorkbook";

/** @returns what was done, in a sentence or two */
export async function addOutlets(context: Excel.RequestContext, rows: readonly SurveyRow[]): Promise<string> {
  const loaded = factsOf(context.workbook);
  await context.sync();
  const facts = loaded();
  const { template, note } = knownTemplate(facts);
  const placeOf = placeIn(facts.names);
  const block = roomsBlock(template.definition, placeOf, rows);
  if (typeof block === "string") throw new HostTrouble(block);
  const { columns, top, bottom } = block;
  const sheet = context.workbook.worksheets.getItem(block.sheet);
  const column = (left: number, from: number, to: number): Excel.Range =>
    sheet.getRange(rangeOf({ top: from, left, bottom: to, right: left }));

  const held = new Map([...columns.values()].map((left) => [left, column(left, top, bottom)]));
  // A formula that shows nothing yet is a person's all the same.
  for (const range of held.values()) range.load("formulas, numberFormat");
  await context.sync();
  const filled = (row: number, left: number): boolean => held.get(left)!.formulas[row - top]![0] !== "";
  const { first, quantity } = placeOutlets(block, filled, rows.length);

  const plan = planAddedRows(placedBlocks(template.definition, placeOf), block.sheet, bottom);
  if (typeof plan === "string") throw new HostTrouble(plan);
  if (quantity > 0) insertRows(context, plan, quantity);
  for (const key of new Set(rows.flatMap((row) => Object.keys(row)))) {
    const left = columns.get(key)!;
    const formats = held.get(left)!.numberFormat;
    // Rows that were just inserted look as the one above them.
    const isText = (row: number): boolean => formats[Math.min(row, bottom - 1) - top]![0] === TEXT_FORMAT;
    column(left, first, first + rows.length - 1).formulas = rows.map((row, index) => {
      const value = row[key];
      if (value === undefined) return [null];
      // In a cell of text all is text as it stands; what an apostrophe does there is not documented.
      return [typeof value === "string" && isText(first + index) ? value : asTyped(value)];
    });
  }
  sheet.activate();
  column(columns.get("outlet")!, first, first).select();
  await context.sync();
  const done = `${inWords(rows.length, "outlet")} added to ${block.sheet}, from row ${first + 1} on.`;
  const grown = quantity > 0 ? ` ${inWords(quantity, "row")} had to be added.` : "";
  return [`${done}${grown}`, ...(note ? [note] : [])].join(" ");
}
