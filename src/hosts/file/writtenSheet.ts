/** One sheet of a book as the library's sheet to write. */
import type { CellStyle, CellValue, WriteSheet } from "hucre/xlsx";
import { address, LAST_COLUMN, LAST_ROW, parseAddress, rangeOf } from "../../formula/address";
import {
  isBookError,
  type BookCell,
  type BookResult,
  type BookSheet,
  type BookValue,
  type Look,
} from "../../workbooks/book";
import { stop, troubles } from "./fileTrouble";
import { markedStyle, mightBeTaken } from "./keptText";
import { MAX_CELL_TEXT, MAX_FORMULA } from "./limits";
import { toConditionalRules } from "./marks";
import { FastRowWriter, type PlainRow } from "./fastRowWriter";
import type { SheetImages } from "./sheetImages";
import { toFoot, toPageSetup } from "./printSetup";
import { callsUs } from "../../formula/callsUs";
import { toStoredFormula } from "../../formula/storedFormula";
import { MARKER, SPILLED, toStoredText } from "./storedText";
import { toDataValidation } from "./validations";

type WrittenCells = NonNullable<WriteSheet["cells"]>;
type WrittenCell = WrittenCells extends Map<string, infer C> ? C : never;

export interface WrittenSheet {
  readonly sheet: WriteSheet;
  /** Some formula has no cached value. */
  readonly uncalculated: boolean;
  /** The sheet's XML holds values that patchedOutput puts right. */
  readonly marked: boolean;
  /** Rows that patchedOutput puts into the sheet's XML. */
  readonly plain: FastRowWriter;
  /** The last row and column that hold anything. */
  readonly last: string;
}

export interface Freezing {
  /** Cells that call us are written as values. */
  readonly ours: boolean;
  /** Every formula is written as its value. */
  readonly all: boolean;
}

/** The errors that a cell can be stored with (ECMA-376 part 1, 18.18.11 ST_CellType); others become `#VALUE!`. */
const ERRORS: ReadonlySet<string> = new Set([
  "#NULL!",
  "#DIV/0!",
  "#VALUE!",
  "#REF!",
  "#NAME?",
  "#NUM!",
  "#N/A",
]);
/** Text that the library would store as an error. */
const LIKE_ERROR: ReadonlySet<string> = new Set([...ERRORS, "#GETTING_DATA", "#SPILL!", "#CALC!"]);
const AUTHOR = "Rigsheet";

const errorCode = (code: string): string => (ERRORS.has(code) ? code : "#VALUE!");
const isNegativeZero = (value: unknown): boolean => Object.is(value, -0);

/**
 * @param looks the book's looks
 * @param styles the looks as cell styles, by the same index, and each with the mark that keeps text
 * @param images the sheet's pictures, rendered
 */
