/** The type of printed pages in Node, from what is installed with us. */
import { readFile } from "node:fs/promises";
import { PRINT_FONT_HOME, PRINT_FONTS, type PrintFont, type PrintFonts } from "../pdf/printFonts";
import { libraryFile } from "./libraryFile";

export async function printFontFiles(): Promise<PrintFonts> {
  const faces = Object.entries(PRINT_FONTS) as [PrintFont, string][];
  const read = faces.map(async ([face, file]) => [
    face,
    new Uint8Array(await readFile(libraryFile(PRINT_FONT_HOME, file))),
  ]);
  return Object.fromEntries(await Promise.all(read)) as Record<PrintFont, Uint8Array>;
}
