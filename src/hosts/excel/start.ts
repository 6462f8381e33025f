/**
 * Starting a workbook by its file, which is what the desk saves: protection,
 * pictures and stored forms come with it.
 */
import type { StartedBook } from "../../pane/host";
import { writeXlsx } from "../file/writeXlsx";
import { buildingBook } from "./buildBook";
import { changeExcel, hasApi } from "./inExcel";
import { insertingFile, type NotTaken } from "./insertFile";
import { openAsNew } from "./newWorkbook";
import { openingOfPane } from "./openingOfPane";
import { INSERT_SHEETS, readyFile } from "./readyFile";

/** Its window has no pane of ours until Excel has loaded the add-in there. */
const IN_ITS_WINDOW =
  "It is in a window of its own. If cells show #NAME? there, press “Rigsheet pane” on its Home tab, then “Repair formulas” in the pane.";
const built = (why: string): string =>
  `${why}, so they were built cell by cell: they have no protection and no pictures. Protect them with Review, Protect Sheet.`;
const WHY = {
  policy: "By a policy of your office's, Excel did not take the sheets from their file",
  refused: "Excel did not take the sheets from their file",
  incomplete: "The sheets arrived incomplete from their file and were taken out again",
} as const;

export async function startAsNew(started: StartedBook): Promise<string> {
  await openAsNew(await bytesOf(started));
  return IN_ITS_WINDOW;
}

export async function startHere(started: StartedBook): Promise<string> {
  const inserted = hasApi(INSERT_SHEETS)
    ? await changeExcel(insertingFile(started.book, await bytesOf(started)))
    : { refusal: "" };
  if (typeof inserted !== "string") await changeExcel(buildingBook(started.book));
  // The sheets are there, whether Excel keeps this or not.
  await openingOfPane.keep(true).catch(() => undefined);
  return typeof inserted === "string" ? inserted : built(whyOf(inserted));
}

function whyOf({ refusal }: NotTaken): string {
  if (refusal === undefined) return WHY.incomplete;
  return /polic/i.test(refusal) ? WHY.policy : WHY.refused;
}

/** What is laid out here Excel works out on opening. */
async function bytesOf({ book, file }: StartedBook): Promise<Uint8Array> {
  const ready = file === undefined ? undefined : await readyFile(file);
  return ready ?? (await writeXlsx(book));
}
