/**
 * Installs what is missing, so that a clone needs nothing but Node. Uses only
 * what Node itself brings: this runs before anything is installed.
 */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

export const project = path.join(path.dirname(fileURLToPath(import.meta.url)), "..", "..");

const LEAST_NODE = [20, 19];

/** @returns a sentence when this Node is too old, else nothing */
export function nodeTooOld(version = process.versions.node) {
  const [major, minor] = version.split(".").map(Number);
  const enough = major > LEAST_NODE[0] || (major === LEAST_NODE[0] && minor >= LEAST_NODE[1]);
  return enough
    ? undefined
    : `This is Node ${version}; Rigsheet needs ${LEAST_NODE.join(".")} or newer. Install a current Node from nodejs.org.`;
}

/**
 * The installer notes in node_modules, last of all, what it installed. What is
 * wanted is compared with that note by versions, not by the files' times: those
 * differ after every `npm install`, and installing anew takes every file away
 * for a while.
 */
export function needsInstall(folder = project) {
  const noted = packagesIn(path.join(folder, "node_modules", ".package-lock.json"));
  if (!noted) return true;
  const wanted = packagesIn(path.join(folder, "package-lock.json")) ?? {};
  return Object.entries(wanted).some(
    ([where, { version, optional, devOptional }]) =>
      // Optional ones are left out where they don't fit the machine.
      where !== "" && !optional && !devOptional && noted[where]?.version !== version,
  );
}

function packagesIn(lockFile) {
  try {
    return JSON.parse(readFileSync(lockFile, "utf8")).packages;
  } catch {
    return undefined;
  }
}

export function stopIfTooOld() {
  const old = nodeTooOld();
  if (old) stop(old);
}

/** Installs if something is missing; ends the program with a sentence where it can't go on. */
export function install() {
  stopIfTooOld();
  if (!needsInstall()) return;
  console.log("Installing what is missing (once; a minute or two)…");
  // No package of ours needs a script of its own to be installed, so none may run one.
  const npm = spawnSync("npm", ["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: project,
    stdio: ["ignore", 2, 2],
    shell: process.platform === "win32",
  });
  if (npm.status !== 0) {
    stop("The installation failed; npm's own words are above. Check the network, then run this again.");
  }
}

export function stop(sentence) {
  console.error(sentence);
  process.exit(1);
}
