import path from "node:path";
import { HELP, readOptions } from "../hosts/desk/server/options";
import { runDesk, type DeskServices } from "../hosts/desk/server/run";
import { writeCopy } from "../hosts/file/copy/writeCopy";
import { readTables } from "../hosts/file/readTables";
import { readXlsx } from "../hosts/file/readXlsx";
import { saveAtomically } from "../hosts/file/saveAtomically";
import { writeJob } from "../hosts/file/writeJob";
import { renderPng } from "../hosts/headless/renderPng";
import { RIGSHEET_VERSION } from "../version";
import { EXIT, UsageTrouble, type Console } from "./console";

const services: DeskServices = {
  readXlsx,
  readTables,
  writeXlsx: writeJob,
  writeCopy: (book, kind) => writeCopy(book, kind, { now: new Date(), version: RIGSHEET_VERSION }, renderPng),
  saveAtomically,
};

/** Bundled to dist/rigsheet.js; the page lies beside it. */
const PAGE = path.join(__dirname, "desk");

/** Serves the workbook page; goes on listening after it returned. */
export async function desk(words: readonly string[], console: Console): Promise<number> {
  const options = readOptions(words);
  if (typeof options === "string") throw new UsageTrouble(options);
  if (options.help) {
    console.out(HELP);
    return EXIT.ok;
  }
  try {
    await runDesk(options, services, PAGE, console.out);
    return EXIT.ok;
  } catch (error) {
    console.err(error instanceof Error ? error.message : String(error));
    return EXIT.look;
  }
}