export function writtenSheet(
  source: BookSheet,
  looks: readonly Look[],
  styles: readonly CellStyle[],
  freezing: Freezing,
  images: SheetImages,
): WrittenSheet {
  const cells: WrittenCells = new Map();
  let uncalculated = false;
  let marked = false;

  const checkedText = (text: string, where: string): string => {
    if (text.length > MAX_CELL_TEXT) stop(troubles.tooLong(where, text.length, MAX_CELL_TEXT));
    return toStoredText(text, where);
  };
  const checkedNumber = (value: number, where: string): number =>
    Number.isFinite(value) ? value : stop(troubles.notFinite(where));
  const value = (content: BookResult, where: string): WrittenCell => {
    if (isBookError(content)) return { value: errorCode(content.error) };
    if (typeof content === "boolean") return { value: content };
    if (typeof content === "number") {
      if (!isNegativeZero(content)) return { value: checkedNumber(content, where) };
      marked = true;
      return { value: null, richText: [{ text: `${MARKER}-0` }] };
    }
    const text = checkedText(content, where);
    // As rich text it stays text.
    return LIKE_ERROR.has(content) ? { value: null, richText: [{ text }] } : { value: text };
  };
  const isFilled = filledCells(source, freezing);
  /** As Excel stores it: the library knows text without a formula as a shared or an inline string only. */
  const spilledText = (content: string, where: string): WrittenCell => {
    marked = true;
    return { value: null, richText: [{ text: MARKER + SPILLED + checkedText(content, where) }] };
  };
  const cachedResult = (content: BookResult | undefined, where: string): CellValue => {
    if (content === undefined) {
      uncalculated = true;
      return null;
    }
    if (isBookError(content) || isNegativeZero(content)) {
      marked = true;
      return MARKER + (isBookError(content) ? errorCode(content.error) : "-0");
    }
    if (typeof content === "string") return checkedText(content, where);
    return typeof content === "number" ? checkedNumber(content, where) : content;
  };
  const formulaCell = (formula: string, cell: BookCell, row: number, column: number, where: string) => {
    const stored = toStoredText(toStoredFormula(formula), where);
    if (stored.length > MAX_FORMULA) stop(troubles.tooLong(where, stored.length, MAX_FORMULA));
    const written: WrittenCell = {
      formula: stored,
      formulaResult: cachedResult(resultAt(source, address(row, column)), where),
    };
    const { rows, columns } = cell.spill ?? { rows: 1, columns: 1 };
    if (cell.spill || callsUs(formula)) {
      written.formulaType = "array";
      written.formulaDynamic = true;
      written.formulaRef = rangeOf({
        top: row,
        left: column,
        bottom: Math.min(LAST_ROW, row + rows - 1),
        right: Math.min(LAST_COLUMN, column + columns - 1),
      });
    }
    return written;
  };
  const put = (at: string, row: number, column: number): void => {
    const where = `Cell ${at} of sheet "${source.name}"`;
    const cell = source.cells[at] ?? {};
    const result = resultAt(source, at);
    let written: WrittenCell;
    let note = cell.note;
    if (cell.formula === undefined) {
      const content = cell.value ?? result;
      if (content === undefined) written = {};
      else if (typeof content === "string" && cell.value === undefined && isFilled(row, column))
        written = spilledText(content, where);
      else written = value(content, where);
    } else if (isFrozen(cell.formula, freezing)) {
      if (result === undefined) stop(troubles.notCalculated(where));
      written = value(result!, where);
      if (!freezing.all) note = frozenNote(cell.formula, note);
    } else {
      written = formulaCell(cell.formula, cell, row, column, where);
    }
    const look = written.formula === undefined ? keptLook(cell, result) : cell.look;
    if (look !== undefined) written.style = styles[look];
    if (note) written.comment = { text: checkedText(note, where), author: AUTHOR };
    cells.set(`${row},${column}`, written);
  };

  /** The index of a constant's style. What a formula fills can't be edited, so it needs no mark. */
  const keptLook = (
    { value, formula, look }: BookCell,
    result: BookResult | undefined,
  ): number | undefined => {
    const frozen = formula === undefined ? freezing.ours : true;
    const text = value ?? (frozen ? result : undefined);
    return typeof text === "string" && mightBeTaken(text) ? markedStyle(look, looks.length) : look;
  };

  const plain = new FastRowWriter();
  const heights = new Map(Object.entries(source.rowHeights).map(([row, height]) => [Number(row), height]));
  const cellsOf = cellsByRow(source);
  const rows = [...new Set([...cellsOf.keys(), ...heights.keys()])].sort((a, b) => a - b);
  let before: PlainRow | undefined;
  let lastColumn = 0;
  for (const row of rows) {
    const inRow = cellsOf.get(row);
    lastColumn = Math.max(lastColumn, inRow?.columns.at(-1) ?? 0);
    const found = inRow && plainRow(source, row, inRow, { lookOf: keptLook, isFilled }, before);
    if (found) {
      plain.add(found);
      heights.delete(row);
      before = found;
    } else {
      inRow?.addresses.forEach((at, index) => put(at, row, inRow.columns[index]!));
      plain.close();
    }
  }
  // The library forgets the height of a row below the last cell.
  const lastRow = rows.at(-1) ?? 0;
  if (heights.has(lastRow) && !cellsOf.has(lastRow)) cells.set(`${lastRow},0`, {});
  plain.placeholders(styles, cells);
  const sheet = { ...around(source, looks), ...images, cells };
  // Some programs show a row of no height that does not say that it is hidden.
  sheet.rowDefs = new Map(
    [...heights].map(([row, height]) => [row, { height, ...(height === 0 && { hidden: true }) }]),
  );
  const last = address(lastRow, Math.max(lastColumn, (sheet.columns?.length ?? 0) - 1));
  return { sheet, uncalculated, marked, plain, last };
}

const isFrozen = (formula: string, { ours, all }: Freezing): boolean => all || (ours && callsUs(formula));

/** Whether a cell is one that a formula which stays one fills beside or below its own. */
type IsFilled = (row: number, column: number) => boolean;

function filledCells({ cells }: BookSheet, freezing: Freezing): IsFilled {
  const byColumn = new Map<number, { readonly top: number; readonly bottom: number }[]>();
  for (const [at, { formula, spill }] of Object.entries(cells)) {
    if (formula === undefined || !spill || isFrozen(formula, freezing)) continue;
    const { row, column } = parseAddress(at)!;
    for (let beside = column; beside < column + spill.columns; beside++) {
      const zones = byColumn.get(beside) ?? [];
      zones.push({ top: row, bottom: row + spill.rows - 1 });
      byColumn.set(beside, zones);
    }
  }
  return (row, column) =>
    byColumn.get(column)?.some(({ top, bottom }) => row >= top && row <= bottom) ?? false;
}

/** Where a row has cells or results, from the left. */
interface CellsOfRow {
  columns: number[];
  addresses: string[];
}

const BLANK: BookCell = {};

