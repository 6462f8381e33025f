/** `npm run static`: the desk as a folder for any web server (dist/static), and as one file (dist/rigsheet.html). */
import { spawnSync } from "node:child_process";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "./build.mjs";
import { project } from "./install.mjs";

/** @returns whether it went well */
export function writeStatic() {
  const words = [path.join(project, "dist", "generate.js"), "--static", project];
  return spawnSync(process.execPath, words, { stdio: "inherit" }).status === 0;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await build();
  if (!writeStatic()) process.exitCode = 1;
}
