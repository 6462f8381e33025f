/**
 * How the outlets of a survey go into the Rooms sheet: below its last filled
 * row, with rows added where the prepared ones do not suffice.
 */
import type { WorkbookDefinition } from "../../../workbooks/definition";
import { estimate } from "../../../workbooks/multiRoom/names";
import { planAddedRows } from "../../../workbooks/planAddedRows";
import { placeOutlets } from "../../../workbooks/survey/placeOutlets";
import type { SurveyRow } from "../../../workbooks/survey/readSurvey";
import { roomsBlock, type RoomsNow } from "../../../workbooks/survey/roomsBlock";
import type { GridModel } from "../../grid/library";
import { contentOf } from "../../grid/toDocument";
import { additionsTo, blocksOnGrid, placeOnGrid } from "./blocksOnGrid";
import type { CellContent, RowAddition } from "./libraryTypes";
import { contextIn } from "./typedCell";

export interface OutletsToAdd {
  readonly additions: readonly RowAddition[];
  readonly quantity: number;
  readonly cells: readonly CellContent[];
}

/** @returns undefined for a workbook without a Rooms sheet of ours */
export function roomsNow(model: GridModel): RoomsNow | undefined {
  const { getters } = model;
  const unit = getters.getNamedRange(estimate.site.unit.name)?.range;
  const outlets = getters.getNamedRange(estimate.rooms.outlet.name)?.range;
  if (!unit || !outlets) return undefined;
  const at = (sheetId: string, row: number, col: number): string =>
    String(getters.getEvaluatedCell({ sheetId, row, col }).value ?? "");
  const { top, bottom, left } = outlets.zone;
  const { writing } = contextIn(model);
  return {
    ...(writing && { writing: writing.tag }),
    unit: at(unit.sheetId, unit.zone.top, unit.zone.left) === "ft" ? "ft" : "m",
    outlets: Array.from({ length: bottom - top + 1 }, (_, index) =>
      at(outlets.sheetId, top + index, left),
    ).filter((outlet) => outlet !== ""),
  };
}

/** @returns a sentence where the Rooms sheet is not as its template made it */
export function outletsToAdd(
  model: GridModel,
  definition: WorkbookDefinition | undefined,
  rows: readonly SurveyRow[],
): OutletsToAdd | string {
  const { getters } = model;
  const block = roomsBlock(definition, placeOnGrid(model), rows);
  if (typeof block === "string") return block;
  const { sheet: sheetId, bottom, columns } = block;
  const filled = (row: number, col: number): boolean => {
    const place = { sheetId, row, col };
    const { value } = getters.getEvaluatedCell(place);
    // A formula that shows nothing yet is a person's all the same.
    return (value !== null && value !== "") || getters.getCell(place)?.isFormula === true;
  };
  const { first, quantity } = placeOutlets(block, filled, rows.length);
  const plan = planAddedRows(blocksOnGrid(model, definition), sheetId, bottom);
  if (typeof plan === "string") return plan;
  return {
    additions: quantity > 0 ? additionsTo(plan.growing) : [],
    quantity,
    cells: rows.flatMap((row, index) =>
      Object.entries(row).map(([key, value]) => ({
        sheetId,
        row: first + index,
        col: columns.get(key)!,
        content: contentOf({ value }) ?? "",
      })),
    ),
  };
}
