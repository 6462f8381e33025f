/** What this Excel does with files: the open workbook's, a sheet of one, and a new workbook. */
import { callsUs } from "../../../formula/callsUs";
import { HostTrouble } from "../../../pane/host";
import { readXlsx } from "../../file/readXlsx";
import { openAsNew } from "../newWorkbook";
import { openDocument } from "../openDocument";
import { hasApi } from "../inExcel";
import { INSERT_SHEETS, readyFile } from "../readyFile";
import { bad, good, look, notRun, sheetOf, type Found, type Ground, type Step } from "./steps";

export const ownFile: Step = {
  what: "File handed over",
  needs: "functions",
  run: async (context, ground) => {
    const own = sheetOf(context, ground);
    own.load("name");
    await context.sync();
    try {
      const bytes = await openDocument();
      const book = await readXlsx(bytes);
      const cells = Object.values(book.sheets.find(({ name }) => name === own.name)?.cells ?? {});
      const ours = cells.filter(({ formula }) => formula !== undefined && callsUs(formula)).length;
      const found = `${Math.ceil(bytes.length / 1024)} kB, ${ours} formulas of ours on the trial's sheet`;
      return ours > 0 ? good(found) : bad(found);
    } catch (error) {
      // Copies, cards and upgrades need it; the rest works without.
      if (error instanceof Error) return look(`${error.message} Copies, cards and upgrades need it`);
      throw error;
    }
  },
};

/** @param why nothing was tried */
export function fileHere({ files }: Ground, why: string | undefined): Found {
  const { taken, built } = files;
  if (taken.length + built === 0) return notRun(why ?? "no demonstration came into this workbook");
  const read = `${taken.length} files taken, ${built} built cell by cell`;
  const said = [...new Set(taken.filter((one) => one !== ""))];
  if (built > 0)
    return look(
      hasApi(INSERT_SHEETS)
        ? "Excel does not take the sheets of a file, by a policy of your office's or otherwise; they were built cell by cell"
        : `sheets of a file came with ExcelApi ${INSERT_SHEETS}; they were built cell by cell`,
      read,
    );
  return said.length > 0
    ? look(said.join(" "), read)
    : good("sheets, names, formulas and protection come along", read);
}

/** The smallest of our workbooks. */
const SMALLEST = "single-drop.xlsx";

/** Last of all: its window takes the focus, and the pane stays with the old one. */
export async function newWorkbook(): Promise<Found> {
  const bytes = await readyFile(SMALLEST);
  if (!bytes) return notRun(`${SMALLEST} does not lie with the add-in: its server gives no such file`);
  try {
    await openAsNew(bytes);
    return good("Excel accepted the file; whether it opened, whole and with our pane, only a person can see");
  } catch (error) {
    if (error instanceof HostTrouble) return look(error.message);
    throw error;
  }
}
