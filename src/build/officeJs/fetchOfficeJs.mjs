/** Microsoft's office.js, which a test loads as the pane's page does: some 90 MB of all programs and languages. */
import path from "node:path";
import { fetchPackages, placeOf } from "../fetchPackages.mjs";
import { project } from "../install.mjs";

/** Fetches it; without it its tests are skipped by name, or fail where nothing may be skipped. */
export function fetchOfficeJs() {
  const from = path.join(project, "src", "build", "officeJs");
  if (!fetchPackages(from, placeOf("office-js"), "Fetching Microsoft's office.js (once; some 90 MB)…"))
    console.log("It could not be fetched; npm's own words are above. Tests that need it are skipped.");
}
