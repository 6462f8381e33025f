/**
 * The bytes of an .xlsx as a book: a workbook of ours that a person has filled
 * in with Excel or LibreOffice, or any other. What a person typed comes back
 * exactly. What a book can't hold (pictures, charts, merged cells, rules
 * of other kinds) is left out, and so is the sheet of our own pictures: it is
 * drawn anew from the figures whenever the workbook is written.
 */
import { readXlsx as readArchive } from "hucre/xlsx";
import type { CellStyle } from "hucre/xlsx";
import type { Workbook } from "hucre";
import { withoutPictures } from "../../pictures/withPictures";
import { lookIndex, type Book, type BookName, type Look, type SavedState } from "../../workbooks/book";
import { oneCellNames } from "../../workbooks/named";
import { lookOf } from "./cellStyle";
import { checkedEntries } from "./checkedEntries";
import { fromProperties } from "./documentProperties";
import { excelState } from "./excelState";
import { fileFacts } from "./fileFacts";
import { FileTrouble, stop, troubles } from "./fileTrouble";
import { MAX_SHEETS } from "./limits";
import { PackageParts } from "./packageParts";
import { patchedInput } from "./patchedInput";
import { readSheet } from "./readSheet";
import type { AroundCells } from "./sheetFacts";
import { areaOf } from "../../formula/areaOf";
import { withoutIdleAts } from "../../formula/singles";
import { fromStoredText } from "./storedText";

export interface ReadOptions {
  /** To be looked over, not worked with: `saved.file` is filled in, and one whose days are counted from 1904 is read too. */
  readonly forReview?: boolean;
}

/** @returns the book; a file that is no workbook, damaged or beyond the caps rejects with a FileTrouble */
export async function readXlsx(bytes: Uint8Array, { forReview = false }: ReadOptions = {}): Promise<Book> {
  const entries = checkedEntries(bytes);
  const state = excelState(bytes, entries);
  const around = new Map<string, AroundCells>();
  const input = patchedInput(bytes, entries, state, around);
  try {
    const workbook = await readArchive(input, { readStyles: true });
    if (workbook.dateSystem === "1904" && !forReview) stop(troubles.dates1904());
    const file = forReview ? fileFacts(new PackageParts(bytes, entries), around) : undefined;
    return bookOf(workbook, { ...state.saved, ...(file && { file }) });
  } catch (error) {
    if (error instanceof FileTrouble) throw error;
    return stop(troubles.unreadable(error instanceof Error ? error.message : String(error)), error);
  }
}

function bookOf(workbook: Workbook, state: SavedState): Book {
  if (workbook.sheets.length > MAX_SHEETS) stop(troubles.tooManySheets(workbook.sheets.length, MAX_SHEETS));
  const looks: Look[] = [];
  const context = {
    lookFor: lookFinder(looks, workbook.themeColors ?? []),
    cellCount: 0,
    boundElsewhere: false,
  };
  const sheets = workbook.sheets.map((sheet) => readSheet(sheet, context));
  const names = namesOf(workbook);
  const isOneCell = oneCellNames(names);
  for (const { cells } of sheets)
    for (const cell of Object.values(cells))
      if (cell.formula?.includes("@")) cell.formula = withoutIdleAts(cell.formula, isOneCell);
  const saved = context.boundElsewhere ? { ...state, boundElsewhere: true as const } : state;
  return withoutPictures({
    ...fromProperties(workbook.properties),
    looks,
    sheets,
    names,
    ...(Object.keys(saved).length > 0 && { saved }),
  });
}

/**
 * A file has few looks and very many cells, so each style is translated once. The
 * library makes a style for every cell, of parts that it shares.
 */
function lookFinder(looks: Look[], theme: readonly string[]): (style: CellStyle) => number | undefined {
  /** A tree: at each node the next one for a part, by the nodes' numbers. */
  const next: Map<unknown, number>[] = [new Map()];
  const known = new Map<number, number | undefined>();
  return (style) => {
    let node = 0;
    for (const name of STYLE_PARTS) {
      const part = style[name];
      let found = next[node]!.get(part);
      if (found === undefined) next[node]!.set(part, (found = next.push(new Map()) - 1));
      node = found;
    }
    if (known.has(node)) return known.get(node);
    const look = lookOf(style, theme);
    const index = Object.keys(look).length === 0 ? undefined : lookIndex({ looks }, look);
    known.set(node, index);
    return index;
  };
}

/** All that a look is made from. */
const STYLE_PARTS = ["font", "fill", "border", "alignment", "numFmt", "protection"] as const;

/** The workbook's names for one range; a name for several, or that lost its range, is no name of a book. */
function namesOf({ namedRanges = [], sheets }: Workbook): BookName[] {
  const known = new Set(sheets.map(({ name }) => name));
  return namedRanges.flatMap(({ name, range, scope }): BookName[] => {
    const found = scope === undefined && !name.startsWith("_xl") ? areaOf(range) : undefined;
    return found && known.has(found.sheet)
      ? [{ name, sheet: fromStoredText(found.sheet), range: found.range }]
      : [];
  });
}
