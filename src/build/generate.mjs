/**
 * `npm run generate`: writes every generated file that the repository keeps;
 * with `-- --release` the templates' versions of today are closed.
 */
import { spawnSync } from "node:child_process";
import path from "node:path";
import { build } from "./build.mjs";
import { project } from "./install.mjs";

await build();
const { status } = spawnSync(
  process.execPath,
  [path.join(project, "dist", "generate.js"), project, ...process.argv.slice(2)],
  {
    stdio: "inherit",
  },
);
process.exitCode = status ?? 1;
