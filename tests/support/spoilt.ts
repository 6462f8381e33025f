/**
 * Mistakes of an office's life, put into saved workbooks (tests/fixtures/spoilt/README.md): a case's cells are
 * changed in the demonstration as its file shows it, computed anew, saved, and read again.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { jobFile } from "../../src/hosts/file/jobFile";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { renderPng } from "../../src/hosts/headless/renderPng";
import { parseAddress } from "../../src/formula/address";
import type { Finding, FindingPlace } from "../../src/review/finding";
import type { Book, BookPicture } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { apartmentBlock } from "../../src/workbooks/multiRoom/apartmentBlock";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { hostel } from "../../src/workbooks/multiRoom/hostel";
import { mendedGuestHouse } from "../review/cleanJobs";

type Value = number | string | boolean | null;

/** A cell by its heading and row or by its label, and where it stood when the case was written. */
export interface SpoiltPlace {
  readonly sheet: string;
  readonly column?: string;
  readonly row?: Value;
  readonly keyColumn?: string;
  readonly label?: string;
  readonly cell: string;
  /** Anything in that row counts. */
  readonly inRow?: boolean;
}

export interface SpoiltEdit {
  readonly at: SpoiltPlace;
  readonly value?: Value;
  readonly formula?: string;
  readonly was?: Value;
  /** Hidden by a filter; counted from 1. */
  readonly hideRow?: number;
}

export interface SpoiltCase {
  readonly id: string;
  readonly kind: string;
  readonly why: string;
  readonly book: BaseName;
  readonly edits: readonly SpoiltEdit[];
  readonly movesPrice: boolean;
  readonly fair: boolean;
  readonly because: string;
  /** Any of them; of a combination, a list for each mistake. */
  readonly cause: readonly SpoiltPlace[] | readonly (readonly SpoiltPlace[])[];
  readonly combination?: boolean;
  /** A job that only looks unusual: nothing is wrong, and neither cause nor innocent is given. */
  readonly clean?: boolean;
  readonly severity: "wrong" | "doubtful" | "unusual" | "note";
  readonly innocent: readonly SpoiltPlace[];
  readonly says: readonly string[];
  /** Where it is not the unspoilt workbook's; null where several answers would be right. */
  readonly rightTotal?: number | null;
  /** Saved by a program that did not compute it anew. */
  readonly stale?: boolean;
}

export type BaseName = "guest-house" | "hostel" | "block";

const INPUTS = {
  "guest-house": mendedGuestHouse,
  hostel: () => hostel,
  block: () => apartmentBlock,
} as const;

const bases = new Map<BaseName, Book>();

/** @returns computed */
export function baseBook(name: BaseName): Book {
  const known = bases.get(name);
  if (known) return known;
  const made = recalculate(layOut(multiRoom, INPUTS[name]()));
  bases.set(name, made);
  return made;
}

export const spoiltCases = (file: string): SpoiltCase[] =>
  JSON.parse(readFileSync(join(__dirname, "../fixtures/spoilt", file), "utf8")) as SpoiltCase[];

/** Whether the book no longer holds what the case was written over. */
export const isMoved = ({ book, edits }: SpoiltCase): boolean =>
  edits.some(({ at: { sheet, cell }, was, hideRow }) => {
    if (hideRow !== undefined) return false;
    const there = baseBook(book).sheets.find(({ name }) => name === sheet)!;
    const value = there.results[cell] ?? there.cells[cell]?.value;
    return typeof value === "number" && typeof was === "number"
      ? Math.abs(value - was) > 1e-6 * Math.max(1, Math.abs(was))
      : (value ?? "") !== (was ?? "");
  });

/** @returns the book with a case's cells changed, not computed */
export function withEdits(book: Book, edits: readonly SpoiltEdit[]): Book {
  const sheets = new Map(book.sheets.map((sheet) => [sheet.name, { ...sheet, cells: { ...sheet.cells } }]));
  for (const { at, value, formula, hideRow } of edits) {
    if (hideRow !== undefined) continue;
    const sheet = sheets.get(at.sheet)!;
    const { look, note } = sheet.cells[at.cell] ?? {};
    sheet.cells[at.cell] = {
      ...(look !== undefined && { look }),
      ...(note !== undefined && { note }),
      ...(formula === undefined
        ? value === null || value === undefined
          ? {}
          : { value }
        : { formula: formula.replace(/^=/, "") }),
    };
  }
  return { ...book, sheets: [...sheets.values()] };
}

/** Pictures by their drawings: most mistakes leave them as they were, and each takes a tenth of a second. */
const pictures = new Map<string, Promise<Uint8Array>>();

function pictureOf(picture: BookPicture): Promise<Uint8Array> {
  const { svg, width, height } = picture;
  const drawing = JSON.stringify([svg, width, height]);
  const known = pictures.get(drawing) ?? renderPng(picture);
  pictures.set(drawing, known);
  return known;
}

/** @returns as the file of the case is read */
export async function spoilt(one: SpoiltCase): Promise<Book> {
  const book = withEdits(baseBook(one.book), one.edits);
  const read = await readXlsx(await jobFile(one.stale ? book : recalculate(book), pictureOf), {
    forReview: true,
  });
  // None of our workbooks hides a row, so that no writer of ours does.
  const hidden = one.edits.flatMap(({ at, hideRow }) =>
    hideRow === undefined ? [] : [{ sheet: at.sheet, row: hideRow - 1 }],
  );
  return hidden.length === 0
    ? read
    : {
        ...read,
        sheets: read.sheets.map((sheet) => ({
          ...sheet,
          hiddenRows: hidden.flatMap(({ sheet: name, row }) => (name === sheet.name ? [row] : [])),
        })),
      };
}

const key = ({ sheet, cell }: FindingPlace): string => `${sheet}!${cell}`;
const rowOf = ({ sheet, cell }: FindingPlace): string => `${sheet}!${parseAddress(cell)!.row}`;

export type Outcome = "cell" | "row" | "other" | "silent";

/** @returns how one mistake is named: in its cell, somewhere in its row, elsewhere only, or not */
export function outcomeOf(findings: readonly Finding[], causes: readonly SpoiltPlace[]): Outcome {
  const places = findings.flatMap(({ place, cause }) => [place, cause].filter((one) => one !== undefined));
  const cells = new Set(causes.map(key));
  const rows = new Set(causes.filter(({ inRow }) => inRow).map(rowOf));
  if (places.some((at) => cells.has(key(at)) || rows.has(rowOf(at)))) return "cell";
  const near = new Set(causes.map(rowOf));
  if (places.some((at) => near.has(rowOf(at)))) return "row";
  return findings.length > 0 ? "other" : "silent";
}
