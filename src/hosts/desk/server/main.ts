/** What `npm start` runs once everything is built. */
import path from "node:path";
import { readXlsx } from "../../file/readXlsx";
import { saveAtomically } from "../../file/saveAtomically";
import { writeJob } from "../../file/writeJob";
import { runDesk } from "./run";

// Bundled to dist/desk/server.js, so the project's folder is two up.
const folder = __dirname;
const project = path.join(folder, "..", "..");

void runDesk(process.argv.slice(2), { readXlsx, writeXlsx: writeJob, saveAtomically }, folder, project);
