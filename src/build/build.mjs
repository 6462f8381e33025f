/** Builds dist/ when a source is newer than what was built from it. */
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { install, needsInstall, project, stop, stopIfTooOld } from "./install.mjs";
import { writeFunctionList } from "./list-functions.mjs";
import { releaseLock, takeLock } from "./lock.mjs";
import { copyLibraries, writeNotices } from "./shipped.mjs";

/** Written last, so that a build cut short is seen as none. */
const STAMP = path.join(project, "dist", ".built");
const SOURCES = ["src", "manifest/icons", "webpack.config.js", "package-lock.json", "tsconfig.json"];

function newest(entry) {
  const stats = statSync(entry);
  if (!stats.isDirectory()) return stats.mtimeMs;
  const inside = readdirSync(entry).map((name) => newest(path.join(entry, name)));
  return Math.max(stats.mtimeMs, ...inside);
}

/** What is printed of the build, and the most that a file may weigh packed. */
const WEIGHED = [
  { file: "addin/functions.js", mostKilobytes: 150 },
  { file: "addin/taskpane.js" },
  { file: "desk/desk.js" },
  { file: "rigsheet.js" },
  { file: "pdf.js" },
];

export function needsBuild() {
  try {
    const { mtimeMs } = statSync(STAMP);
    return Math.max(...SOURCES.map((name) => newest(path.join(project, name)))) > mtimeMs;
  } catch (error) {
    // None, or one that another process has just taken away.
    if (error.code === "ENOENT") return true;
    throw error;
  }
}

/**
 * @param force builds even when nothing changed
 * @param clean takes away first what earlier builds left, so that none of it is packed
 */
export async function build({ force = false, clean = false } = {}) {
  stopIfTooOld();
  if (!force && !clean && !needsInstall() && !needsBuild()) return;
  await takeLock();
  try {
    if (clean) rmSync(path.join(project, "dist"), { recursive: true, force: true });
    // Another process may have done it meanwhile.
    install();
    if (force || needsBuild()) await bundle();
  } finally {
    releaseLock();
  }
}

async function bundle() {
  console.log("Building…");
  rmSync(STAMP, { force: true });
  writeFunctionList();
  const start = new Date();
  const require = createRequire(import.meta.url);
  const webpack = require("webpack");
  const compiler = webpack(require(path.join(project, "webpack.config.js")));
  const stats = await new Promise((resolve, reject) =>
    compiler.run((error, result) => (error ? reject(error) : resolve(result))),
  );
  await new Promise((resolve) => compiler.close(resolve));
  if (stats.hasErrors()) {
    stop(`${stats.toString({ preset: "errors-only", colors: false })}\nThe build failed; see above.`);
  }
  copyLibraries();
  writeHelp();
  writeAddIn();
  writePrintFonts();
  writeNotices(stats);
  writeFileSync(STAMP, "");
  // A source saved while it was being built must count as newer.
  utimesSync(STAMP, start, start);
  console.log(`Built in ${((Date.now() - start.getTime()) / 1000).toFixed(1)} s.`);
}

/** The help pages are written by the command that was just built. */
function writeHelp() {
  const dist = path.join(project, "dist");
  const words = [path.join(dist, "rigsheet.js"), "help", "--pages", path.join(dist, "help")];
  const { status } = spawnSync(process.execPath, words, { stdio: ["ignore", "ignore", "inherit"] });
  if (status !== 0) {
    stop("The help pages could not be written; see above.");
  }
}

/** The add-in's pages, icons and manifests, beside its bundles. */
const writeAddIn = () => generateBuilt("--addin", "The add-in's files");

/** The type of printed pages, beside the libraries. */
const writePrintFonts = () => generateBuilt("--fonts", "The fonts of printed pages");

function generateBuilt(option, what) {
  const words = [path.join(project, "dist", "generate.js"), option, project];
  const { status } = spawnSync(process.execPath, words, { stdio: ["ignore", "ignore", "inherit"] });
  if (status !== 0) stop(`${what} could not be written; see above.`);
}

function printSizes() {
  for (const { file, mostKilobytes } of WEIGHED) {
    const bytes = readFileSync(path.join(project, "dist", file));
    const kilobytes = (count) => (count / 1000).toFixed(1);
    const packed = gzipSync(bytes).length;
    const most = mostKilobytes ? `, of at most ${mostKilobytes}` : "";
    console.log(`dist/${file}: ${kilobytes(bytes.length)} kB, ${kilobytes(packed)} kB gzipped${most}`);
    if (mostKilobytes && packed > mostKilobytes * 1000) stop(`dist/${file} is too large.`);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await build({ force: process.argv.includes("--force"), clean: process.argv.includes("--clean") });
  printSizes();
}
