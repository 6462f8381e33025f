/** `npm run generate`: writes every generated file that the repository keeps. */
import { spawnSync } from "node:child_process";
import path from "node:path";
import { build } from "./build.mjs";
import { project } from "./install.mjs";

await build();
const { status } = spawnSync(process.execPath, [path.join(project, "dist", "generate.js"), project], {
  stdio: "inherit",
});
process.exitCode = status ?? 1;
