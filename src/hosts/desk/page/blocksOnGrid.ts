import type { WorkbookDefinition } from "../../../workbooks/definition";
import { placedBlocks, type PlacedBlock, type PlaceOf } from "../../../workbooks/placedBlocks";
import { planAddedRows, type AddedRows } from "../../../workbooks/planAddedRows";
import type { GridModel } from "../../grid/library";
import type { RowAddition } from "./libraryTypes";

/** Where a name lies in the open workbook, on sheets by their ids. */
export const placeOnGrid =
  ({ getters }: Pick<GridModel, "getters">): PlaceOf =>
  (name) => {
    const range = getters.getNamedRange(name)?.range;
    return range && { sheet: range.sheetId, zone: range.zone };
  };

/** The open workbook's blocks, on sheets by their ids; none where the workbook is not ours. */
export const blocksOnGrid = (
  model: Pick<GridModel, "getters">,
  definition: WorkbookDefinition | undefined,
): PlacedBlock[] => placedBlocks(definition, placeOnGrid(model));

/** Where rows would be added for the selected cell, or a sentence that says why there is no such place. */
export function rowsToAdd(
  model: Pick<GridModel, "getters">,
  definition: WorkbookDefinition | undefined,
): AddedRows | string {
  const { sheetId, row } = model.getters.getActivePosition();
  return planAddedRows(blocksOnGrid(model, definition), sheetId, row);
}

/** Rows above the closing rows of blocks, as the page's own command takes them. */
export const additionsTo = (growing: readonly PlacedBlock[]): RowAddition[] =>
  growing.map(({ block, zone }) => ({ block: block.name, offset: zone.bottom - zone.top }));
