/** The files of the add-in's folder that hold the address they are served from. */
import { deployPage } from "./deployPage";
import { functionsJson } from "./functionsJson";
import { jsonManifest } from "./jsonManifest";
import { xmlManifest } from "./xmlManifest";

/** @param address where the add-in is served, without a slash at its end */
export const addressedFiles = (address: string): ReadonlyMap<string, string> =>
  new Map([
    ["manifest.xml", xmlManifest(address)],
    ["manifest.json", jsonManifest(address)],
    ["functions.json", functionsJson(address)],
    ["deploy.html", deployPage(address)],
  ]);
