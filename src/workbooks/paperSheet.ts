/**
 * A sheet as it stands on paper: what prints of it row by row, how wide and how
 * small, what is repeated and where a page ends. Whoever prints it by himself
 * (not by a spreadsheet program) works from this. Nothing is ever cut: a text
 * that is too long runs over empty neighbours as on the sheet, and what still
 * does not fit is set smaller.
 */
import { address, parseRange, type Zone } from "../formula/address";
import type { Book, BookPicture, BookPrint, BookResult, BookSheet, BookValue, Look } from "./book";
import { LINE_POINTS } from "./sheetLayout";
import { pageRoom, POINTS_PER_CHARACTER, USUAL_WIDTH } from "./pageRoom";

/** The type of a look that names no size, in points. */
export const USUAL_SIZE = 10;
/** Between a cell's edge and its text, on either side, in points. */
export const CELL_PADDING = 1;
/** A browser breaks lines and draws letters a little wider than they are measured. */
const TO_SPARE = 1.02;
/** A page holds a little less than it measures. */
export const FILLED = 0.98;
/** Text that would be set smaller than this share of its size is broken into lines: a hairline is as good as cut. */
const LEAST_OF_SIZE = 0.6;
/** How wide they are on paper, in points, however small the sheet is set. */
export const PAPER_EDGE_POINTS = { thin: 0.75, medium: 1.5 } as const;

const POINTS_PER_PIXEL = 0.75;

/** All measures are points of the sheet before it is made smaller by `scale`. */
export interface PaperCell {
  /** A1 address on its sheet. */
  readonly at: string;
  readonly text: string;
  readonly look: Look;
  readonly align: "left" | "center" | "right";
  /** Type in points: the look's own, or less where the text does not fit. */
  readonly size: number;
  /** How many columns and rows it takes. */
  readonly columns: number;
  readonly rows: number;
  /** So far the text runs over the empty cells beside it. */
  readonly over?: { readonly left: number; readonly right: number };
}

export interface PaperRow {
  /** At least. */
  readonly height: number;
  readonly cells: readonly PaperCell[];
}

export interface PaperSheet {
  readonly name: string;
  readonly print: BookPrint;
  readonly columns: readonly number[];
  readonly scale: number;
  /** Rows above the repeated ones; they stand once. */
  readonly before: readonly PaperRow[];
  /** Repeated on every page. */
  readonly head: readonly PaperRow[];
  /** Parts that begin on a new page each, but the first. */
  readonly parts: readonly (readonly PaperRow[])[];
}

/** Pictures, each on a page of its own. */
export interface PaperPictures {
  readonly name: string;
  readonly print: BookPrint;
  readonly pictures: readonly BookPicture[];
}

export type PaperPart = PaperSheet | PaperPictures;

export interface Typesetting {
  /** What a cell shows of a number or a truth value under a sheet's number format. */
  readonly formatted: (value: number | boolean, format: string | undefined) => string;
  /** Points of a line of text in the type that will print it. */
  readonly textWidth: (text: string, size: number, bold: boolean) => number;
}

/** How a sheet prints that has no print set-up of its own: all that shows something, one page wide. */
export const PLAIN_PRINT: BookPrint = { orientation: "portrait", paper: "a4" };

/** @returns the zone of all that shows something; undefined for a sheet that shows nothing */
export function shownZone({ cells, results }: BookSheet): Zone | undefined {
  let zone: Zone | undefined;
  const shows = (at: string, value: BookResult | undefined): void => {
    const place = value === undefined || value === "" ? undefined : parseRange(at);
    if (!place) return;
    zone = zone
      ? {
          top: Math.min(zone.top, place.top),
          left: Math.min(zone.left, place.left),
          bottom: Math.max(zone.bottom, place.bottom),
          right: Math.max(zone.right, place.right),
        }
      : place;
  };
  for (const [at, { value }] of Object.entries(cells)) shows(at, value);
  for (const [at, result] of Object.entries(results)) shows(at, result);
  return zone;
}

