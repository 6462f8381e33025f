/**
 * A book as the bytes of an .xlsx: a working workbook with our formulas alive,
 * an office copy in which only native formulas are, or a sealed copy of values.
 * The same book gives the same bytes.
 *
 * Standard: ECMA-376 (Office Open XML), with dynamic-array cells as Excel
 * writes them ([MS-XLSX] 2.2.4). The library hucre writes the parts; what it
 * can't write is put right in patchedOutput.ts.
 */
import { writeXlsx as writeArchive } from "hucre/xlsx";
import { parseRange } from "../../formula/address";
import type { Book } from "../../workbooks/book";
import { cellStyle, DEFAULT_FONT } from "./cellStyle";
import { toProperties } from "./documentProperties";
import { stop, troubles } from "./fileTrouble";
import { withMarkedStyles } from "./keptText";
import { MAX_SHEET_NAME } from "./limits";
import { patchedOutput } from "./patchedOutput";
import { toPrintNames } from "./printSetup";
import { absoluteRange } from "./references";
import { sheetImages, type RenderPng } from "./sheetImages";
import { toStoredText } from "./storedText";
import { writtenSheet } from "./writtenSheet";

export interface WriteXlsxOptions {
  /** An office copy: cells that call our functions, and what they spilled, become values. */
  readonly frozen?: boolean;
  /** A sealed copy: every formula becomes its value. */
  readonly sealed?: boolean;
  /** Renders a picture as a PNG, the one kind that every spreadsheet program shows; needed for a book with pictures. */
  readonly renderPng?: RenderPng;
}

/**
 * @param book what to write; in an office or sealed copy every frozen cell needs a result
 * @returns the file; a book that can't be stored without loss rejects with a FileTrouble
 */
export async function writeXlsx(
  book: Book,
  { frozen = false, sealed = false, renderPng }: WriteXlsxOptions = {},
): Promise<Uint8Array> {
  checkSheetNames(book);
  for (const { name } of book.names) {
    if (!/^[\p{L}_][\p{L}\p{N}._]{0,254}$/u.test(name) || parseRange(name)) stop(troubles.badName(name));
  }
  const freezing = { ours: frozen || sealed, all: sealed };
  const styles = withMarkedStyles(book.looks.map(cellStyle));
  const images = await Promise.all(book.sheets.map((sheet) => sheetImages(sheet, renderPng)));
  const written = book.sheets.map((sheet, index) =>
    writtenSheet(sheet, book.looks, styles, freezing, images[index]!),
  );
  const bytes = await writeArchive({
    sheets: written.map(({ sheet }) => sheet),
    namedRanges: [
      ...book.names.map(({ name, sheet, range }) => ({
        name,
        range: absoluteRange(sheet, range, `The name ${name}`),
      })),
      ...book.sheets.flatMap(({ name, print }) => (print ? toPrintNames(print, name) : [])),
    ],
    defaultFont: DEFAULT_FONT,
    activeSheet: book.sheets.findIndex(({ hidden }) => !hidden),
    properties: toProperties(book, freezing),
  });
  return patchedOutput(bytes, written, book.template !== "" && !freezing.ours);
}

/** The rules that Excel has for a sheet's name; a file that breaks one opens as damaged. */
function checkSheetNames({ sheets }: Book): void {
  if (!sheets.some(({ hidden }) => !hidden)) stop(troubles.noSheet());
  const seen = new Set<string>();
  for (const { name } of sheets) {
    const bad = (why: string): never => stop(troubles.badSheetName(name, why));
    if (name === "") bad("it has no letters");
    if (name.length > MAX_SHEET_NAME) bad(`it is longer than ${MAX_SHEET_NAME} characters`);
    // eslint-disable-next-line no-control-regex -- control characters are what is looked for
    if (/[[\]:*?/\\\x00-\x1f]/.test(name)) bad("it holds one of [ ] : * ? / \\ or a control character");
    if (/^'|'$/.test(name)) bad("it begins or ends with an apostrophe");
    if (name.toLowerCase() === "history") bad("Excel keeps that name for itself");
    // A name can't be stored other than letter by letter, so it must need nothing else.
    if (toStoredText(name, `The name of sheet ${JSON.stringify(name)}`) !== name)
      bad("it looks like an escaped character");
    if (seen.has(name.toLowerCase())) bad("another sheet has that name");
    seen.add(name.toLowerCase());
  }
}
