/** Where the open workbook's blocks stand now, from the thin row above their data to their closing row. */
import type { Block, WorkbookDefinition } from "../../../workbooks/definition";
import type { GridModel } from "../../grid/library";
import type { GridZone } from "./libraryTypes";

export interface PlacedBlock {
  readonly block: Block;
  readonly sheetId: string;
  readonly zone: GridZone;
}

/** @returns none where the workbook is not ours, or has lost the name of a block's first column */
export function placedBlocks(
  { getters }: Pick<GridModel, "getters">,
  definition: WorkbookDefinition | undefined,
): PlacedBlock[] {
  return (definition?.sheets ?? [])
    .flatMap(({ parts }) => parts)
    .flatMap((block) => {
      if (block.kind !== "block") return [];
      const range = getters.getNamedRange(`${block.name}_${block.columns[0]?.key}`)?.range;
      return range ? [{ block, sheetId: range.sheetId, zone: range.zone }] : [];
    });
}

/** A block, the one that it mirrors, and all that mirror that: they have the same rows. */
export function familyOf(blocks: readonly PlacedBlock[], { block }: PlacedBlock): PlacedBlock[] {
  const root = block.mirrors ?? block.name;
  return blocks.filter((one) => one.block.name === root || one.block.mirrors === root);
}
