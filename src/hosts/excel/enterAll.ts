/** Types entries into the open workbook, with rows added to its blocks where they are wanting. */
import { HostTrouble } from "../../pane/host";
import { placeEntries, type Entry } from "../../standards/entries";
import { TEXT_FORMAT } from "../../workbooks/looks";
import { placedBlocks, placeIn } from "../../workbooks/placedBlocks";
import type { AddedRows } from "../../workbooks/planAddedRows";
import { inWords } from "../../workbooks/survey/survey";
import type { Template } from "../../workbooks/templates";
import { asTyped } from "./asTyped";
import { troubles } from "./excelTrouble";
import type { Change } from "./inExcel";
import { insertRows, loadRowsAhead, lostWith, rowsLeft, rowWords, takeRowsBack } from "./insertRows";
import { knownTemplate } from "./knownTemplate";
import { factsOf } from "./readWorkbook";

interface Planned {
  readonly template: Template;
  readonly notes: readonly string[];
  /** For each block that grows, with its mirrors. */
  readonly grown: readonly { readonly rows: AddedRows; readonly quantity: number }[];
  /** Of each entry's cell before: what it held, whether it is one of text. Of a row that is added, nothing. */
  readonly held: readonly ({ readonly formula: unknown; readonly isText: boolean } | undefined)[];
  readonly at: readonly Entry[];
}

/** By its name, which moves with the rows that are added above it. */
const cellOf = ({ workbook }: Excel.RequestContext, { name, index }: Entry): Excel.Range =>
  workbook.names
    .getItem(name)
    .getRange()
    .getCell(index === undefined ? 0 : index + 1, 0);

/** What a person is told of it. */
export interface EnteredWords {
  readonly done: string;
  /** Of cells, where it was left half done. */
  readonly left: string;
}

const OF_STANDARDS: EnteredWords = {
  done: "The job is up to date with the standards; its Log says what was taken.",
  left: "may stand as the standards have them",
};

/** Gives what was done, in a sentence or two. */
export const enteringAll = (
  entries: readonly Entry[],
  said: EnteredWords = OF_STANDARDS,
): Change<Planned, string> => ({
  plan: async (context) => {
    const loaded = factsOf(context.workbook);
    await context.sync();
    const facts = loaded();
    const { template, note } = knownTemplate(facts);
    const placeOf = placeIn(facts.names);
    const blocks = placedBlocks(template.definition, placeOf);
    const placed = placeEntries(entries, blocks, placeOf);
    if (typeof placed === "string") throw new HostTrouble(placed);
    const masters = placed.grown.filter(({ placed: { block } }) => !block.mirrors);
    const grown = masters.map(({ placed: { block }, quantity }) => ({
      quantity,
      rows: {
        heading: block.heading,
        growing: placed.grown
          .map((one) => one.placed)
          .filter((one) => one.block.name === block.name || one.block.mirrors === block.name),
      },
    }));
    const ahead = grown.map(({ rows }) => loadRowsAhead(context, rows));
    const ranges = entries.map((entry) => {
      const { zone } = placeOf(entry.name)!;
      if (entry.index !== undefined && zone.top + entry.index + 1 >= zone.bottom) return undefined;
      const range = cellOf(context, entry);
      range.load("formulas, numberFormat");
      return range;
    });
    await context.sync();
    const notes = ahead.flatMap((one, index) => {
      const { refusing, notes: said } = one();
      const { rows } = grown[index]!;
      const lost = lostWith(rows, template);
      if (lost.length > 0) throw new HostTrouble(troubles.lostBlocks(lost));
      if (refusing.length > 0) throw new HostTrouble(`${troubles.noRows(refusing)} Nothing was written.`);
      return said;
    });
    return {
      template,
      notes: [...new Set([...notes, ...(note ? [note] : [])])],
      grown,
      at: entries,
      held: ranges.map(
        (range) =>
          range && {
            formula: (range.formulas as unknown[][])[0]![0],
            isText: (range.numberFormat as unknown[][])[0]![0] === TEXT_FORMAT,
          },
      ),
    };
  },
  carryOut: async (context, { at, grown, held, notes }) => {
    for (const { rows, quantity } of grown) insertRows(context, rows, quantity);
    at.forEach((entry, index) => {
      const { value } = entry;
      // In a cell of text all is text as it stands; a row that is added looks as the one above it.
      const isText = (held[index] ?? lookOfColumn(at, held, entry))?.isText === true;
      cellOf(context, entry).formulas = [
        [value === undefined ? "" : typeof value === "string" && isText ? value : asTyped(value)],
      ];
    });
    await context.sync();
    return [said.done, ...notes].join(" ");
  },
  takeBack: async (context, { template, at, grown, held }) => {
    for (const { rows, quantity } of grown) await takeRowsBack(context, template, rows, quantity);
    at.forEach((entry, index) => {
      const before = held[index];
      if (before) cellOf(context, entry).formulas = [[before.formula]];
    });
    await context.sync();
  },
  left: ({ grown, at }) =>
    [
      `${inWords(at.length, "cell")} ${said.left}`,
      ...grown.map(({ rows, quantity }) => rowsLeft(rows, quantity)),
    ].join("; "),
  words: ({ grown }) => (grown[0] ? rowWords(grown[0].rows) : {}),
});

/** Another cell of its column that was there before. */
const lookOfColumn = (
  at: readonly Entry[],
  held: Planned["held"],
  { name }: Entry,
): Planned["held"][number] => held.find((one, index) => one && at[index]!.name === name);
