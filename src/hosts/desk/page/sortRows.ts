/**
 * Sorting rows of a block. The library sorts the selected cells alone, and none
 * between which a formula spills; a row's inputs lie on both sides of what is
 * calculated from them. So all of a row's inputs move together, wherever the
 * selection ends, and those of the rows that mirror it move along.
 */
import type { WorkbookDefinition } from "../../../workbooks/definition";
import { familyOf } from "../../../workbooks/placedBlocks";
import type { GridModel } from "../../grid/library";
import { blocksOnGrid } from "./blocksOnGrid";
import type { CellContent, GridCommand, GridPosition } from "./libraryTypes";

export interface SortedRows {
  readonly cells: readonly CellContent[];
  readonly rows: number;
  /** The head of the column that the rows are sorted by. */
  readonly by: string;
}

type Value = string | number | boolean | null;

const NOT_IN_A_BLOCK =
  "Not sorted. Select rows of one block, such as the outlets, then sort: each row keeps all of its inputs.";

/** @returns a sentence where there is nothing to sort */
export function sortRows(
  model: GridModel,
  definition: WorkbookDefinition | undefined,
  { sheetId, zone, col, sortDirection }: GridCommand,
): SortedRows | string {
  const blocks = blocksOnGrid(model, definition);
  const touched = blocks.filter(
    (one) => one.sheet === sheetId && zone && one.zone.top < zone.bottom && zone.top < one.zone.bottom,
  );
  const [chosen] = touched;
  if (!chosen || touched.length > 1 || !zone || col === undefined) return NOT_IN_A_BLOCK;
  const first = Math.max(zone.top, chosen.zone.top + 1);
  const last = Math.min(zone.bottom, chosen.zone.bottom - 1);
  const rows = Array.from({ length: last - first + 1 }, (_, index) => first + index);

  const { getters } = model;
  const valueAt = (row: number): Value => {
    const { type, value } = getters.getEvaluatedCell({ sheetId: chosen.sheet, row, col });
    return type === "error" || value === "" ? null : value;
  };
  const keyed = rows.map((row) => ({ row, value: valueAt(row) }));
  keyed.sort((a, b) => inOrder(a.value, b.value, sortDirection === "desc" ? -1 : 1));

  const cells = familyOf(blocks, chosen).flatMap(({ block, sheet, zone: placed }) =>
    block.columns.flatMap(({ key, input }) => {
      const range = input && getters.getNamedRange(`${block.name}_${key}`)?.range;
      if (!range) return [];
      const shift = placed.top - chosen.zone.top;
      return keyed.flatMap(({ row: from }, index) =>
        moved(model, { sheetId: sheet, col: range.zone.left, row: from + shift }, rows[index]! + shift),
      );
    }),
  );
  const by = chosen.block.columns.find(
    ({ key }) => getters.getNamedRange(`${chosen.block.name}_${key}`)?.range.zone.left === col,
  );
  return { cells, rows: rows.length, by: by?.head ?? "the chosen column" };
}

/** Numbers, then text, then yes and no; what is blank or in error comes last either way. */
function inOrder(a: Value, b: Value, direction: 1 | -1): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null);
  if (typeof a === "number" && typeof b === "number") return direction * (a - b);
  if (typeof a === typeof b) return direction * String(a).localeCompare(String(b));
  const ranks = ["number", "string", "boolean"];
  return direction * (ranks.indexOf(typeof a) - ranks.indexOf(typeof b));
}

function moved({ getters }: GridModel, from: GridPosition, row: number): CellContent[] {
  if (from.row === row) return [];
  const cell = getters.getCell(from);
  const content = !cell
    ? ""
    : cell.isFormula
      ? getters.getTranslatedCellFormula(from.sheetId, 0, row - from.row, cell.compiledFormula)
      : cell.content;
  return [{ ...from, row, content, style: cell?.style ?? null, format: cell?.format ?? "" }];
}
