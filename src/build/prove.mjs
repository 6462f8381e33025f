/** `npm run prove`: the long runs of what `npm test` runs a tenth of: a log through faults at random, kills of the real server; and a whole release made twice. */
import { spawnSync } from "node:child_process";
import path from "node:path";
import { build } from "./build.mjs";
import { project } from "./install.mjs";
import { isSameTwice } from "./release/sameTwice.mjs";

await build();
const { status } = spawnSync(
  process.execPath,
  [
    path.join(project, "node_modules", "jest", "bin", "jest.js"),
    "tests/jobs",
    "tests/hosts/desk/kills",
    "tests/hosts/desk/pageKills",
    ...process.argv.slice(2),
  ],
  { cwd: project, stdio: "inherit", env: { ...process.env, JOB_RUNS: "1000", JOB_KILLS: "300" } },
);
// Last: it builds from nothing.
const same = isSameTwice(...(process.platform === "linux" ? [] : ["--no-executables"]));
process.exitCode = same ? (status ?? 1) : 1;
