/** `npm run bench`: prints how long the work takes against bare baselines. */
import { spawnSync } from "node:child_process";
import path from "node:path";
import { build } from "./build.mjs";
import { project } from "./install.mjs";

await build();
const { status } = spawnSync(
  process.execPath,
  [path.join(project, "dist", "bench.js"), ...process.argv.slice(2)],
  {
    stdio: "inherit",
  },
);
process.exitCode = status ?? 1;
