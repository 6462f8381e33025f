/** The files of the package as `npm pack` packs them, and those of the packages that it needs at run time. */
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { project, stop } from "./install.mjs";

/** @returns paths below the project's folder, in order */
export function packageFiles() {
  const npm = spawnSync("npm", ["pack", "--dry-run", "--ignore-scripts", "--json", "--loglevel=error"], {
    cwd: project,
    encoding: "utf8",
    shell: process.platform === "win32",
  });
  if (npm.status !== 0) {
    stop(`${npm.stderr ?? ""}npm could not say what belongs into the package; its own words are above.`);
  }
  const [{ files }] = JSON.parse(npm.stdout);
  return files.map((file) => file.path).sort();
}

/** @returns the folders of the packages that are installed beside ours; the optional ones are not needed */
export function neededPackages() {
  const { packages } = JSON.parse(readFileSync(path.join(project, "package-lock.json"), "utf8"));
  return Object.entries(packages)
    .filter(([where, { dev, devOptional, optional }]) => where !== "" && !dev && !devOptional && !optional)
    .map(([where]) => where)
    .sort();
}

/** Of an installed package: what is loaded of it, what it says of itself, and its licence. */
const LOADED = /\.(?:c?js|json|wasm)$|^licen[cs]e/i;
const NOT_LOADED = /^(?:node_modules|test|test-jest|benchmark|docs|examples|scripts|src)$/;

/** @returns paths below the project's folder, in order */
export const neededFiles = () => neededPackages().flatMap(filesBelow);

function filesBelow(folder) {
  const entries = readdirSync(path.join(project, folder), { withFileTypes: true });
  return entries
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const one = `${folder}/${entry.name}`;
      if (!entry.isDirectory()) return LOADED.test(entry.name) ? [one] : [];
      return NOT_LOADED.test(entry.name) ? [] : filesBelow(one);
    });
}
