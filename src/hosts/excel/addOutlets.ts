/** Writes a survey's outlets into the Rooms sheet: one request to find its names, one to see what is filled, one to write. */
import { HostTrouble } from "../../pane/host";
import { placedBlocks, placeIn } from "../../workbooks/placedBlocks";
import { planAddedRows, type AddedRows } from "../../workbooks/planAddedRows";
import { placeOutlets } from "../../workbooks/survey/placeOutlets";
import type { Template } from "../../workbooks/templates";
import { rooms } from "../../workbooks/multiRoom/names/rooms";
import { OF } from "../../workbooks/names";
import { troubles } from "./excelTrouble";
import { TEXT_FORMAT } from "../../workbooks/looks";
import { inWords, type SurveyRow } from "../../workbooks/survey/readSurvey";
import { roomsBlock, type RoomsBlock } from "../../workbooks/survey/roomsBlock";
import { asTyped } from "./asTyped";
import type { Change } from "./inExcel";
import { insertRows, loadRowsAhead, lostWith, rowsLeft, rowWords, takeRowsBack } from "./insertRows";
import { knownTemplate } from "./knownTemplate";
import { factsOf } from "./readWorkbook";

interface PlannedOutlets {
  readonly template: Template;
  readonly notes: readonly string[];
  readonly block: RoomsBlock;
  readonly grown: AddedRows;
  /** 0-based row of the first. */
  readonly first: number;
  /** Rows that have to be added. */
  readonly quantity: number;
  /** By column: what it held, a formula that shows nothing yet among it, and how it is written. */
  readonly held: ReadonlyMap<number, { readonly formulas: unknown[][]; readonly formats: unknown[][] }>;
}

/** Rows of an input's column, counted from the thin row above: where that stands is Excel's to know. */
const rowsOf = ({ workbook }: Excel.RequestContext, key: string, from: number, count: number): Excel.Range =>
  workbook.names
    .getItem(`${rooms[OF].name}_${key}`)
    .getRange()
    .getCell(from, 0)
    .getResizedRange(count - 1, 0);

const keysOf = (rows: readonly SurveyRow[]): Set<string> => new Set(rows.flatMap((row) => Object.keys(row)));

/** Gives what was done, in a sentence or two. */
export const addingOutlets = (rows: readonly SurveyRow[]): Change<PlannedOutlets, string> => ({
  plan: async (context) => {
    const loaded = factsOf(context.workbook);
    await context.sync();
    const facts = loaded();
    const known = knownTemplate(facts);
    const placeOf = placeIn(facts.names);
    const block = roomsBlock(known.template.definition, placeOf, rows);
    if (typeof block === "string") throw new HostTrouble(block);
    const { columns, top, bottom } = block;
    const ranges = new Map(
      [...columns].map(([key, left]) => [left, rowsOf(context, key, 0, bottom - top + 1)]),
    );
    for (const range of ranges.values()) range.load("formulas, numberFormat");
    const grown = planAddedRows(placedBlocks(known.template.definition, placeOf), block.sheet, bottom);
    if (typeof grown === "string") throw new HostTrouble(grown);
    const ahead = loadRowsAhead(context, grown);
    await context.sync();
    const held = new Map(
      [...ranges].map(([left, { formulas, numberFormat }]) => [left, { formulas, formats: numberFormat }]),
    );
    const filled = (row: number, left: number): boolean => held.get(left)!.formulas[row - top]![0] !== "";
    const places = placeOutlets(block, filled, rows.length);
    const { refusing, notes } = ahead();
    const { template, note } = known;
    if (places.quantity > 0) {
      const lost = lostWith(grown, template);
      if (lost.length > 0) throw new HostTrouble(troubles.lostBlocks(lost));
      const free = rows.length - places.quantity;
      if (refusing.length > 0)
        throw new HostTrouble(troubles.noRoom(rows.length, free, block.sheet, refusing));
    }
    return { template, block, grown, held, ...places, notes: [...notes, ...(note ? [note] : [])] };
  },
  carryOut: async (context, { block, grown, held, first, quantity, notes }) => {
    const { columns, top, bottom } = block;
    if (quantity > 0) insertRows(context, grown, quantity);
    for (const key of keysOf(rows)) {
      const left = columns.get(key)!;
      const { formats } = held.get(left)!;
      // Rows that were just inserted look as the one above them.
      const isText = (row: number): boolean => formats[Math.min(row, bottom - 1) - top]![0] === TEXT_FORMAT;
      rowsOf(context, key, first - top, rows.length).formulas = rows.map((row, index) => {
        const value = row[key];
        if (value === undefined) return [null];
        // In a cell of text all is text as it stands; what an apostrophe does there is not documented.
        return [typeof value === "string" && isText(first + index) ? value : asTyped(value)];
      });
    }
    context.workbook.worksheets.getItem(block.sheet).activate();
    rowsOf(context, "outlet", first - top, 1).select();
    await context.sync();
    const done = `${inWords(rows.length, "outlet")} added to ${block.sheet}, from row ${first + 1} on.`;
    const more = quantity > 0 ? ` ${inWords(quantity, "row")} had to be added.` : "";
    return [`${done}${more}`, ...notes].join(" ");
  },
  takeBack: async (context, { template, block, grown, held, first, quantity }) => {
    if (quantity > 0) await takeRowsBack(context, template, grown, quantity);
    const last = Math.min(first + rows.length, block.bottom) - 1;
    if (last < first) return;
    for (const key of keysOf(rows)) {
      rowsOf(context, key, first - block.top, last - first + 1).formulas = held
        .get(block.columns.get(key)!)!
        .formulas.slice(first - block.top, last + 1 - block.top);
    }
    await context.sync();
  },
  left: ({ block, grown, first, quantity }) =>
    [
      `on ${block.sheet}, outlets of the survey may stand from row ${first + 1} to row ${first + rows.length}`,
      ...(quantity > 0 ? [rowsLeft(grown, quantity)] : []),
    ].join("; "),
  words: ({ grown }) => rowWords(grown),
});
