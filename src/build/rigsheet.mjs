/** Runs the command from a clone: installs and builds what is missing, then hands over the words. */
import { spawnSync } from "node:child_process";
import path from "node:path";

// What this step says must not land among the command's own output.
console.log = console.error;
const { build } = await import("./build.mjs");
const { project } = await import("./install.mjs");

await build();
const { status } = spawnSync(
  process.execPath,
  [path.join(project, "dist", "rigsheet.js"), ...process.argv.slice(2)],
  { stdio: "inherit" },
);
process.exitCode = status ?? 1;