/** The addresses are the sheet's own keys: looking one up again costs a fraction of what a new text does. */
function cellsByRow(source: BookSheet): Map<number, CellsOfRow> {
  const rows = new Map<number, CellsOfRow>();
  const unsorted = new Set<CellsOfRow>();
  const place = (at: string): void => {
    const { row, column } =
      parseAddress(at) ?? stop(troubles.badRange(`A cell of sheet "${source.name}"`, at));
    const inRow = rows.get(row);
    if (!inRow) rows.set(row, { columns: [column], addresses: [at] });
    else {
      if (inRow.columns[inRow.columns.length - 1]! > column) unsorted.add(inRow);
      inRow.columns.push(column);
      inRow.addresses.push(at);
    }
  };
  for (const at of Object.keys(source.cells)) place(at);
  for (const at of Object.keys(source.results)) if (!source.cells[at]) place(at);
  for (const inRow of unsorted) {
    const order = inRow.columns.map((_, index) => index);
    const { columns, addresses } = inRow;
    order.sort((a, b) => columns[a]! - columns[b]!);
    inRow.columns = order.map((index) => columns[index]!);
    inRow.addresses = order.map((index) => addresses[index]!);
  }
  return rows;
}

/**
 * @param about the index of a constant's style, and whether a formula fills a cell
 * @param before the plain row above: lists that are the same are shared
 * @returns `undefined` when some cell is more than a plain value
 */
function plainRow(
  source: BookSheet,
  row: number,
  { addresses, columns }: CellsOfRow,
  {
    lookOf,
    isFilled,
  }: {
    lookOf: (cell: BookCell, result: BookResult | undefined) => number | undefined;
    isFilled: IsFilled;
  },
  before: PlainRow | undefined,
): PlainRow | undefined {
  const { cells, results } = source;
  const contents: (BookValue | undefined)[] = [];
  const looks: (number | undefined)[] = [];
  const filled: boolean[] = [];
  for (const [index, at] of addresses.entries()) {
    const cell = cells[at];
    const content = cell?.value ?? results[at];
    if (cell?.formula !== undefined || cell?.note !== undefined || !isPlain(content)) return undefined;
    contents.push(content);
    filled.push(typeof content === "string" && cell?.value === undefined && isFilled(row, columns[index]!));
    looks.push(lookOf(cell ?? BLANK, results[at]));
  }
  const shared = <T>(list: readonly T[], above: readonly T[] | undefined): readonly T[] =>
    above?.length === list.length && list.every((one, index) => one === above[index]) ? above : list;
  return {
    row,
    height: source.rowHeights[row],
    addresses,
    contents,
    looks: shared(looks, before?.looks),
    filled: shared(filled, before?.filled),
  };
}

// eslint-disable-next-line no-control-regex -- control characters are what is looked for
const NOT_PLAIN = /[\x00-\x1f_\uD800-\uDFFF\uE000\uFFFE\uFFFF]/;

/** Whether the library and the format need nothing special for it. */
function isPlain(content: BookResult | undefined): content is BookValue | undefined {
  if (typeof content === "number") return Number.isFinite(content) && !isNegativeZero(content);
  if (typeof content === "string")
    return content.length <= MAX_CELL_TEXT && !NOT_PLAIN.test(content) && !LIKE_ERROR.has(content);
  return !isBookError(content);
}

const resultAt = (sheet: BookSheet, at: string): BookResult | undefined =>
  Object.hasOwn(sheet.results, at) ? sheet.results[at] : undefined;

/** Tells a reader of an office copy that the cell does not follow its inputs any more. */
function frozenNote(formula: string, note: string | undefined): string {
  const frozen = `Frozen: the value that ${formula} had in the working workbook. It no longer changes with its inputs.`;
  return note ? `${note}\n\n${frozen}` : frozen;
}

/** Everything of a sheet but its cells. */
function around(source: BookSheet, looks: readonly Look[]): WriteSheet {
  const { name, frozenRows, frozenColumns, print, tabColor } = source;
  const widths = Object.keys(source.columnWidths).map(Number);
  const sheet: WriteSheet = {
    name,
    dataValidations: source.validations.map((validation) => toDataValidation(validation, name)),
    conditionalRules: toConditionalRules(source.marks, looks, name),
  };
  if (widths.length > 0) {
    sheet.columns = Array.from({ length: Math.max(...widths) + 1 }, (_, column) => {
      const width = source.columnWidths[column];
      return width === undefined ? {} : { width };
    });
  }
  if (frozenRows > 0 || frozenColumns > 0) sheet.freezePane = { rows: frozenRows, columns: frozenColumns };
  if (source.protected) {
    sheet.protection = {
      sheet: true,
      selectLockedCells: true,
      selectUnlockedCells: true,
      formatColumns: true,
      formatRows: true,
      insertRows: true,
    };
  }
  if (print) {
    sheet.pageSetup = toPageSetup(print);
    sheet.headerFooter = toFoot(print, name);
    if (print.breaks) sheet.rowBreaks = print.breaks.map((row) => row - 1);
  }
  if (tabColor !== undefined) sheet.view = { tabColor: { rgb: tabColor } };
  if (source.hidden) sheet.hidden = true;
  return sheet;
}
