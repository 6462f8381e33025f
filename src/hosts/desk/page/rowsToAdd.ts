/**
 * Where "Add rows" inserts: into the block of the selected cell and into the
 * blocks whose rows stand for its rows. New rows go between a block's last data
 * row and its closing row, so that its names, rules and marks all stretch by
 * themselves, and whatever refers to a filled row goes on referring to it.
 */
import type { WorkbookDefinition } from "../../../workbooks/definition";
import type { GridModel } from "../../grid/library";
import type { GridPosition, RowAddition } from "./libraryTypes";
import { familyOf, placedBlocks } from "./placedBlocks";

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
  return familyOf(blocks, chosen).map(({ block, zone }) => ({
    block: block.name,
    offset: zone.bottom - zone.top,
  }));
}
