/**
 * Faults in the words of the workbook. A function knows its arguments by their
 * names; a sheet has columns, fields and rows with names of their own. So where
 * a formula hands its cells to a function, "length is -3" is said as "Run of
 * 12-1 (Rooms H8) is -3".
 */
import { reworded } from "../engine/argumentNames";
import { isFault, type Fault } from "../engine/faults";
import { isMatrix, type Cell, type Matrix } from "../functions/core/cells";
import type { Declaration } from "../functions/core/declare";
import { address, columnLetters, parseRange, type Place, type Zone } from "../formula/address";
import { isBookError, type Book, type BookName, type BookResult } from "../workbooks/book";
import type { Block, WorkbookDefinition } from "../workbooks/definition";
import { rowKey } from "../workbooks/rowKey";
import { templateOf } from "../workbooks/templates";
import { areaIn } from "./argumentValue";
import { labelsIn } from "./labels";

/** What is needed of a workbook to speak of its cells. */
export interface SpokenOf {
  readonly names: readonly BookName[];
  readonly sheets: readonly string[];
  /** Undefined for a workbook that is not ours. */
  readonly definition: WorkbookDefinition | undefined;
  /** Of the cell that names a row, in the column of that name. */
  readonly valueAt: (sheet: string, place: Place, name: string) => BookResult | undefined;
}

/** A book, to be spoken of. */
export const spokenOf = (book: Book): SpokenOf => {
  const sheets = new Map(book.sheets.map((sheet) => [sheet.name, sheet]));
  return {
    names: book.names,
    sheets: [...sheets.keys()],
    definition: templateOf(book.template)?.definition,
    valueAt: (sheet, { row, column }) => {
      const at = address(row, column);
      const found = sheets.get(sheet);
      return found?.results[at] ?? found?.cells[at]?.value;
    },
  };
};

/** A place within an argument, counted from its first cell; of a list its entry alone. */
interface Within {
  readonly row: number;
  readonly column?: number;
  /** The place counts only in an argument of so many rows, else all of it is meant. */
  readonly ofRows?: number;
}

/** @returns what the workbook calls a place of an argument, or all of it; undefined for what is written out */
export type WordsFor = (written: string, at: Within | undefined) => string | undefined;

const MOST_LETTERS = 40;
/** Ends the keys of columns that tell what counts, beside those that are filled. */
const USED = "_used";

