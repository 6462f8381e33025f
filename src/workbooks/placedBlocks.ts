/** Where a workbook's blocks stand now, from the thin row above their data to their closing row. */
import { parseRange, type Zone } from "../formula/address";
import type { BookName } from "./book";
import type { Block, WorkbookDefinition } from "./definition";

export interface NamedPlace {
  /** The sheet, as the host knows it: by its name or by an id. */
  readonly sheet: string;
  readonly zone: Zone;
}

/** Where a name lies; undefined for one that the workbook has lost. */
export type PlaceOf = (name: string) => NamedPlace | undefined;

export interface PlacedBlock extends NamedPlace {
  readonly block: Block;
}

/** Where the names of a book lie, on sheets by their names. */
export const placeIn =
  (names: readonly BookName[]): PlaceOf =>
  (wanted) => {
    const named = names.find(({ name }) => name === wanted);
    const zone = named && parseRange(named.range);
    return named && zone && { sheet: named.sheet, zone };
  };

/** @returns none where the workbook is not ours; a block that has lost the name of its first column is left out */
export function placedBlocks(definition: WorkbookDefinition | undefined, placeOf: PlaceOf): PlacedBlock[] {
  return (definition?.sheets ?? [])
    .flatMap(({ parts }) => parts)
    .flatMap((block) => {
      const place = block.kind === "block" && placeOf(`${block.name}_${block.columns[0]?.key}`);
      return place ? [{ block, ...place }] : [];
    });
}

/** A block, the one that it mirrors, and all that mirror that: they have the same rows. */
export function familyOf(blocks: readonly PlacedBlock[], { block }: PlacedBlock): PlacedBlock[] {
  const root = block.mirrors ?? block.name;
  return blocks.filter((one) => one.block.name === root || one.block.mirrors === root);
}
