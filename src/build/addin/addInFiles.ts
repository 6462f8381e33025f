/** Every file of the add-in's folder that is made from something else than a bundle. */
import { readFile } from "node:fs/promises";
import path from "node:path";
import { allFunctions } from "../../functions/all";
import { helpFiles } from "../../help/helpFiles";
import { functionMetadata } from "../../hosts/excel/functionMetadata";
import { TASKPANE_HTML } from "../../hosts/excel/taskpaneHtml";
import { addresses } from "./facts";
import { icons } from "./icons";
import { jsonManifest } from "./jsonManifest";
import { SUPPORT_HTML } from "./supportPage";
import { xmlManifest } from "./xmlManifest";

/** Excel's function metadata, with a help link for each function. */
export const functionsJson = (address: string): string =>
  `${JSON.stringify(functionMetadata(allFunctions, path.posix.dirname(addresses(address).help)), null, 2)}\n`;

/**
 * @param project the project's folder
 * @param address where the add-in is served, without a slash at its end
 */
export async function addInFiles(
  project: string,
  address: string,
): Promise<Map<string, string | Uint8Array>> {
  const files = new Map<string, string | Uint8Array>([
    ["manifest.xml", xmlManifest(address)],
    ["manifest.json", jsonManifest(address)],
    ["functions.json", functionsJson(address)],
    ["taskpane.html", TASKPANE_HTML],
    ["support.html", SUPPORT_HTML],
    ["LICENSE.txt", await readFile(path.join(project, "LICENSE"), "utf8")],
  ]);
  for (const [name, png] of await icons(path.join(project, "manifest", "icons")))
    files.set(`icons/${name}`, png);
  for (const [name, page] of helpFiles(allFunctions)) files.set(`help/${name}`, page);
  return files;
}
