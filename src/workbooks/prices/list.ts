/** A supplier's price list as it was understood: lines with prices, and what has to be asked before they are used. */
import type { ColumnKey } from "./headMeaning";
import type { DateOrder } from "./listDates";
import type { DecimalSign } from "./listNumbers";
import type { PriceColumn } from "./priceColumns";
import type { SaleUnit } from "./saleUnits";

/** What a person, or the supplier's row, has said of how the list is read. */
export interface PriceAnswers {
  /** By the column's place; "" for one that is not used. */
  readonly columns?: ReadonlyMap<number, ColumnKey | "">;
  readonly currency?: string;
  readonly decimal?: DecimalSign;
  readonly order?: DateOrder;
  /** What a price is for where the list does not say: the unit, or the whole pack or reel. */
  readonly basis?: "unit" | "pack";
  /** The share of tax that the prices hold; 0 for none. */
  readonly tax?: number;
  /** The share that comes off the prices; 0 for none. */
  readonly discount?: number;
  /** The prices are paid as they stand, whatever the list says of surcharges. */
  readonly surcharge?: "none";
  /** The sheet was chosen. */
  readonly sheet?: string;
}

export type QuestionId =
  "columns" | "sheet" | "currency" | "decimal" | "dates" | "basis" | "tax" | "discount" | "surcharge";

/** Asked once of the whole list. */
export interface ListQuestion {
  readonly id: QuestionId;
  readonly sentence: string;
  /** Only the lines that tell of it themselves wait for the answer. */
  readonly ofLines?: boolean;
}

/** Whether no line can be used before it is answered. */
export const waits = (questions: readonly ListQuestion[]): boolean =>
  questions.some(({ ofLines }) => !ofLines);

/** Of the quantities and prices of a line, for one unit: a metre, a foot, a piece. */
export interface ListedPrice {
  readonly line: number;
  readonly article: string;
  readonly description: string;
  readonly unit?: SaleUnit;
  /** Units in a pack or on a reel. */
  readonly pack?: number;
  readonly perUnit?: number;
  readonly perPack?: number;
  readonly currency?: string;
  /** Sheet's date numbers. */
  readonly from?: number;
  readonly until?: number;
  /** What has to be asked before the line is used, each a sentence. */
  readonly doubts: readonly string[];
  /** Why the line is passed over, though it was understood: a sentence. */
  readonly left?: string;
  /** Said of a line that is used. */
  readonly note?: string;
  /** The supplier has the article no longer, or names no price for it. */
  readonly state?: "request" | "discontinued";
  /** Its last day is over. */
  readonly expired?: boolean;
}

export interface PriceList {
  readonly source: string;
  readonly columns: readonly PriceColumn[];
  readonly lines: readonly ListedPrice[];
  readonly questions: readonly ListQuestion[];
  readonly notes: readonly string[];
  /** Of the list as a whole. */
  readonly currency?: string;
  readonly from?: number;
  readonly until?: number;
}
