/** Packages that only some work needs: a project of its own, fetched when that work is done. */
import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync } from "node:fs";
import path from "node:path";
import { needsInstall, project } from "./install.mjs";

/** Outside the sources, where the build would take them for some, and thrown away with the project's packages. */
export const placeOf = (name) => path.join(project, "node_modules", ".cache", `rigsheet-${name}`);

/**
 * @param from the folder of its package.json and package-lock.json
 * @param place where they are to lie, of {@link placeOf}
 * @param what what is said while they are fetched
 * @param more other files of the folder that belong to it, and words for the installer
 * @returns whether they are there
 */
export function fetchPackages(from, place, what, { files = [], words = [] } = {}) {
  mkdirSync(place, { recursive: true });
  for (const file of ["package.json", "package-lock.json", ...files]) {
    cpSync(path.join(from, file), path.join(place, file));
  }
  if (!needsInstall(place)) return true;
  console.log(what);
  const npm = spawnSync(
    "npm",
    ["ci", ...words, "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"],
    { cwd: place, stdio: ["ignore", 2, 2], shell: process.platform === "win32" },
  );
  return npm.status === 0;
}
