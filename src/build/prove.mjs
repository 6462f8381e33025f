/** `npm run prove`: the long runs of what `npm test` runs a tenth of: a log through faults at random, kills of the real server, and of the browser; jobs drawn at random against the reference; and a whole release made twice. */
import { spawnSync } from "node:child_process";
import path from "node:path";
import { build } from "./build.mjs";
import { project } from "./install.mjs";
import { isSameTwice } from "./release/sameTwice.mjs";

const canMakeExecutables = process.platform === "linux" && process.arch === "x64";
await build();
const { status } = spawnSync(
  process.execPath,
  [
    path.join(project, "node_modules", "jest", "bin", "jest.js"),
    "tests/jobs",
    "tests/hosts/desk/kills",
    "tests/hosts/desk/pageKills",
    "tests/hosts/desk/browserKills",
    "tests/hosts/desk/browserJobs",
    "tests/hosts/desk/releases",
    "tests/hosts/desk/badServers",
    "tests/workbooks/generated",
    ...(canMakeExecutables ? ["tests/build/bothExecutables"] : []),
    ...process.argv.slice(2),
  ],
  {
    cwd: project,
    stdio: "inherit",
    env: { ...process.env, RIGSHEET_RUNS: "most", RIGSHEET_EXECUTABLES: "1" },
  },
);
// Last: it builds from nothing.
const same = isSameTwice(...(canMakeExecutables ? [] : ["--no-executables"]));
process.exitCode = same ? (status ?? 1) : 1;
