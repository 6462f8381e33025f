/** `npm start`: installs what is missing, builds what changed, and serves the local workbook. */
import { createRequire } from "node:module";
import path from "node:path";
import { project } from "./install.mjs";
import { build } from "./build.mjs";

await build();
createRequire(import.meta.url)(path.join(project, "dist", "desk", "server.js"));
