/** The grid library with all that the desk puts in the place of its own ways, each part held to what it stands on. */
import * as library from "@odoo/o-spreadsheet";
import { requireMembers } from "../../grid/gridContract";
import { onLimit } from "../../grid/iterationLimit";
import { prepareLibrary } from "../../grid/prepareLibrary";
import { registerShownAsWritten } from "../../grid/shownAsWritten";
import { enterTyped, type CellEntry } from "./cellEntry";
import { registerDeskPlugin, type DeskGuard } from "./deskPlugin";
import { registerFillPlugin } from "./fillPlugin";
import { growByTyping } from "./growingEntry";
import { registerPastePlugin } from "./pastePlugin";
import { printByMenu } from "./printing";
import { registerRowsPlugin } from "./rowsPlugin";
import { chooseWritingByMenu } from "./writingMenu";

const STALE =
  "Some formulas wait for one another in so long a chain that not all of them could be computed: figures on this page may be old. Undo the last change, or shorten the chain of formulas of your own.";

/** @throws GridTrouble where the library lacks what figures or work depend on */
export function teachGrid(given: {
  readonly guard: DeskGuard;
  readonly entry: CellEntry;
  readonly print: () => void;
}): void {
  const { guard, entry, print } = given;
  prepareLibrary(library);
  onLimit(() => guard.refused(STALE));
  requireMembers(library, "asWritten", () => registerShownAsWritten(library));
  requireMembers(library, "guard", () => registerDeskPlugin(library, guard));
  requireMembers(library, "rows", () => registerRowsPlugin(library, guard));
  requireMembers(library, "paste", () => registerPastePlugin(library, guard));
  requireMembers(library, "fill", () => registerFillPlugin(library));
  requireMembers(library, "typing", () => enterTyped(library, entry));
  requireMembers(library, "growing", () => growByTyping(library, guard));
  requireMembers(library, "printMenu", () => printByMenu(library, print));
  requireMembers(library, "writingMenu", () => chooseWritingByMenu(library));
  // It refuses to paste across frozen columns, for the sake of merged cells; those are guarded on their
  // own, and a row of outlets is copied whole.
  requireMembers(library, "wholeRows", () =>
    library.registries.clipboardHandlersRegistries.cellHandlers.remove("sheet"),
  );
}
