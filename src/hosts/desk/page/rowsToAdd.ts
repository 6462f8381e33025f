/**
 * Where "Add rows" inserts: into the block of the selected cell and into the
 * blocks whose rows stand for its rows. New rows go above a block's last data
 * row, so that its names, rules and marks all stretch by themselves.
 */
import type { WorkbookDefinition } from "../../../workbooks/definition";
import type { GridModel } from "../../grid/library";
import type { GridPosition, RowAddition } from "./libraryTypes";
import { placedBlocks } from "./placedBlocks";

/**
 * @param definition the open workbook's template; undefined for a workbook that is not ours
 * @returns nothing where the selected cell lies in no block
 */
export function rowsToAdd(
  model: GridModel,
  definition: WorkbookDefinition | undefined,
  place: GridPosition,
): RowAddition[] {
  const blocks = placedBlocks(model, definition);
  const chosen = blocks.find(
    ({ sheetId, zone }) => sheetId === place.sheetId && zone.top <= place.row && place.row <= zone.bottom,
  );
  if (!chosen) return [];
  const root = chosen.block.mirrors ?? chosen.block.name;
  return (
    blocks
      .filter(({ block }) => block.name === root || block.mirrors === root)
      // The lower one first: its insertion leaves the rows above where they are.
      .sort((a, b) => b.zone.bottom - a.zone.bottom)
      // Never above the thin row with the formulas, should every row below it be gone.
      .map(({ sheetId, zone }) => ({ sheetId, lastRow: Math.max(zone.bottom - 1, zone.top + 1) }))
  );
}
