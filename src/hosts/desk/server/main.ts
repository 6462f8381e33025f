/** What `npm start` runs once everything is built. */
import path from "node:path";
import { writeCopy } from "../../file/copy/writeCopy";
import { readSurveyFile } from "../../file/readSurveyFile";
import { readXlsx } from "../../file/readXlsx";
import { saveAtomically } from "../../file/saveAtomically";
import { writeJob } from "../../file/writeJob";
import { renderPng } from "../../headless/renderPng";
import { RIGSHEET_VERSION } from "../../../version";
import { runDesk, type DeskServices } from "./run";

// Bundled to dist/desk/server.js, so the project's folder is two up.
const folder = __dirname;
const project = path.join(folder, "..", "..");

const services: DeskServices = {
  readXlsx,
  readSurvey: readSurveyFile,
  writeXlsx: writeJob,
  writeCopy: (book, kind) => writeCopy(book, kind, { now: new Date(), version: RIGSHEET_VERSION }, renderPng),
  saveAtomically,
};
void runDesk(process.argv.slice(2), services, folder, project);
