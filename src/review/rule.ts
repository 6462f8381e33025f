/** What every rule is made of: a pure look at one workbook in several readings. */
import type { Book } from "../workbooks/book";
import type { WorkbookDefinition } from "../workbooks/definition";
import type { OtherResult } from "./earlierDifferences";
import type { Finding } from "./finding";
import type { FormulaDifference } from "./formulaDifferences";
import type { LabelAt } from "./labels";
import type { FirmSays } from "./ranges/firm";

export interface ReviewOptions {
  /** Least margin, as a share of the price. */
  readonly marginFloor: number;
  /** Prices to compare with: part name to price, for each block of the Parts sheet. */
  readonly prices?: PriceList;
  /** The firm's standards, with what they learned of accepted quotes. A job that drew on some is held to these otherwise. */
  readonly standards?: FirmSays;
}

export type PriceList = Readonly<Record<string, Readonly<Record<string, number>>>>;

/** Common practice, no source: what a callback eats. A firm's own floor is given with the review. */
export const DEFAULT_MARGIN_FLOOR = 0.05;

export interface Reviewed {
  /** As it is stored, with the values that the file shows. */
  readonly read: Book;
  /** The same, every formula of its own computed anew. */
  readonly own: Book;
  /** What its inputs come to; of a workbook of an earlier version, by today's template. */
  readonly computed: Book;
  /** Computed with the template's own formulas in their places; absent where nothing can compute it. */
  readonly expected?: Book;
  /** The template, when the inputs can be held to it. */
  readonly definition?: WorkbookDefinition;
  /** Where its formulas are not the template's. */
  readonly differences: readonly FormulaDifference[];
  /** Present for a workbook of an earlier version. */
  readonly earlier?: Earlier;
  readonly labelAt: LabelAt;
  readonly options: ReviewOptions;
}

export interface Earlier {
  /** Today's template with the same inputs, computed; absent where nothing can compute it. */
  readonly fresh?: Book;
  /** What its own formulas bring to something else than today's, and that moves no price. */
  readonly others: readonly OtherResult[];
}

export interface Rule {
  readonly id: string;
  readonly reason: string;
  readonly example: string;
  /** What it holds a workbook to beside the workbook itself; without it nothing is looked for. */
  readonly needs?: {
    /** As “Not looked for, without …” ends. */
    readonly what: string;
    readonly areThere: (asked: Pick<Reviewed, "read" | "options">) => boolean;
  };
  readonly find: (reviewed: Reviewed) => Finding[];
}
