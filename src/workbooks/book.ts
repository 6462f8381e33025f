/**
 * A workbook as plain data: what lies between a definition and the hosts. A
 * definition is laid out into a book; the file host writes and reads books;
 * the grid engine loads them, computes them and gives them back. It can be
 * turned into JSON and back without loss.
 */
import type { FaultCode } from "../engine/faults";
import { parseRange, type Zone } from "../formula/address";
import type { SavedFile } from "./savedFile";

/** What a cell holds or shows. A date is a sheet's date number with a date format. */
export type BookValue = number | string | boolean;

/** A computed error, with its sentence where we have one. */
export interface BookError {
  readonly error: FaultCode | (string & {});
  readonly message?: string;
}

/** A computed value; `""` is a formula's empty result. */
export type BookResult = BookValue | BookError;

export interface BookCell {
  /** What a person or the template typed. Absent in a formula cell and in an empty styled cell. */
  value?: BookValue;
  /** Without the equals sign, as people see it: `RIG.CABLELOSS(…)`, names and A1 references. */
  formula?: string;
  /**
   * For a formula that is computed over whole arrays: how many rows and columns
   * it fills, its own cell included; one of each for one result. Absent for a
   * plain formula, and for a call of ours with one result.
   */
  spill?: { readonly rows: number; readonly columns: number };
  /** Index into the book's `looks`. */
  look?: number;
  /** A note that pops up beside the cell. */
  note?: string;
}

export type Edge = "thin" | "medium";

/** How a cell looks; every part optional, so that two cells with one look share it. */
export interface Look {
  readonly bold?: boolean;
  readonly italic?: boolean;
  /** Font size in points; 10 where absent. */
  readonly size?: number;
  /** Text colour, six hex digits without `#`. */
  readonly color?: string;
  /** Fill colour, six hex digits without `#`. */
  readonly fill?: string;
  readonly align?: "left" | "center" | "right";
  readonly vertical?: "top" | "middle" | "bottom";
  readonly wrap?: boolean;
  readonly edges?: {
    readonly top?: Edge;
    readonly right?: Edge;
    readonly bottom?: Edge;
    readonly left?: Edge;
  };
  /** A sheet's number format, for example `0.0` or `yyyy-mm-dd`. */
  readonly format?: string;
  /** Only `false` differs from the sheet's own rule: a cell may be edited on a protected sheet. */
  readonly locked?: boolean;
  /** What no look of ours has, of a file that was read: for the review, never written. */
  readonly odd?: OddLook;
}

/** What keeps a cell's text from being read as it stands. */
export interface OddLook {
  readonly struck?: true;
  /** A font whose letters are pictures. */
  readonly symbols?: string;
  readonly shrinks?: true;
  /** The text is repeated until the cell is full. */
  readonly repeats?: true;
  /** Degrees; 255 for letters one above the other. */
  readonly turned?: number;
}

/** A rule for what may be typed into a range. */
export interface BookValidation {
  /** A1 range on its own sheet, without dollar signs: `B5:B40`. */
  readonly range: string;
  readonly rule:
    | {
        readonly kind: "number";
        readonly min?: number;
        readonly max?: number;
        readonly integer?: boolean;
        /** Names of cells that it may not lie under or over; a blank one sets no limit. With `min` and `max`. */
        readonly atLeast?: string;
        readonly atMost?: string;
        /** Words that are taken as well as a number. With `min` and `max`. */
        readonly orWords?: readonly string[];
      }
    | { readonly kind: "date"; readonly min?: number; readonly max?: number }
    | { readonly kind: "choice"; readonly choices: readonly string[] }
    /** The values of a named range are offered. */
    | { readonly kind: "named"; readonly name: string }
    | { readonly kind: "text"; readonly maxLength: number };
  /** Shown when the cell is chosen: what to give, unit, an example. */
  readonly promptTitle?: string;
  readonly prompt?: string;
  /** Shown when the value is refused. */
  readonly refusal?: string;
  /** The value is kept, with a warning; absent means it is refused. */
  readonly warnOnly?: boolean;
}

/** A list of which each row of a block has a line, or none. */
export interface OverList {
  /** Defined name of the list. */
  readonly list: string;
  /** Letters of the column that tells the row's line in it, counted from 1. */
  readonly line: string;
}

/** A cell of the range whose text is one of the words takes this look on top of its own. */
export interface BookMark {
  readonly range: string;
  readonly words: readonly string[];
  /** Instead of the words: a filled cell takes it where the list says something too. */
  readonly overList?: OverList;
  /** Index into the book's `looks`. */
  readonly look: number;
}

/**
 * The cells that a person fills under a rule: a single cell, or the inside of
 * a column, whose first and last cells lie in the thin rows around a block.
 */
