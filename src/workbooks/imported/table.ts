/** A table out of somebody else's file, text or workbook: its lines of cells as a person sees them there. */
import { asName } from "../typed/plainText";

/** A number of a workbook's cell with the text that its maker saw; none where it is shown as a date. */
export interface ShownNumber {
  readonly number: number;
  readonly shown: string | undefined;
  /** Words that its number format writes behind it: `m` of `0.0" m"`. */
  readonly unit?: string;
  /** Its number format, where that names a currency or a share. */
  readonly format?: string;
}

export type ImportedCell = string | ShownNumber;

/** A line of the file with its number, counted from 1; a workbook's row. */
export interface ImportedLine {
  readonly line: number;
  readonly cells: readonly ImportedCell[];
  /** A row that is hidden in its workbook. */
  readonly hidden?: boolean;
  /** Of a table that stands beside another on the same lines: 2 for the second. */
  readonly part?: number;
}

export interface ImportedTable {
  /** How the lines were told apart: "text, semicolons, UTF-8", or `sheet "Survey" of a workbook`. */
  readonly source: string;
  /** Its sheet, where the file is a workbook. */
  readonly sheet?: string;
  readonly lines: readonly ImportedLine[];
  /** Of a workbook's sheet: columns that are hidden there, counted from 0. */
  readonly hiddenColumns?: readonly number[];
  /** The first line of a text that opens a quoted cell which is never closed: its mark is taken as a plain sign. */
  readonly open?: number;
  /** All such lines. */
  readonly opened?: readonly number[];
}

/** As a person sees it. */
export const textOf = (cell: ImportedCell | undefined): string =>
  cell === undefined
    ? ""
    : typeof cell === "string"
      ? asName(cell)
      : `${cell.shown ?? cell.number}${cell.unit ? ` ${cell.unit}` : ""}`;

export const isBlank = ({ cells }: ImportedLine): boolean => cells.every((cell) => textOf(cell) === "");
