/** Where rows that are pasted or typed at a place of a block belong, and how many must be added for them. */
import { familyOf, type PlacedBlock } from "../../../workbooks/placedBlocks";
import type { GridModel } from "../../grid/library";
import { additionsTo } from "./blocksOnGrid";
import type { GridZone, RowAddition } from "./libraryTypes";

export interface RoomForRows {
  readonly block: PlacedBlock["block"];
  /** 0-based row that the first of them goes into. */
  readonly top: number;
  /** The block has so many from there on. */
  readonly rows: number;
  /** So many must be added. */
  readonly quantity: number;
  /** Of the block and of those that mirror it. */
  readonly additions: readonly RowAddition[];
}

/**
 * @param blocks of the open workbook
 * @param sheetId the sheet with the place
 * @param zone as many rows and columns as there are to enter, from the place on
 * @returns undefined for a place that is in no block's inputs, nor in the thin row above or below them, nor under that
 */
export function roomForRows(
  getters: GridModel["getters"],
  blocks: readonly PlacedBlock[],
  sheetId: string,
  { top, bottom, left, right }: GridZone,
): RoomForRows | undefined {
  const chosen = blocks.find(
    (one) => one.sheet === sheetId && one.zone.top <= top && top <= one.zone.bottom + 1,
  );
  if (!chosen || !takesInputs(getters, chosen, left, right)) return undefined;
  const { zone, block } = chosen;
  // The thin rows hold nothing, and what is put under the lower one is meant for the block.
  const first = Math.min(Math.max(top, zone.top + 1), zone.bottom);
  const rows = zone.bottom - first;
  const quantity = Math.max(0, bottom - top + 1 - rows);
  return {
    block,
    top: first,
    rows,
    quantity,
    additions: additionsTo(familyOf(blocks, chosen)),
  };
}

const takesInputs = (
  getters: GridModel["getters"],
  { block }: PlacedBlock,
  left: number,
  right: number,
): boolean =>
  block.columns.some(({ key, input }) => {
    const zone = input && getters.getNamedRange(`${block.name}_${key}`)?.range.zone;
    return zone !== undefined && left <= zone.right && zone.left <= right;
  });
