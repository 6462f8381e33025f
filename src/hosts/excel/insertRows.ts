/** Rows of a plan put into the open workbook, and taken out again. */
import { placedBlocks, placeIn } from "../../workbooks/placedBlocks";
import type { AddedRows } from "../../workbooks/planAddedRows";
import type { Template } from "../../workbooks/templates";
import { troubles, type OwnWords } from "./excelTrouble";
import { liftGuards, loadGuards, setGuards } from "./guards";
import { factsOf } from "./readWorkbook";

/** What is in the way of rows, or has to be said with them. */
export interface RowsAhead {
  /** Sheets that are protected and take none. */
  readonly refusing: readonly string[];
  /** Said after what was done, in sentences. */
  readonly notes: readonly string[];
}

/** Loads what stands in the way of a plan; after the next sync the answer can be asked for. */
export function loadRowsAhead(
  { workbook, application }: Excel.RequestContext,
  { heading, growing }: AddedRows,
): () => RowsAhead {
  application.load("calculationMode");
  const asked = [...new Set(growing.map(({ sheet }) => sheet))].map((sheet) => {
    const { protection, autoFilter } = workbook.worksheets.getItem(sheet);
    protection.load("protected,options");
    autoFilter.load("isDataFiltered");
    return { sheet, protection, autoFilter };
  });
  const heights = new Set(growing.map(({ zone }) => zone.bottom - zone.top));
  return () => ({
    refusing: asked.flatMap(({ sheet, protection }) =>
      protection.protected && !protection.options.allowInsertRows ? [sheet] : [],
    ),
    notes: [
      ...(heights.size > 1 ? [troubles.noClosingRow(heading)] : []),
      ...(asked.some(({ autoFilter }) => autoFilter.isDataFiltered) ? [troubles.mayBeHidden()] : []),
      ...(application.calculationMode === "Manual" ? [troubles.manual()] : []),
    ],
  });
}

/** The sheets of blocks that have to grow with a plan's and have lost their cells' names. */
export function lostWith({ growing }: AddedRows, { definition }: Template): string[] {
  const root = growing[0]!.block.mirrors ?? growing[0]!.block.name;
  const there = new Set(growing.map(({ block }) => block.name));
  return definition.sheets.flatMap(({ name, parts }) =>
    parts.some(
      (part) =>
        part.kind === "block" && (part.name === root || part.mirrors === root) && !there.has(part.name),
    )
      ? [name]
      : [],
  );
}

/** The name of a block's first column, by which Excel itself knows where the block ends when the rows come. */
const endOf = ({ block }: AddedRows["growing"][number]): string => `${block.name}_${block.columns[0]!.key}`;

/** Queues the rows of a plan; they are there after the next sync. What others insert meanwhile moves them. */
export function insertRows({ workbook }: Excel.RequestContext, { growing }: AddedRows, count: number): void {
  for (const one of growing) {
    workbook.names
      .getItem(endOf(one))
      .getRange()
      .getLastRow()
      .getResizedRange(count - 1, 0)
      .getEntireRow()
      .insert("Down");
  }
}

/** What of a plan's rows may be left, in words. */
export const rowsLeft = ({ growing }: AddedRows, count: number): string =>
  `on ${growing
    .map(({ sheet, zone }) => `${sheet} rows ${zone.bottom + 1} to ${zone.bottom + count}`)
    .join(" and on ")} may stand ${count} rows too many`;

/** What Excel's refusals of rows mean. */
export const rowWords = ({ growing }: AddedRows): OwnWords => ({
  AccessDenied: () => troubles.noRows([...new Set(growing.map(({ sheet }) => sheet))]),
  InvalidOperation: (message) =>
    troubles.rowsBlocked(
      growing.map(({ sheet, zone }) => `row ${zone.bottom + 1} of “${sheet}”`),
      message.replace(/\.$/, ""),
    ),
});

/** Takes the rows of a plan out of the blocks that have grown by them, and leaves the others. */
export async function takeRowsBack(
  context: Excel.RequestContext,
  { definition }: Template,
  { growing }: AddedRows,
  count: number,
): Promise<void> {
  const loaded = factsOf(context.workbook);
  const protectedOnes = loadGuards(
    context,
    growing.map(({ sheet }) => sheet),
  );
  await context.sync();
  // A protected sheet takes rows and gives none back.
  const guards = protectedOnes();
  const now = placedBlocks(definition, placeIn(loaded().names));
  const grown = growing.filter((before) => {
    const one = now.find(({ block }) => block.name === before.block.name);
    return one && one.zone.bottom - one.zone.top === before.zone.bottom - before.zone.top + count;
  });
  // Blocks of one sheet move each other, so each is looked for where it stands now.
  const placed = grown.map(({ block }) => now.find((one) => one.block.name === block.name)!);
  const lifted = guards.filter(({ sheet }) => placed.some((one) => one.sheet === sheet));
  liftGuards(context, lifted);
  for (const { sheet, zone } of placed.sort((a, b) => b.zone.bottom - a.zone.bottom)) {
    context.workbook.worksheets
      .getItem(sheet)
      .getRange(`${zone.bottom + 1 - count}:${zone.bottom}`)
      .delete("Up");
  }
  setGuards(context, lifted);
  await context.sync();
}
