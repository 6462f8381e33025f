/** What this Excel does with files: the open workbook's, and a new one. */
import { callsUs } from "../../../formula/callsUs";
import { HostTrouble } from "../../../pane/host";
import { readXlsx } from "../../file/readXlsx";
import { openAsNew } from "../newWorkbook";
import { openDocument } from "../openDocument";
import { readyFile } from "../readyFile";
import { bad, good, look, notRun, type Step } from "./steps";

export const ownFile: Step = {
  what: "Excel hands over the workbook's file, and formulas of ours are found in it",
  run: async (_, { sheet }) => {
    try {
      const bytes = await openDocument();
      const book = await readXlsx(bytes);
      const cells = Object.values(book.sheets.find(({ name }) => name === sheet)?.cells ?? {});
      const ours = cells.filter(({ formula }) => formula !== undefined && callsUs(formula)).length;
      const found = `${Math.ceil(bytes.length / 1024)} kB, ${ours} formulas of ours on the trial's sheet`;
      return ours > 0 ? good(found) : bad(found);
    } catch (error) {
      // Copies, cards and upgrades need it; the rest works without.
      if (error instanceof Error) return look(error.message);
      throw error;
    }
  },
};

/** The smallest of our workbooks. */
const SMALLEST = "single-drop.xlsx";

export const newWorkbook: Step = {
  what: "A new workbook opens",
  run: async () => {
    const bytes = await readyFile(SMALLEST);
    if (!bytes) return notRun(`${SMALLEST} does not lie with the add-in: its server gives no such file`);
    try {
      await openAsNew(bytes);
      return good("taken; look at its window: does the pane open there, and does it show no #NAME?");
    } catch (error) {
      if (error instanceof HostTrouble) return look(error.message);
      throw error;
    }
  },
};