/** @returns what prints of a copy of values, sheet by sheet, in its order */
export const paperParts = ({ sheets, looks }: Book, setting: Typesetting): PaperPart[] =>
  sheets.flatMap((sheet): PaperPart[] => {
    const { name, print = PLAIN_PRINT, pictures } = sheet;
    if (pictures) return [{ name, print, pictures }];
    const part = paperSheet(sheet, looks, setting);
    return part ? [part] : [];
  });

/** How large a picture stands on a page of its own, in points: as it is, or smaller where the page is. */
export function pictureOnPage(
  { width, height }: Pick<BookPicture, "width" | "height">,
  print: BookPrint,
): { readonly width: number; readonly height: number } {
  const { across, down } = pageRoom(print);
  const scale = Math.min(POINTS_PER_PIXEL, (FILLED * across) / width, (FILLED * down) / height);
  return { width: scale * width, height: scale * height };
}

/**
 * @param sheet of a copy of values: no formula, mark or error is looked at; rows and columns of no size are hidden
 * @param looks of its book
 * @returns undefined where nothing of it prints
 */
export function paperSheet(
  sheet: BookSheet,
  looks: readonly Look[],
  setting: Typesetting,
): PaperSheet | undefined {
  const print = sheet.print ?? PLAIN_PRINT;
  const zone = (print.area && parseRange(print.area)) || shownZone(sheet);
  if (!zone) return undefined;
  const visible = (from: number, to: number, size: (index: number) => number | undefined): number[] =>
    Array.from({ length: to - from + 1 }, (_, index) => from + index).filter((index) => size(index) !== 0);
  const columns = visible(zone.left, zone.right, (column) => sheet.columnWidths[column]);
  const rows = visible(zone.top, zone.bottom, (row) => sheet.rowHeights[row]);
  if (columns.length === 0 || rows.length === 0) return undefined;

  const digit = Math.max(POINTS_PER_CHARACTER, setting.textWidth("0", USUAL_SIZE, false));
  const widths = columns.map(
    (column) => (sheet.columnWidths[column] ?? USUAL_WIDTH) * digit + 2 * CELL_PADDING,
  );
  const place = rowMaker(sheet, looks, setting, columns, widths);
  const repeatTo = print.repeatTo ?? 0;
  const repeatFrom = print.repeatFrom ?? repeatTo;
  const isHead = (row: number): boolean => row + 1 >= repeatFrom && row < repeatTo;
  const parts: PaperRow[][] = [[]];
  const ends = print.breaks ?? [];
  const before: PaperRow[] = [];
  const head: PaperRow[] = [];
  for (const [index, row] of rows.entries()) {
    const isEnded = ends.some((end) => end <= row && end > (rows[index - 1] ?? row));
    if (isEnded && parts.at(-1)!.length > 0) parts.push([]);
    (isHead(row) ? head : row < repeatTo ? before : parts.at(-1)!).push(place(row, rows));
  }
  // Rows to repeat may stand above what prints.
  if (repeatTo > 0 && repeatTo <= zone.top)
    for (const row of visible(repeatFrom - 1, repeatTo - 1, (at) => sheet.rowHeights[at]))
      head.push(place(row, rows));
  return {
    name: sheet.name,
    print,
    columns: widths,
    scale: scaleOf(print, sum(widths), sum([...before, ...head, ...parts.flat()].map((one) => one.height))),
    before,
    head,
    parts,
  };
}

