/** A supplier's price list as it lies in its file: lines of cells, nothing understood yet. */

/** A number of a workbook's cell, with the text that a person saw and the format that made it. */
export interface ListedNumber {
  readonly number: number;
  /** Undefined where it is shown as a date. */
  readonly shown: string | undefined;
  readonly format?: string;
}

export type PriceCell = string | ListedNumber;

export interface PriceTableLine {
  /** Counted from 1. */
  readonly line: number;
  readonly cells: readonly PriceCell[];
}

export interface PriceTable {
  /** "text, semicolons, UTF-8" or "sheet Prices of a workbook". */
  readonly source: string;
  readonly lines: readonly PriceTableLine[];
}
