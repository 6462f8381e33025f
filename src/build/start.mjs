/** `npm start`: installs what is missing, builds what changed, and serves the local workbook. */
import { createRequire } from "node:module";
import path from "node:path";
import { project } from "./install.mjs";
import { build } from "./build.mjs";

await build();
// In a clone the autosaved job lies in the project's folder; a later --data goes before.
process.argv.splice(2, 0, "desk", "--data", path.join(project, ".rigsheet"));
createRequire(import.meta.url)(path.join(project, "dist", "rigsheet.js"));
