/**
 * How the outlets of a survey go into the Rooms sheet: below its last filled
 * row, with rows added where the prepared ones do not suffice.
 */
import type { WorkbookDefinition } from "../../../workbooks/definition";
import type { SurveyRow } from "../../../workbooks/survey/readSurvey";
import type { GridModel } from "../../grid/library";
import { contentOf } from "../../grid/toDocument";
import type { CellContent, RowAddition } from "./libraryTypes";
import { rowsToAdd } from "./rowsToAdd";

export interface OutletsToAdd {
  readonly additions: readonly RowAddition[];
  readonly quantity: number;
  readonly cells: readonly CellContent[];
}

/** What a workbook has already: the unit of its lengths and the names of its outlets. */
export interface RoomsNow {
  readonly unit: "m" | "ft";
  readonly outlets: readonly string[];
}

/** @returns undefined for a workbook without a Rooms sheet of ours */
export function roomsNow({ getters }: GridModel): RoomsNow | undefined {
  const unit = getters.getNamedRange("site_unit")?.range;
  const outlets = getters.getNamedRange("rooms_outlet")?.range;
  if (!unit || !outlets) return undefined;
  const at = (sheetId: string, row: number, col: number): string =>
    String(getters.getEvaluatedCell({ sheetId, row, col }).value ?? "");
  const { top, bottom, left } = outlets.zone;
  return {
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
  const inputs = definition?.sheets
    .flatMap(({ parts }) => parts)
    .flatMap((part) => (part.kind === "block" && part.name === "rooms" ? part.columns : []))
    .filter(({ input }) => input);
  if (!inputs || inputs.length === 0)
    return "This workbook was not made from our multi-room template, so it takes no survey.";
  const columns = new Map<string, number>();
  for (const { key } of inputs) {
    const range = getters.getNamedRange(`rooms_${key}`)?.range;
    if (range) columns.set(key, range.zone.left);
  }
  const outlet = getters.getNamedRange("rooms_outlet")?.range;
  const lost = rows.flatMap((row) => Object.keys(row)).find((key) => !columns.has(key));
  if (!outlet || lost !== undefined) {
    return `The workbook has no cells named rooms_${lost ?? "outlet"} any more, so the survey has no place. Open the workbook it was made from.`;
  }
  const { sheetId, zone } = outlet;
  const last = zone.bottom - 1;
  const filled = (row: number): boolean =>
    [...columns.values()].some((col) => {
      const { value } = getters.getEvaluatedCell({ sheetId, row, col });
      return value !== null && value !== "";
    });
  let first = last + 1;
  while (first > zone.top + 1 && !filled(first - 1)) first--;
  const quantity = Math.max(0, first + rows.length - 1 - last);
  return {
    additions: quantity > 0 ? rowsToAdd(model, definition, { sheetId, row: last, col: zone.left }) : [],
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
