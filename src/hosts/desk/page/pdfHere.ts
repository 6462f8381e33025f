/** The PDF writer on this page, from wherever the page came. */
import type { PrintFont } from "../../pdf/printFonts";
import { pdfLoader, runScript, type PdfScriptFile, type PdfWriter } from "../../../pane/loadPdf";
import { make } from "./dom";
import { besidesAddress, inside } from "./pageParts";
import { stand } from "./stand";

/** The policy of the one file lets scripts run that stand in the page, and no others. */
async function runInside(file: PdfScriptFile): Promise<void> {
  const script = make("script", {}, new TextDecoder().decode(await inside(file)));
  document.head.append(script);
  script.remove();
}

const load = pdfLoader(stand === "file" ? runInside : (file) => runScript(besidesAddress(file)));

/** @throws HostTrouble where it can't be loaded now */
export const pdfWriter = async (): Promise<PdfWriter> => {
  const writer = await load();
  await addType(writer, window);
  return writer;
};

const known = new WeakSet<Window>();

/** Pages that are shown on a screen, or printed by the browser, are set in the very type of the PDF. */
export async function addType(
  { type, SCREEN_FACES, SCREEN_FAMILY }: PdfWriter,
  where: Window,
): Promise<void> {
  if (known.has(where)) return;
  known.add(where);
  for (const face of Object.keys(SCREEN_FACES) as PrintFont[]) {
    const { FontFace: Face } = where as Window & typeof globalThis;
    const made = new Face(SCREEN_FAMILY, Uint8Array.from(type.fonts[face]), SCREEN_FACES[face]);
    // A browser that can't show it still writes it into the PDF.
    await made.load().then(
      () => where.document.fonts.add(made),
      () => undefined,
    );
  }
}
