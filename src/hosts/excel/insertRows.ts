/** Rows of a plan put into the open workbook, and taken out again. */
import { HostTrouble } from "../../pane/host";
import { placedBlocks, placeIn } from "../../workbooks/placedBlocks";
import type { AddedRows } from "../../workbooks/planAddedRows";
import type { Template } from "../../workbooks/templates";
import { troubles } from "./excelTrouble";
import { liftGuards, loadGuards, setGuards } from "./guards";
import { factsOf } from "./readWorkbook";

/**
 * Loads whether the sheets of a plan take rows; after the next sync the answer can be asked for.
 *
 * @returns throws where one is protected against it: the others would have grown by then
 */
export function loadMayInsert({ workbook }: Excel.RequestContext, { growing }: AddedRows): () => void {
  const guards = [...new Set(growing.map(({ sheet }) => sheet))].map((sheet) => {
    const { protection } = workbook.worksheets.getItem(sheet);
    protection.load("protected,options");
    return protection;
  });
  return () => {
    if (guards.some((guard) => guard.protected && !guard.options.allowInsertRows))
      throw new HostTrouble(troubles.protectedSheet());
  };
}

/** Queues the rows of a plan; they are there after the next sync. */
export function insertRows({ workbook }: Excel.RequestContext, { growing }: AddedRows, count: number): void {
  // The lowest first: what is inserted there leaves the rows above where they are.
  for (const { sheet, zone } of [...growing].sort((a, b) => b.zone.bottom - a.zone.bottom)) {
    workbook.worksheets
      .getItem(sheet)
      .getRange(`${zone.bottom + 1}:${zone.bottom + count}`)
      .insert("Down");
  }
}

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
