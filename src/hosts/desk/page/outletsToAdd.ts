/**
 * How the outlets of a survey go into the Rooms sheet: new ones below its last filled row, with rows added where the
 * prepared ones do not suffice; changes where their outlets stand.
 */
import type { BookValue } from "../../../workbooks/book";
import type { WorkbookDefinition } from "../../../workbooks/definition";
import { planAddedRows } from "../../../workbooks/planAddedRows";
import { NO_CHANGES, type RowChanges } from "../../../workbooks/survey/merge";
import { placeOutlets } from "../../../workbooks/survey/placeOutlets";
import { roomsBlock, roomsFrom, type RoomsNow } from "../../../workbooks/survey/roomsBlock";
import type { SurveyRow } from "../../../workbooks/survey/survey";
import type { GridModel } from "../../grid/library";
import { contentOf } from "../../grid/toDocument";
import { additionsTo, blocksOnGrid, placeOnGrid } from "./blocksOnGrid";
import type { CellContent, RowAddition } from "./libraryTypes";

export interface OutletsToAdd {
  readonly additions: readonly RowAddition[];
  readonly quantity: number;
  readonly cells: readonly CellContent[];
}

/** @returns undefined for a workbook without a Rooms sheet of ours */
export const roomsNow = ({ getters }: GridModel): RoomsNow | undefined =>
  roomsFrom({
    column: (name) => {
      const range = getters.getNamedRange(name)?.range;
      if (!range) return undefined;
      const { top, bottom, left } = range.zone;
      return Array.from(
        { length: bottom - top + 1 },
        (_, index) => getters.getEvaluatedCell({ sheetId: range.sheetId, row: top + index, col: left }).value,
      );
    },
  });

/** @returns a sentence where the Rooms sheet is not as its template made it */
export function outletsToAdd(
  model: GridModel,
  definition: WorkbookDefinition | undefined,
  rows: readonly SurveyRow[],
  changes: RowChanges = NO_CHANGES,
): OutletsToAdd | string {
  const { getters } = model;
  const block = roomsBlock(definition, placeOnGrid(model), rows, changes);
  if (typeof block === "string") return block;
  const { sheet: sheetId, top, bottom, columns } = block;
  const filled = (row: number, col: number): boolean => {
    const place = { sheetId, row, col };
    const { value } = getters.getEvaluatedCell(place);
    // A formula that shows nothing yet is a person's all the same.
    return (value !== null && value !== "") || getters.getCell(place)?.isFormula === true;
  };
  const { first, quantity } = placeOutlets(block, filled, rows.length);
  const plan = planAddedRows(blocksOnGrid(model, definition), sheetId, bottom);
  if (typeof plan === "string") return plan;
  const cell = (row: number, key: string, value: BookValue | undefined): CellContent => ({
    sheetId,
    row,
    col: columns.get(key)!,
    content: (value === undefined ? undefined : contentOf({ value })) ?? "",
  });
  return {
    additions: quantity > 0 ? additionsTo(plan.growing) : [],
    quantity,
    cells: [
      ...changes.changed.flatMap(({ offset, cells }) =>
        cells.map(({ key, now }) => cell(top + offset, key, now)),
      ),
      ...changes.cleared.flatMap(({ offset }) =>
        [...columns.keys()].map((key) => cell(top + offset, key, undefined)),
      ),
      ...rows.flatMap((row, index) =>
        Object.entries(row).map(([key, value]) => cell(first + index, key, value)),
      ),
    ],
  };
}
