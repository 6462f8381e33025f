/** Every file of the add-in's folder that is made from something else than a bundle. */
import { readFile } from "node:fs/promises";
import path from "node:path";
import { allFunctions } from "../../functions/all";
import { helpFiles } from "../../help/helpFiles";
import { addressedFiles } from "../../hosts/excel/addIn/addressedFiles";
import { ADDRESS_PAGE } from "../../hosts/excel/addIn/addressPage";
import { deployPage } from "../../hosts/excel/addIn/deployPage";
import { EXAMPLE_ADDRESS, LOCAL_ADDRESS } from "../../hosts/excel/addIn/facts";
import { TASKPANE_HTML } from "../../hosts/excel/taskpaneHtml";
import { templates } from "../../workbooks/templates";
import { icons } from "./icons";
import { SUPPORT_HTML } from "./supportPage";

/** @param project the project's folder */
export async function addInFiles(project: string): Promise<Map<string, string | Uint8Array>> {
  const files = new Map<string, string | Uint8Array>([
    ...addressedFiles(LOCAL_ADDRESS),
    ["index.html", ADDRESS_PAGE],
    // Nobody deploys for one's own computer.
    ["deploy.html", deployPage(EXAMPLE_ADDRESS)],
    ["taskpane.html", TASKPANE_HTML],
    ["support.html", SUPPORT_HTML],
    ["LICENSE.txt", await readFile(path.join(project, "LICENSE"), "utf8")],
  ]);
  for (const { id, more } of templates)
    for (const name of [id, `${id}-demonstration`, ...more.map((one) => `${id}-${one.id}`)]) {
      const file = `${name}.xlsx`;
      files.set(`workbooks/${file}`, await readFile(path.join(project, "templates", file)));
    }
  for (const [name, png] of await icons(path.join(project, "manifest", "icons")))
    files.set(`icons/${name}`, png);
  for (const [name, page] of helpFiles(allFunctions)) files.set(`help/${name}`, page);
  return files;
}
