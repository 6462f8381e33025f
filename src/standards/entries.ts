/** What has to be typed into a workbook so that its inputs become others, and where rows are wanting for it. */
import type { Block, JobInputs, WorkbookDefinition } from "../workbooks/definition";
import type { NamedPlace, PlaceOf, PlacedBlock } from "../workbooks/placedBlocks";
import { familyOf } from "../workbooks/placedBlocks";

type Value = number | string | undefined;

/** An input cell by its name; in a block also by its row, counted from 0. */
export interface Entry {
  readonly name: string;
  readonly block?: string;
  readonly index?: number;
  /** Undefined where the cell becomes blank. */
  readonly value: Value;
}

/** @returns the cells that differ, those of a block row by row */
export function entriesOf({ sheets }: WorkbookDefinition, before: JobInputs, after: JobInputs): Entry[] {
  return sheets
    .flatMap(({ parts }) => parts)
    .flatMap((part): Entry[] => {
      if (part.kind === "fields")
        return part.fields.flatMap(({ name, input }) => {
          const value = after.fields?.[name];
          return input && value !== before.fields?.[name] ? [{ name, value }] : [];
        });
      return part.kind === "block" ? ofBlock(part, before, after) : [];
    });
}

function ofBlock({ name: block, columns }: Block, before: JobInputs, after: JobInputs): Entry[] {
  const old = before.blocks?.[block] ?? [];
  const now = after.blocks?.[block] ?? [];
  return Array.from({ length: Math.max(old.length, now.length) }, (_, index) => index).flatMap((index) =>
    columns.flatMap(({ key, input }): Entry[] => {
      const value = now[index]?.[key];
      return input && value !== old[index]?.[key] ? [{ name: `${block}_${key}`, block, index, value }] : [];
    }),
  );
}

export interface PlacedEntry {
  /** As the host knows it: by name or by an id. */
  readonly sheet: string;
  /** 0-based, once the rows are added. */
  readonly row: number;
  readonly column: number;
  readonly value: Value;
}

/** Rows above the closing row of a block, and as many in each block that mirrors it. */
export interface GrownBlock {
  readonly placed: PlacedBlock;
  readonly quantity: number;
}

export interface PlacedEntries {
  readonly grown: readonly GrownBlock[];
  readonly cells: readonly PlacedEntry[];
}

/**
 * @param blocks of the workbook as it stands
 * @returns a sentence where a name that is needed is gone
 */
export function placeEntries(
  entries: readonly Entry[],
  blocks: readonly PlacedBlock[],
  placeOf: PlaceOf,
): PlacedEntries | string {
  const wanted = new Map<string, number>();
  for (const { block, index = 0 } of entries)
    if (block !== undefined) wanted.set(block, Math.max(wanted.get(block) ?? 0, index + 1));
  const grown = [...wanted].flatMap(([name, rows]): GrownBlock[] => {
    const placed = blocks.find(({ block }) => block.name === name);
    const quantity = placed ? rows - (placed.zone.bottom - placed.zone.top - 1) : 0;
    return placed && quantity > 0 ? familyOf(blocks, placed).map((one) => ({ placed: one, quantity })) : [];
  });
  const cells: PlacedEntry[] = [];
  for (const { name, index, value } of entries) {
    const place = placeOf(name);
    if (!place)
      return `The workbook has no cells named ${name} any more, so nothing was changed. Open the workbook it was made from.`;
    const { sheet, zone } = place;
    const first = zone.top + (index === undefined ? 0 : index + 1);
    cells.push({ sheet, row: first + movedDown(grown, place), column: zone.left, value });
  }
  return { grown, cells };
}

/** By the rows that are added above it. */
const movedDown = (grown: readonly GrownBlock[], { sheet, zone }: NamedPlace): number =>
  grown
    .filter(({ placed }) => placed.sheet === sheet && placed.zone.bottom <= zone.top)
    .reduce((sum, { quantity }) => sum + quantity, 0);
