import { HostTrouble } from "../../../pane/host";
import { parseAddress } from "../../../formula/address";
import type { GridModel } from "../../grid/library";

/** @returns whether the sheet is shown then: a hidden one is not */
export function bringUp(model: GridModel, sheetId: string): boolean {
  const from = model.getters.getActiveSheetId();
  const payload = { sheetIdFrom: from, sheetIdTo: sheetId };
  return from === sheetId || model.dispatch("ACTIVATE_SHEET", payload).isSuccessful;
}

/** Brings a sheet up and selects one of its cells; rejects with the reason where it can't. */
export function selectCell(model: GridModel, sheet: string, at: string): void {
  const { getters } = model;
  const sheetId = getters.getSheetIdByName(sheet);
  const place = parseAddress(at);
  if (!sheetId || !place) {
    throw new HostTrouble(`There is no cell ${at} on a sheet ${sheet} any more. Use Check again.`);
  }
  if (!bringUp(model, sheetId)) {
    throw new HostTrouble(
      `The sheet ${sheet} is hidden. Show it by the menu of the sheet names, then try again.`,
    );
  }
  model.selection.selectCell(place.column, place.row);
}
