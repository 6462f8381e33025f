/**
 * Typing on where a block ends: what is typed into the thin row that closes a block, or just under it, is its next
 * row, and the block grows by that. What is typed where nothing is asked for is said again in the notice, so that
 * it is not lost.
 */
import { templateOf } from "../../../workbooks/templates";
import type { BookFacts } from "../../grid/bookFacts";
import type { GridLibrary, GridModel } from "../../grid/library";
import type { DeskGuard } from "./deskPlugin";
import { entered } from "./entered";
import { leftInWords, type WhyLeft } from "./leftInWords";
import type { GridPosition } from "./libraryTypes";
import { rowsAdded } from "./pasteInWords";
import { blocksOnGrid } from "./blocksOnGrid";
import { roomForRows } from "./roomForRows";

interface Composer {
  readonly model: GridModel;
  readonly currentEditedCell: GridPosition;
  /** As it was typed: the library's own reading of it may be another number. */
  readonly _currentContent: string;
  setContent(content: string): void;
  confirmEdition(content: string): void;
}
type Getters = GridModel["getters"] & {
  getBookFacts(): BookFacts;
  isGuardedSheet(sheetId: string): boolean;
  whyLeft(position: GridPosition): WhyLeft | undefined;
};

export function growByTyping(library: GridLibrary, guard: Pick<DeskGuard, "refused">): void {
  const composer = library.stores.CellComposerStore.prototype as unknown as Composer;
  const { confirmEdition } = composer;
  composer.confirmEdition = function (content) {
    const { model, currentEditedCell: place } = this;
    const getters = model.getters as Getters;
    const why = content && getters.isGuardedSheet(place.sheetId) ? getters.whyLeft(place) : undefined;
    if (!why) return confirmEdition.call(this, content);
    const typed = this._currentContent || content;
    if (!entersNewRow(model, place, typed, guard))
      guard.refused(`${leftInWords([why])} Typed was: “${typed}”.`);
    this.setContent("");
  };
}

/** @returns false where no block goes on there, or its column does not take the text */
function entersNewRow(
  model: GridModel,
  place: GridPosition,
  content: string,
  guard: Pick<DeskGuard, "refused">,
): boolean {
  const getters = model.getters as Getters;
  const { sheetId, row, col } = place;
  const blocks = blocksOnGrid(model, templateOf(getters.getBookFacts().template)?.definition);
  const room = roomForRows(getters, blocks, sheetId, { top: row, bottom: row, left: col, right: col });
  if (!room || room.quantity === 0) return false;
  // As the row above would take it: the new one will be as that.
  const taken = entered(model, { sheetId, row: room.top - 1, col }, content);
  if ("refused" in taken) return false;
  const { additions, quantity } = room;
  const contents = [{ sheetId, row: room.top, col, content: taken.content }];
  model.dispatch("RIGSHEET_ENTER_ROWS" as never, { additions, quantity, contents } as never);
  guard.refused(rowsAdded(room));
  return true;
}
