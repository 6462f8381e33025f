/** Types values into a model of a workbook that nobody looks at, with rows added where they are wanting. */
import type { WorkbookDefinition } from "../../workbooks/definition";
import { placedBlocks, type PlaceOf } from "../../workbooks/placedBlocks";
import { placeEntries, type Entry } from "../../standards/entries";
import type { GridModel } from "./library";
import { contentOf } from "./toDocument";

/** @returns a sentence where a name that is needed is gone; nothing is changed then */
export function enterOnGrid(
  model: GridModel,
  definition: WorkbookDefinition,
  entries: readonly Entry[],
): string | undefined {
  const { getters } = model;
  const placeOf: PlaceOf = (name) => {
    const range = getters.getNamedRange(name)?.range;
    return range && { sheet: range.sheetId, zone: range.zone };
  };
  const placed = placeEntries(entries, placedBlocks(definition, placeOf), placeOf);
  if (typeof placed === "string") return placed;
  const dispatch = (type: string, payload: object): void =>
    void model.dispatch(type as never, payload as never);
  for (const { placed: block, quantity } of placed.grown) {
    // Where it lies now: rows above it may have been added already.
    const { sheet, zone } = placeOf(`${block.block.name}_${block.block.columns[0]!.key}`)!;
    // A row like the last one, and boxed like it at the edge of the block too.
    const base = zone.bottom - 1;
    dispatch("ADD_COLUMNS_ROWS", {
      sheetId: sheet,
      sheetName: getters.getSheetName(sheet),
      dimension: "ROW",
      base,
      position: "after",
      quantity,
    });
    for (let col = 0; col < getters.getNumberCols(sheet); col++) {
      const border = getters.getCellBorder({ sheetId: sheet, row: base, col });
      const target = [{ top: base + 1, bottom: base + quantity, left: col, right: col }];
      if (border) dispatch("SET_BORDERS_ON_TARGET", { sheetId: sheet, target, border });
    }
  }
  for (const { sheet, row, column, value } of placed.cells)
    dispatch("UPDATE_CELL", { sheetId: sheet, row, col: column, content: contentOf({ value }) ?? "" });
  return undefined;
}