/** @param sheet the sheet on which the formula stands */
export function wordsIn({ names, sheets, definition, valueAt }: SpokenOf, sheet: string): WordsFor {
  const labelAt = labelsIn({ names: [...names] }, definition);
  const zones = new Map(names.map(({ name, sheet: on, range }) => [name, { on, zone: parseRange(range) }]));
  const blocks: readonly Block[] = (definition?.sheets ?? []).flatMap(({ parts }) =>
    parts.filter((part) => part.kind === "block"),
  );
  const within = (name: string, on: string, row: number): Zone | undefined => {
    const found = zones.get(name);
    return found?.on === on && found.zone && found.zone.top <= row && row <= found.zone.bottom
      ? found.zone
      : undefined;
  };
  const blockAt = (on: string, row: number): Block | undefined =>
    blocks.find((block) => within(`${block.name}_${block.columns[0]!.key}`, on, row));

  /** What the row of a place is called, where another cell of it says so. */
  function rowNameAt(on: string, { row, column }: Place): string {
    const block = blockAt(on, row);
    const key = block && rowKey(block.columns);
    const name = `${block?.name}_${key}`;
    const zone = key === undefined ? undefined : within(name, on, row);
    if (!zone || zone.left === column) return "";
    const value = valueAt(on, { row, column: zone.left }, name);
    return value === undefined || value === "" || isBookError(value)
      ? ""
      : ` of ${String(value).slice(0, MOST_LETTERS)}`;
  }

  /** The cell that is filled, of one that tells what counts: there it is put right. */
  function entered(on: string, place: Place): Place {
    const block = blockAt(on, place.row);
    const left = (key: string): number | undefined => within(`${block!.name}_${key}`, on, place.row)?.left;
    const shown = block?.columns.find(({ key }) => key.endsWith(USED) && left(key) === place.column);
    const column = shown && left(shown.key.slice(0, -USED.length));
    return column === undefined ? place : { row: place.row, column };
  }

  return (written, wanted) => {
    const area = areaIn(names, sheets, sheet, written);
    if (!area) return undefined;
    const { sheet: on, zone } = area;
    const at = (wanted?.ofRows ?? heightOf(zone)) === heightOf(zone) ? wanted : undefined;
    const inside = (first: number, last: number, offset = 0): number =>
      first === last ? first : first + offset;
    const lies = zone.top === zone.bottom;
    const place = entered(on, {
      row: inside(zone.top, zone.bottom, at?.row),
      column: inside(zone.left, zone.right, at?.column ?? (lies ? at?.row : 0)),
    });
    const label = labelAt(on, place);
    const unknown = label === `column ${columnLetters(place.column)}`;
    const single = zone.top === zone.bottom && zone.left === zone.right;
    if (!at && !single) {
      if (zone.left === zone.right) return unknown ? `${label} of ${on}` : `${label} on ${on}`;
      const heading = blockAt(on, zone.top)?.heading;
      return heading === undefined ? `${on} ${address(zone.top, zone.left)}` : `“${heading}” on ${on}`;
    }
    const cell = `${on} ${address(place.row, place.column)}`;
    return unknown ? cell : `${label}${rowNameAt(on, place)} (${cell})`;
  };
}

const heightOf = ({ top, bottom }: Zone): number => bottom - top + 1;

/** The sentence of such a fault without the place in it: the same trouble in several rows reads alike. */
export const withoutPlaces = (sentence: string): string =>
  sentence.replace(/(?: of [^()]{1,40})? \([^()]+ [A-Z]{1,3}\d+\)/g, "");

/**
 * @param declaration the function that was called
 * @param written its arguments as the formula has them
 * @param outcome what it answered
 * @param wordsFor of the workbook in which the formula stands; asked for only when there is a fault
 * @param cell the one that is asked about, where the outcome is its alone
 * @returns the outcome with its faults in the workbook's words
 */
export function inSheetWords(
  { parameters }: Pick<Declaration, "parameters">,
  written: readonly string[],
  outcome: Cell | Matrix,
  wordsFor: () => WordsFor,
  cell: Place = { row: 0, column: 0 },
): Cell | Matrix {
  let words: WordsFor | undefined;
  const said = (fault: Fault, at: Place, rows: number): Fault => {
    if (fault.marked === undefined) return fault;
    words ??= wordsFor();
    const message = reworded(fault.marked, (name, row) => {
      const index = parameters.findIndex((parameter) => parameter.name === name);
      const parameter = parameters[index];
      if (!parameter) return undefined;
      // Of an argument that is given any number of times, each has a row of the answer.
      const text = written[parameter.shape === "repeated" ? index + at.row : index];
      if (text === undefined) return undefined;
      if (parameter.shape === "each") return words!(text, at);
      if (row !== undefined) return words!(text, { row: row - 1 });
      // A list of as many rows as the answer has: a row of the one is about that of the other.
      return words!(text, rows > 1 ? { row: at.row, ofRows: rows } : undefined);
    });
    return { kind: fault.kind, code: fault.code, message };
  };
  if (!isMatrix(outcome)) return isFault(outcome) ? said(outcome, cell, 1) : outcome;
  if (!outcome.some((row) => row.some((cell) => isFault(cell) && cell.marked !== undefined))) return outcome;
  return outcome.map((cells, row) =>
    cells.map((cell, column) => (isFault(cell) ? said(cell, { row, column }, outcome.length) : cell)),
  );
}