export function inputZone({ range }: BookValidation): Zone | undefined {
  const zone = parseRange(range);
  return !zone || zone.top === zone.bottom ? zone : { ...zone, top: zone.top + 1, bottom: zone.bottom - 1 };
}

export interface BookPrint {
  readonly orientation: "portrait" | "landscape";
  readonly paper: "a4" | "letter";
  /** One page tall as well as wide. */
  readonly onePage?: boolean;
  /** A1 range that prints; the whole sheet where absent. */
  readonly area?: string;
  /** Last row (1-based) of the rows repeated on every page, counted from `repeatFrom`. */
  readonly repeatFrom?: number;
  readonly repeatTo?: number;
  /** Rows (1-based) after which a new page begins. */
  readonly breaks?: readonly number[];
  /** Foot of the page: left and right text; the middle is "page x of y". */
  readonly footLeft?: string;
  readonly footRight?: string;
}

/**
 * A picture that stands on a sheet. It is drawn from the workbook's own figures
 * and drawn anew whenever the workbook is written; readers leave it out.
 */
export interface BookPicture {
  /** A1 address of the cell at its upper left. */
  readonly at: string;
  readonly svg: string;
  readonly title: string;
  /** The alternative text. */
  readonly description: string;
  /** Shown so large, in pixels at 96 to the inch. */
  readonly width: number;
  readonly height: number;
}

export interface BookSheet {
  name: string;
  /** Keys are A1 addresses without dollar signs. */
  cells: Record<string, BookCell>;
  /** Computed values of formula cells and of the cells they spill into, by A1 address. */
  results: Record<string, BookResult>;
  /** Rows and columns that the sheet shows. */
  rowCount: number;
  columnCount: number;
  /** Width in characters by 0-based column. */
  columnWidths: Record<number, number>;
  /** Height in points by 0-based row. */
  rowHeights: Record<number, number>;
  frozenRows: number;
  frozenColumns: number;
  validations: BookValidation[];
  marks: BookMark[];
  /** Native formulas are locked, without a password. */
  protected: boolean;
  print?: BookPrint;
  pictures?: readonly BookPicture[];
  /** Six hex digits for the sheet's tab. */
  tabColor?: string;
  hidden?: boolean;
  /** 0-based rows that are hidden, in a workbook that was read; none of ours hides any. */
  hiddenRows?: readonly number[];
  /** 0-based columns that are hidden, likewise. */
  hiddenColumns?: readonly number[];
  /** Ranges that are shown as one cell, in another program's workbook: read for its tables, never written. */
  merged?: readonly string[];
  /** A1 ranges that the grid shows as one cell each: only for paper, no file of ours holds them. */
  merges?: readonly string[];
}

export interface BookName {
  name: string;
  sheet: string;
  /** A1 range without dollar signs: `C5:C30`. */
  range: string;
}

/** How the program was set that saved a file, where it is not as usual; none of ours is. */
export interface SavedState {
  /** It calculates when it is told to. */
  readonly manual?: true;
  /** It was saved before all was calculated. */
  readonly unfinished?: true;
  /** It calculates with what cells show, not with what they hold. */
  readonly asDisplayed?: true;
  /** It goes round in circles of formulas instead of refusing them. */
  readonly iterates?: true;
  /** Calls of ours are stored as those of another add-in. */
  readonly boundElsewhere?: true;
  /** What the file says beside its cells; absent in a workbook that was not read from one. */
  readonly file?: SavedFile;
  /** Names of the workbook that a sheet has too, for cells of its own. */
  readonly twice?: readonly { readonly name: string; readonly sheet: string }[];
}

export interface Book {
  /** Which template it was made from and its version; empty for a workbook that is not ours. */
  template: string;
  templateVersion: string;
  title: string;
  looks: Look[];
  sheets: BookSheet[];
  names: BookName[];
  /** Of a file that was read. */
  saved?: SavedState;
}

export const isBookError = (result: BookResult | undefined): result is BookError =>
  typeof result === "object" && result !== null;

/** Looks by their text, for each book's list: a big book asks for the same few looks very often. */
const lookTexts = new WeakMap<Look[], Map<string, number>>();

/** The book's index for a look, added when it is new. */
export function lookIndex({ looks }: { looks: Look[] }, look: Look): number {
  let known = lookTexts.get(looks);
  if (!known || known.size > looks.length) {
    known = new Map(looks.map((one, index) => [JSON.stringify(one), index]));
    lookTexts.set(looks, known);
  }
  const key = JSON.stringify(look);
  let index = known.get(key);
  if (index === undefined) {
    index = looks.push(look) - 1;
    known.set(key, index);
  }
  return index;
}
