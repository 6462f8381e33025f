/** Writes a survey's outlets into the Rooms sheet, new ones and changes of those that are there: one request to find its names, one to see what is filled, one to write. */
import { HostTrouble } from "../../pane/host";
import { placedBlocks, placeIn } from "../../workbooks/placedBlocks";
import { planAddedRows, type AddedRows } from "../../workbooks/planAddedRows";
import { placeOutlets } from "../../workbooks/survey/placeOutlets";
import type { Template } from "../../workbooks/templates";
import { rooms } from "../../workbooks/multiRoom/names/rooms";
import { OF } from "../../workbooks/names";
import { troubles } from "./excelTrouble";
import { TEXT_FORMAT } from "../../workbooks/looks";
import { doneInWords, NO_CHANGES, type RowChanges } from "../../workbooks/survey/merge";
import { inWords, type SurveyRow } from "../../workbooks/survey/survey";
import type { BookValue } from "../../workbooks/book";
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

/** What is written into rows that are there: by column, the value of each row that changes; blank for one that is cleared. */
function writtenInto(
  { changed, cleared }: RowChanges,
  columns: RoomsBlock["columns"],
): Map<string, Map<number, BookValue>> {
  const written = new Map<string, Map<number, BookValue>>();
  const put = (key: string, offset: number, value: BookValue): void =>
    void written.set(key, (written.get(key) ?? new Map<number, BookValue>()).set(offset, value));
  for (const { offset, cells } of changed) for (const { key, now } of cells) put(key, offset, now ?? "");
  for (const { offset } of cleared) for (const key of columns.keys()) put(key, offset, "");
  return written;
}

/** Gives what was done, in a sentence or two. */
export const addingOutlets = (
  rows: readonly SurveyRow[],
  changes: RowChanges = NO_CHANGES,
): Change<PlannedOutlets, string> => ({
  plan: async (context) => {
    const loaded = factsOf(context.workbook);
    await context.sync();
    const facts = loaded();
    const known = knownTemplate(facts);
    const placeOf = placeIn(facts.names);
    const block = roomsBlock(known.template.definition, placeOf, rows, changes);
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
    const names = held.get(columns.get("outlet")!)!.formulas;
    // A name that is worked out is what its formula says, and that is not read here.
    const stands = (offset: number, outlet: string): boolean => {
      const held = String(names[offset]?.[0] ?? "");
      return held.startsWith("=") || held.replace(/^'/, "") === outlet;
    };
    const moved = [...changes.changed, ...changes.cleared].find(
      ({ offset, outlet }) => !stands(offset, outlet),
    );
    if (moved) throw new HostTrouble(troubles.outletMoved(moved.outlet, block.sheet));
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
    // In a cell of text all is text as it stands; what an apostrophe does there is not documented.
    const entered = (left: number, row: number, value: BookValue): BookValue => {
      // Rows that were just inserted look as the one above them.
      const format = held.get(left)!.formats[Math.min(row, bottom - 1) - top]![0];
      return value === "" || (typeof value === "string" && format === TEXT_FORMAT) ? value : asTyped(value);
    };
    for (const [key, values] of writtenInto(changes, columns)) {
      const left = columns.get(key)!;
      const [from, to] = [Math.min(...values.keys()), Math.max(...values.keys())];
      rowsOf(context, key, from, to - from + 1).formulas = Array.from(
        { length: to - from + 1 },
        (_, index) => {
          const value = values.get(from + index);
          return [value === undefined ? null : entered(left, top + from + index, value)];
        },
      );
    }
    if (quantity > 0) insertRows(context, grown, quantity);
    for (const key of rows.length > 0 ? keysOf(rows) : []) {
      const left = columns.get(key)!;
      rowsOf(context, key, first - top, rows.length).formulas = rows.map((row, index) => [
        row[key] === undefined ? null : entered(left, first + index, row[key]),
      ]);
    }
    context.workbook.worksheets.getItem(block.sheet).activate();
    const shown = rows.length > 0 ? first - top : (changes.changed[0] ?? changes.cleared[0])?.offset;
    if (shown !== undefined) rowsOf(context, "outlet", shown, 1).select();
    await context.sync();
    const from = rows.length > 0 ? `, from row ${first + 1} on` : "";
    const done =
      changes === NO_CHANGES
        ? `${inWords(rows.length, "outlet")} added to ${block.sheet}${from}.`
        : `${doneInWords(rows.length, changes)}.`;
    const more = quantity > 0 ? ` ${inWords(quantity, "row")} had to be added.` : "";
    return [`${done}${more}`, ...notes].join(" ");
  },
  takeBack: async (context, { template, block, grown, held, first, quantity }) => {
    if (quantity > 0) await takeRowsBack(context, template, grown, quantity);
    const { columns, top } = block;
    const back = (key: string, from: number, count: number): void => {
      rowsOf(context, key, from, count).formulas = held
        .get(columns.get(key)!)!
        .formulas.slice(from, from + count);
    };
    for (const [key, values] of writtenInto(changes, columns))
      for (const offset of values.keys()) back(key, offset, 1);
    const last = Math.min(first + rows.length, block.bottom) - 1;
    if (last >= first) for (const key of keysOf(rows)) back(key, first - top, last - first + 1);
    await context.sync();
  },
  left: ({ block, grown, first, quantity }) =>
    [
      ...(rows.length > 0
        ? [
            `on ${block.sheet}, outlets of the survey may stand from row ${first + 1} to row ${first + rows.length}`,
          ]
        : []),
      ...(changes.changed.length + changes.cleared.length > 0
        ? [
            `on ${block.sheet}, ${inWords(changes.changed.length + changes.cleared.length, "outlet")} may be as the survey has ${changes.changed.length + changes.cleared.length === 1 ? "it" : "them"}`,
          ]
        : []),
      ...(quantity > 0 ? [rowsLeft(grown, quantity)] : []),
    ].join("; "),
  words: ({ grown }) => rowWords(grown),
});
