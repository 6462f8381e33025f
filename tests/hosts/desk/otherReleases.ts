/** Releases of the static folder that differ from the built one by a mark which their page shows. */
import { deskFiles, type Files } from "../../../src/build/static/deskFiles";
import { staticFolder } from "../../../src/build/static/staticFolder";
import { DIST } from "./builtFolder";

/** @param mark is found in the page as `document.documentElement.dataset.mark` */
export async function markedRelease(mark: string, version: string): Promise<Files> {
  const files = await deskFiles(DIST);
  const script = Buffer.from(files.page.get("desk.js")!).toString();
  files.page.set(
    "desk.js",
    Buffer.from(`document.documentElement.dataset.mark = ${JSON.stringify(mark)};\n${script}`),
  );
  return staticFolder(DIST, { files, version });
}