function scaleOf(print: BookPrint, width: number, height: number): number {
  const { across, down } = pageRoom(print);
  return Math.min(1, across / width, print.onePage ? (FILLED * down) / height : 1);
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

type Shown = BookValue | undefined;

function rowMaker(
  { cells, results, rowHeights, merges = [] }: BookSheet,
  looks: readonly Look[],
  { formatted, textWidth }: Typesetting,
  columns: readonly number[],
  widths: readonly number[],
): (row: number, rows: readonly number[]) => PaperRow {
  const merged = mergedCells(merges);
  const shown = (at: string): Shown => {
    const value = results[at] ?? cells[at]?.value;
    return value === "" || typeof value === "object" ? undefined : value;
  };
  const isFree = (row: number, index: number): boolean =>
    index >= 0 &&
    index < columns.length &&
    shown(address(row, columns[index]!)) === undefined &&
    !merged.has(address(row, columns[index]!));
  /** The widths of the free cells from one on, to the left or to the right. */
  const free = (row: number, from: number, step: 1 | -1): number[] => {
    const found: number[] = [];
    for (let index = from + step; isFree(row, index); index += step) found.push(widths[index]!);
    return found;
  };

  const cellAt = (row: number, index: number, zone: Zone | undefined, rows: readonly number[]): PaperCell => {
    const at = address(zone ? zone.top : row, zone ? zone.left : columns[index]!);
    const look = looks[cells[at]?.look ?? -1] ?? {};
    const value = shown(at);
    const { bold = false, size = USUAL_SIZE } = look;
    const text =
      value === undefined
        ? ""
        : typeof value === "string"
          ? value
          : withoutSign(formatted(value, look.format));
    const align =
      look.align ?? (typeof value === "number" ? "right" : typeof value === "boolean" ? "center" : "left");
    const span = zone
      ? { columns: within(columns, zone.left, zone.right), rows: within(rows, zone.top, zone.bottom) }
      : { columns: 1, rows: 1 };
    const own = sum(widths.slice(index, index + span.columns)) - 2 * CELL_PADDING;
    const lines = look.wrap ? text.split(/\s+/) : text.split("\n");
    const needed = TO_SPARE * Math.max(...lines.map((line) => textWidth(line, size, bold)));
    const cell = { at, text, look, align, size, ...span };
    if (needed <= own) return cell;
    // Only words run over: of a number, what is beside it must stay what it is.
    const may = typeof value === "string" && !look.wrap && !zone;
    const left = may && align !== "left" ? sum(free(row, index, -1)) : 0;
    const beside = may && align !== "right" ? free(row, index, 1) : [];
    const right = sum(beside);
    if (may && align === "left" && own + right < LEAST_OF_SIZE * needed)
      return { ...cell, look: { ...look, wrap: true }, columns: 1 + beside.length };
    const wanted = needed - own;
    const over =
      align === "center"
        ? { left: Math.min(left, right, wanted / 2), right: Math.min(left, right, wanted / 2) }
        : { left: Math.min(left, wanted), right: Math.min(right, wanted) };
    const has = own + over.left + over.right;
    return {
      ...cell,
      // A long word of a wrapped text may be broken anywhere; it keeps its size.
      size: needed > has && !look.wrap ? (size * has) / needed : size,
      ...(over.left + over.right > 0 && { over }),
    };
  };

  return (row, rows) => {
    const placed: PaperCell[] = [];
    for (let index = 0; index < columns.length; index++) {
      const zone = merged.get(address(row, columns[index]!));
      const isFirst =
        !zone ||
        (row === rows.find((at) => at >= zone.top) &&
          columns[index] === columns.find((at) => at >= zone.left));
      if (!isFirst) continue;
      const cell = cellAt(row, index, zone, rows);
      placed.push(cell);
      // What is broken into lines has taken the free cells beside it.
      if (!zone) index += cell.columns - 1;
    }
    return { height: rowHeights[row] ?? LINE_POINTS, cells: placed };
  };
}

/** What comes to nought in the digits that are shown has no sign, as in the programs that printed it before. */
const withoutSign = (text: string): string => text.replace(/^-(?=[0.,]+%?$)/, "");

const within = (places: readonly number[], first: number, last: number): number =>
  places.filter((at) => at >= first && at <= last).length;

function mergedCells(merges: readonly string[]): Map<string, Zone> {
  const merged = new Map<string, Zone>();
  for (const zone of merges.flatMap((range) => parseRange(range) ?? []))
    for (let row = zone.top; row <= zone.bottom; row++)
      for (let column = zone.left; column <= zone.right; column++) merged.set(address(row, column), zone);
  return merged;
}
