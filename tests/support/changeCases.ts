/**
 * Pairs of revisions and what a change order must say of them (tests/fixtures/changes/README.md): the edits of a case
 * are put into the demonstrations' cells as their files show them.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Book, BookCell } from "../../src/workbooks/book";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { apartmentBlock } from "../../src/workbooks/multiRoom/apartmentBlock";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { hostel } from "../../src/workbooks/multiRoom/hostel";
import { sheetDate } from "../../src/workbooks/sheetDate";
import { mendedGuestHouse } from "../review/cleanJobs";

export interface CellEdit {
  readonly at: { readonly sheet: string; readonly cell: string };
  readonly value: number | string | null;
  readonly type?: "date";
}

export interface ChangeCase {
  readonly id: string;
  readonly why: string;
  readonly book: "guest-house" | "hostel" | "block";
  readonly earlier: readonly CellEdit[];
  readonly later: readonly CellEdit[];
  readonly laterBook?: string;
  readonly laterFile?: string;
  readonly sameFile?: boolean;
  readonly fields?: Readonly<Record<string, string>>;
  readonly scope: readonly { readonly says: readonly string[]; readonly net: number | "?" | null }[];
  readonly sum: Readonly<Record<string, number | "?">>;
  readonly mustNotShow: readonly string[];
  readonly oneLine: boolean;
}

export const changeCases = JSON.parse(
  readFileSync(join(__dirname, "../fixtures/changes/changes.json"), "utf8"),
) as ChangeCase[];

const INPUTS: Readonly<Record<ChangeCase["book"], () => JobInputs>> = {
  "guest-house": mendedGuestHouse,
  hostel: () => hostel,
  block: () => apartmentBlock,
};

/** @returns not computed */
export function withCells(book: Book, edits: readonly CellEdit[]): Book {
  const sheets = new Map(book.sheets.map((sheet) => [sheet.name, { ...sheet, cells: { ...sheet.cells } }]));
  for (const { at, value, type } of edits) {
    const { cells } = sheets.get(at.sheet)!;
    const { look } = cells[at.cell] ?? {};
    const day = type === "date" ? /^(\d{4})-(\d\d)-(\d\d)$/.exec(String(value)) : null;
    const typed = day ? sheetDate(Number(day[1]), Number(day[2]), Number(day[3])) : value;
    cells[at.cell] = {
      ...(look !== undefined && { look }),
      ...(typed !== null && { value: typed }),
    } satisfies BookCell;
  }
  return { ...book, sheets: [...sheets.values()] };
}

export const revisionsOf = ({ book, earlier, later }: ChangeCase): readonly [older: Book, newer: Book] => [
  withCells(layOut(multiRoom, INPUTS[book]()), earlier),
  withCells(layOut(multiRoom, INPUTS[book]()), later),
];
