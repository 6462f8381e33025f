/**
 * Where "Add rows" inserts. A block is what the named ranges that span the
 * selected row have in common; its last row closes it, so that rows put in
 * above it stretch every name by themselves.
 */
import type { GridModel } from "../../grid/library";
import type { GridPosition, RowAddition } from "./libraryTypes";

/** @returns nothing where the selected cell lies in no block of two rows or more */
export function rowsToAdd(model: GridModel, place: GridPosition): RowAddition[] {
  const spanning = model.getters
    .getNamedRanges()
    .map(({ range }) => range)
    .filter(
      ({ sheetId, zone }) =>
        sheetId === place.sheetId &&
        zone.bottom > zone.top &&
        zone.top <= place.row &&
        place.row <= zone.bottom,
    );
  if (spanning.length === 0) return [];
  const height = ({ zone }: (typeof spanning)[number]) => zone.bottom - zone.top;
  const tallest = spanning.reduce((a, b) => (height(b) > height(a) ? b : a));
  return [{ sheetId: place.sheetId, endRow: tallest.zone.bottom }];
}
