/** File, Numbers and dates…: the field of the workbook that says how its people write them, once for all of the desk. */
import { address } from "../../../formula/address";
import { WRITING_FIELD } from "../../../workbooks/typed/writing";
import type { GridLibrary, GridModel } from "../../grid/library";
import { selectCell } from "./selectCell";

/** What the library hands to an item of its menu. */
interface MenuEnv {
  readonly model: GridModel;
  openSidePanel(name: string): void;
}

/** The library's own choice stays for workbooks without that field. */
export const chooseWritingByMenu = ({ registries }: GridLibrary): void =>
  void registries.topbarMenuRegistry.replaceChild("settings", ["file"], {
    name: "Numbers and dates…",
    sequence: 200,
    execute: (env) => {
      const { model, openSidePanel } = env as unknown as MenuEnv;
      const range = model.getters.getNamedRange(WRITING_FIELD)?.range;
      if (!range) return openSidePanel("Settings");
      const { sheetId, zone } = range;
      selectCell(model, model.getters.getSheetName(sheetId), address(zone.top, zone.left));
    },
    isEnabledOnLockedSheet: true,
    icon: "o-spreadsheet-Icon.COG",
  });
