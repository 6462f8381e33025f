/** What the page's own command takes to type entries, and to add the rows that they want. */
import { placeEntries, type Entry } from "../../../standards/entries";
import type { WorkbookDefinition } from "../../../workbooks/definition";
import type { GridModel } from "../../grid/library";
import { contentOf } from "../../grid/toDocument";
import { additionsTo, blocksOnGrid, placeOnGrid } from "./blocksOnGrid";
import type { CellContent, RowAddition } from "./libraryTypes";

/** @returns a sentence where a name that is needed is gone */
export function entriesToType(
  model: Pick<GridModel, "getters">,
  definition: WorkbookDefinition | undefined,
  entries: readonly Entry[],
): { readonly additions: readonly RowAddition[]; readonly contents: readonly CellContent[] } | string {
  const placed = placeEntries(entries, blocksOnGrid(model, definition), placeOnGrid(model));
  if (typeof placed === "string") return placed;
  return {
    additions: placed.grown.flatMap(({ placed: block, quantity }) =>
      additionsTo([block]).map((addition) => ({ ...addition, quantity })),
    ),
    contents: placed.cells.map(({ sheet, row, column, value }) => ({
      sheetId: sheet,
      row,
      col: column,
      content: contentOf({ value }) ?? "",
    })),
  };
}
