/** The type of printed pages for tests, and sheets set in it. */
import { formattedAs } from "../../../src/hosts/grid/asWritten";
import { loadLibrary } from "../../../src/hosts/headless/loadLibrary";
import { printFontFiles } from "../../../src/hosts/headless/printFontFiles";
import { PrintType } from "../../../src/hosts/pdf/printType";
import { sheetsPdf } from "../../../src/hosts/pdf/sheetsPdf";
import type { MadePdf } from "../../../src/hosts/pdf/unset";
import type { Book } from "../../../src/workbooks/book";
import { paperParts } from "../../../src/workbooks/paperSheet";

export const FACTS = {
  title: "Invented job",
  author: "Invented firm",
  subject: "D-1, revision 1",
  language: "en",
  at: new Date("2026-11-30T12:00:00Z"),
};

let type: Promise<PrintType> | undefined;
export const printedType = (): Promise<PrintType> =>
  (type ??= printFontFiles().then((fonts) => new PrintType(fonts)));

/** What a cell shows of a number, by the grid's library. */
export const shown = (value: number | boolean, format: string | undefined): string =>
  formattedAs(loadLibrary(), value, format, undefined);

/** @param copy of values only */
export async function printed(copy: Book): Promise<MadePdf> {
  const set = await printedType();
  const parts = paperParts(copy, {
    formatted: shown,
    textWidth: (...line) => set.lineWidth(...line),
  });
  return sheetsPdf(parts, FACTS, set);
}
