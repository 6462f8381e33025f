/**
 * `npm run executables`: the command as one file for people without Node, for
 * Linux and for Windows, into dist/executables; `-- --to FOLDER` puts them
 * elsewhere. `-- --this-node` makes only one, for this system, of the Node that
 * runs: nothing is fetched.
 */
import { mkdirSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "./build.mjs";
import { canBecomeExecutable, makeBlob, makeExecutable } from "./executables/makeExecutable.mjs";
import { fetchNodePrograms, NODE_PROGRAMS } from "./executables/nodePrograms.mjs";
import { project, stop } from "./install.mjs";

const { version } = JSON.parse(readFileSync(path.join(project, "package.json"), "utf8"));

export const executableNames = [`rigsheet-${version}-linux-x64`, `rigsheet-${version}-win-x64.exe`];

/** What is built must be there. @returns the names of the files in the folder */
export async function makeExecutables(folder) {
  if (process.platform !== "linux" || process.arch !== "x64") {
    stop(
      "The executables are made on Linux with an x64 processor: their parts are put together by the Node program for it. Run this there; or leave them out: npm run release -- --no-executables",
    );
  }
  fetchNodePrograms();
  const blob = makeBlob(NODE_PROGRAMS.linux);
  for (const [at, node] of [NODE_PROGRAMS.linux, NODE_PROGRAMS.windows].entries()) {
    await makeExecutable({ node, blob, to: path.join(folder, executableNames[at]) });
  }
  return executableNames;
}

async function ofThisNode(folder) {
  const node = process.execPath;
  if (!canBecomeExecutable(node)) {
    stop(`${node} has no place for the files, as some systems' own Node has none. Use one from nodejs.org.`);
  }
  const name = `rigsheet-${version}-${process.platform}-${process.arch}${process.platform === "win32" ? ".exe" : ""}`;
  await makeExecutable({ node, blob: makeBlob(node), to: path.join(folder, name) });
  return [name];
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const words = process.argv.slice(2);
  const at = words.indexOf("--to");
  const folder = path.resolve(at < 0 ? path.join(project, "dist", "executables") : (words[at + 1] ?? ""));
  await build();
  mkdirSync(folder, { recursive: true });
  const names = words.includes("--this-node") ? await ofThisNode(folder) : await makeExecutables(folder);
  for (const name of names) {
    const file = path.join(folder, name);
    console.log(`${file}: ${(statSync(file).size / 1e6).toFixed(1)} MB, not signed`);
  }
}
