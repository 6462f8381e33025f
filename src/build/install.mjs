/**
 * Installs what is missing, so that a clone needs nothing but Node. Uses only
 * what Node itself brings: this runs before anything is installed.
 */
import { spawnSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";
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

/** The installer notes in node_modules what it installed from; an older note means another list. */
export function needsInstall(folder = project) {
  const noted = path.join(folder, "node_modules", ".package-lock.json");
  const lock = path.join(folder, "package-lock.json");
  return !existsSync(noted) || (existsSync(lock) && statSync(lock).mtimeMs > statSync(noted).mtimeMs);
}

/** Ends the program with a sentence where it can't go on. */
export function install() {
  const old = nodeTooOld();
  if (old) stop(old);
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
