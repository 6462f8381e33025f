/** What every rule is made of: a pure look at one workbook in three readings. */
import type { Book } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import type { Finding } from "./finding";
import type { FormulaDifference } from "./formulaDifferences";
import type { LabelAt } from "./labels";

export interface ReviewOptions {
  /** Least margin, as a share of the price. */
  readonly marginFloor: number;
  /** Prices to compare with: part name to price, for each block of the Parts sheet. */
  readonly prices?: PriceList;
}

export type PriceList = Readonly<Record<string, Readonly<Record<string, number>>>>;

/** Common practice, no source: under a tenth of the price little is left for a callback. */
export const DEFAULT_MARGIN_FLOOR = 0.1;

export interface Reviewed {
  /** As it is stored, with the values that the file shows. */
  readonly read: Book;
  /** The same, every formula computed anew. */
  readonly computed: Book;
  /** Computed with the template's own formulas in their places; absent where nothing can compute it. */
  readonly expected?: Book;
  /** The template, when the workbook can be held to it. */
  readonly definition?: WorkbookDefinition;
  /** Where its formulas are not the template's. */
  readonly differences: readonly FormulaDifference[];
  readonly labelAt: LabelAt;
  readonly options: ReviewOptions;
}

export interface Rule {
  readonly id: string;
  readonly reason: string;
  readonly example: string;
  readonly find: (reviewed: Reviewed) => Finding[];
}
