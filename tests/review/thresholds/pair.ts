/** Two sides of a threshold: a change to a clean job that a rule of the review must name, and its nearest lawful neighbour. */
import { address, parseAddress } from "../../../src/formula/address";
import { namedCells, plainWord, type NamedCell } from "../../../src/review/namedCells";
import type { ReviewOptions } from "../../../src/review/rule";
import type { Book, BookCell, BookSheet } from "../../../src/workbooks/book";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";

/** A value to type, a formula to put in, or `GONE` to clear the cell. */
export type Content = number | string | { readonly formula: string } | typeof GONE;
export const GONE = Symbol("cleared");

/**
 * Cells by their names: `site_hot`; `rooms_run of G-01` for the row that has this name; `rooms_run free` for the first
 * row without one, `free 2` for the second; `rooms_run last` for the last row made ready, `closing` for the thin one
 * behind it, `below` for the one under that. `check short of volts` is the result of the check of that id,
 * `line About Falls` the first line of a sheet that begins so.
 */
export type Changes = Readonly<Record<string, Content>>;

/** What makes one side: contents by cell, or whatever else is done to the copy of the job. */
export type Side = Changes | ((book: Book) => Changes | void);

export interface Pair {
  readonly rule: string;
  /** The threshold, and where its figure comes from. */
  readonly limit: string;
  /** Of both sides, before them. */
  readonly given?: Side;
  readonly inside: Side;
  readonly beyond: Side;
  /** The cell that is named beyond; `row` of it: any cell of that row. Absent when it is about the whole workbook. */
  readonly at?: string;
  readonly row?: true;
  /** The mistake lies in what is stored: nothing is computed after the change. */
  readonly stored?: true;
  /** The rule reads results in the workbook itself, so they are computed anew before it is tried by itself. */
  readonly results?: true;
  /** Both sides need the whole review, for the readings that it makes of the workbook. */
  readonly whole?: true;
  /** The whole review counts this rule's finding with its cause. */
  readonly folded?: true;
  readonly options?: (clean: Book) => Partial<ReviewOptions>;
}

/** The columns that name a block's rows, where it is not `name`. */
const ROW_NAMES: Readonly<Record<string, string>> = {
  rooms: "outlet",
  commission: "outlet",
  sight: "slot",
  branches: "id",
  heads: "id",
  bonds: "where",
  slots: "slot",
  plans: "plan",
  made: "option",
  feeders: "from",
  rests: "cable",
  receivers: "kind",
  onpurpose: "what",
  exclusions: "text",
  assumptions: "text",
};

export const sheetOf = (book: Book, name: string): BookSheet => book.sheets.find((one) => one.name === name)!;

/** The cell of a sheet's first line that begins so. */
export const lineOf = (book: Book, sheet: string, begin: string): string =>
  Object.entries(sheetOf(book, sheet).cells).find(
    ([at, { value }]) => /^A\d+$/.test(at) && String(value).startsWith(begin),
  )![0];

/** The result of a check, by its id. */
function checkAt(book: Book, id: string): NamedCell["place"] {
  const [check] = multiRoom.sheets.flatMap(({ parts }) =>
    parts.flatMap((part) => (part.kind === "checks" ? part.checks.filter((one) => one.id === id) : [])),
  );
  const [{ place: first }] = namedCells(book, "checks_result") as [NamedCell];
  const { column } = parseAddress(first.cell)!;
  const [line] = Object.entries(sheetOf(book, first.sheet).cells).find(
    ([, { value }]) => value === check!.what,
  )!;
  return { sheet: first.sheet, cell: address(parseAddress(line)!.row, column) };
}

export function cellAt(book: Book, words: string): NamedCell["place"] {
  const line = /^line (\w+) (.+)$/.exec(words);
  if (line) return { sheet: line[1]!, cell: lineOf(book, line[1]!, line[2]!) };
  if (words.startsWith("check ")) return checkAt(book, words.slice("check ".length));
  const [, name, how = "", which = ""] = /^(\w+)(?: (of|free|last|closing|below)(?: (.+))?)?$/.exec(words)!;
  const cells = namedCells(book, name!);
  if (cells.length === 0) throw new Error(`no name ${name}`);
  if (how === "") return cells[0]!.place;
  const block = name!.slice(0, name!.indexOf("_"));
  const named = namedCells(book, `${block}_${ROW_NAMES[block] ?? "name"}`);
  if (how === "of" || how === "free") {
    const rows =
      how === "of"
        ? named.filter(({ value }) => plainWord(value) === which.toLowerCase())
        : named
            .slice(1, -1)
            .filter(({ value }) => plainWord(value) === "")
            .slice(Number(which || 1) - 1);
    if (!rows[0]) throw new Error(`no row for ${words}`);
    return cells[rows[0].index]!.place;
  }
  const { sheet, cell } = cells.at(how === "last" ? -2 : -1)!.place;
  const { row, column } = parseAddress(cell)!;
  return { sheet, cell: address(row + (how === "below" ? 1 : 0), column) };
}

export const valueAt = (book: Book, words: string): number => {
  const { sheet, cell } = cellAt(book, words);
  const { results, cells } = sheetOf(book, sheet);
  return Number(results[cell] ?? cells[cell]?.value);
};

/** Puts one side of a pair into a copy of the job. */
export function change(book: Book, side: Side | undefined): void {
  const changes = typeof side === "function" ? (side(book) ?? {}) : (side ?? {});
  const places = Object.entries(changes).map(([words, content]) => ({ place: cellAt(book, words), content }));
  for (const { place, content } of places) {
    const { cells, results } = sheetOf(book, place.sheet);
    const { look, spill } = cells[place.cell] ?? {};
    const held: BookCell =
      content === GONE
        ? {}
        : typeof content === "object"
          ? { formula: content.formula, ...(spill && { spill }) }
          : { value: content as number | string };
    cells[place.cell] = { ...(look === undefined ? {} : { look }), ...held };
    if (content === GONE) delete results[place.cell];
  }
}
