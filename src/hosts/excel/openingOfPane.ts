/**
 * Whether Excel opens the pane, and loads the functions, whenever it opens
 * this workbook (Office add-ins documentation, "Automatically open a task pane
 * with a document", "Run code when the document opens").
 */
import type { OpeningOfPane } from "../../pane/host";
import { troubles } from "./excelTrouble";
import { officeAnswer } from "./officeAnswer";

const KEY = "Office.AutoShowTaskpaneWithDocument";

export const openingOfPane: OpeningOfPane = {
  isOn: async () => Office.context.document.settings.get(KEY) === true,

  keep: async (on) => {
    const { settings } = Office.context.document;
    settings.set(KEY, on);
    await officeAnswer<void>((done) => settings.saveAsync(done), troubles.notKept);
    const none = on ? troubles.notOpened() : "";
    if (!Office.context.requirements.isSetSupported("SharedRuntime", "1.1")) return none;
    try {
      await Office.addin.setStartupBehavior(on ? Office.StartupBehavior.load : Office.StartupBehavior.none);
      return "";
    } catch {
      // It may be named among the sets and not be there.
      return none;
    }
  },
};
