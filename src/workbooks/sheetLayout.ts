/** Puts cells, names and widths onto a sheet while it is laid out. */
import { address, rangeOf } from "../formula/address";
import { lookIndex, type Book, type BookSheet, type Look, type OverList } from "./book";
import type { InputRule, JobInputs } from "./definition";
import { ALERT_LOOK, OWN_LOOK } from "./looks";
import { heldValue } from "./typed/holdsText";

/** The height of a line of text of the usual size, in points. */
export const LINE_POINTS = 14;

export const CENTRED = { align: "center" } as const;

/** What is needed while one sheet is laid out. */
export interface SheetLayout {
  readonly book: Book;
  readonly sheet: BookSheet;
  readonly inputs: JobInputs;
  /** Prepared rows of every block. */
  readonly rows: ReadonlyMap<string, number>;
  /** Words of a verdict that need attention. */
  readonly alerts: readonly string[];
  /** Column of the notes beside fields. */
  readonly noteColumn: number;
  /** The heads of blocks by their row: as tall as their text once every part has widened the columns. */
  readonly heads: Map<number, readonly (readonly [column: number, text: string])[]>;
}

export interface Content {
  readonly value?: number | string;
  readonly formula?: string;
  readonly spill?: { rows: number; columns: number };
}

export function put(
  { book, sheet }: SheetLayout,
  row: number,
  column: number,
  look: Look,
  content: Content = {},
): void {
  const { value, ...rest } = content;
  // Empty text is no text: the cell is blank, as in every host.
  const held = value === undefined || value === "" ? rest : content;
  sheet.cells[address(row, column)] = { ...held, look: lookIndex(book, look) };
}

export function name(
  { book, sheet }: SheetLayout,
  text: string,
  top: number,
  left: number,
  bottom: number,
  right: number,
): void {
  book.names.push({ name: text, sheet: sheet.name, range: rangeOf({ top, left, bottom, right }) });
}

/** What a person filled in under a rule. */
export const filled = (value: number | string | undefined, rule: InputRule["rule"]): Content =>
  value === undefined ? {} : { value: heldValue(rule, value) };

/** Widens a column; never narrows it, because parts of one sheet share its columns. */
export function widen({ sheet }: SheetLayout, column: number, width: number): void {
  sheet.columnWidths[column] = Math.max(sheet.columnWidths[column] ?? 0, width);
}

/** Not every program makes a row as high as its text when it opens a file. */
export function makeRoom({ sheet }: SheetLayout, row: number, lines: number): void {
  if (lines > 1) sheet.rowHeights[row] = Math.max(sheet.rowHeights[row] ?? 0, lines * LINE_POINTS);
}

/** What is filled in this column stands out where the list says something too. */
export function markFilled(
  layout: SheetLayout,
  overList: OverList,
  { top, bottom, column }: { readonly top: number; readonly bottom: number; readonly column: number },
): void {
  layout.sheet.marks.push({
    range: rangeOf({ top, left: column, bottom, right: column }),
    words: [],
    overList,
    look: lookIndex(layout.book, OWN_LOOK),
  });
}

/** Words of alarm stand out where they show in this range. */
export function mark(layout: SheetLayout, top: number, left: number, bottom: number, right: number): void {
  layout.sheet.marks.push({
    range: rangeOf({ top, left, bottom, right }),
    words: layout.alerts,
    look: lookIndex(layout.book, ALERT_LOOK),
  });
}
