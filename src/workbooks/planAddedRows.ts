/** Where rows must be inserted so that a block, and every block that mirrors it, grows. */
import { parseRange } from "../formula/address";
import type { BookName } from "./book";
import type { Block, WorkbookDefinition } from "./definition";

export interface AddedRows {
  /** The block's heading, for the person who asked. */
  readonly heading: string;
  /** Insert above this 0-based row of each sheet: the thin row that closes the block. */
  readonly inserts: readonly { readonly sheet: string; readonly row: number }[];
}

/**
 * @param names the workbook's names as they lie now
 * @param sheet the sheet on which a cell is chosen
 * @param row the chosen cell's 0-based row
 * @returns the plan, or a sentence that says why there is none
 */
export function planAddedRows(
  definition: WorkbookDefinition,
  names: readonly BookName[],
  sheet: string,
  row: number,
): AddedRows | string {
  const blocks = definition.sheets.flatMap(({ parts }) =>
    parts.filter((part): part is Block => part.kind === "block"),
  );
  const placed = blocks.flatMap((block) => {
    const named = names.find(({ name }) => name === `${block.name}_${block.columns[0]!.key}`);
    const zone = named && parseRange(named.range);
    return named && zone ? [{ block, sheet: named.sheet, top: zone.top, bottom: zone.bottom }] : [];
  });
  const chosen = placed.find((one) => one.sheet === sheet && one.top <= row && row <= one.bottom);
  if (!chosen)
    return `The chosen cell lies in no block of rows. Choose a cell between the two thin grey rows of a block.`;
  const master = chosen.block.mirrors ?? chosen.block.name;
  const growing = placed.filter(({ block }) => block.name === master || block.mirrors === master);
  return {
    heading: chosen.block.heading,
    inserts: growing.map((one) => ({ sheet: one.sheet, row: one.bottom })),
  };
}
