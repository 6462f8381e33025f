import { familyOf, type PlacedBlock } from "./placedBlocks";

export interface AddedRows {
  /** The block's heading, for the person who asked. */
  readonly heading: string;
  /**
   * The blocks that grow: the one of the chosen cell and those with the same rows. In each, new rows go above its
   * closing row, so that its names, rules and marks stretch by themselves, and whatever refers to a filled row goes
   * on referring to it.
   */
  readonly growing: readonly PlacedBlock[];
}

/**
 * Where rows must be inserted so that a block, and every block that mirrors it, grows.
 *
 * @param blocks as they stand now
 * @param sheet the sheet on which a cell is chosen, as the blocks name it
 * @param row the chosen cell's 0-based row
 * @returns the plan, or a sentence that says why there is none
 */
export function planAddedRows(
  blocks: readonly PlacedBlock[],
  sheet: string,
  row: number,
): AddedRows | string {
  const chosen = blocks.find((one) => one.sheet === sheet && one.zone.top <= row && row <= one.zone.bottom);
  if (!chosen)
    return "The chosen cell lies in no block of rows. Choose a cell between the two thin grey rows of a block.";
  return { heading: chosen.block.heading, growing: familyOf(blocks, chosen) };
}
