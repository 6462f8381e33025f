/** What could be read of somebody else's quote, and all that could not. */

/** Figures of the sheet Review, by their keys there; `taxRate` is its Tax. */
export const NUMBER_KEYS = [
  "outlets",
  "tuners",
  "bands",
  "heads",
  "cable",
  "materials",
  "hours",
  "rate",
  "labour",
  "contingency",
  "overhead",
  "cost",
  "margin",
  "price",
  "extras",
  "net",
  "taxed",
  "taxRate",
  "tax",
  "total",
] as const;
export type NumberKey = (typeof NUMBER_KEYS)[number];
export const TEXT_KEYS = ["job", "quote", "by"] as const;
export type TextKey = (typeof TEXT_KEYS)[number];

/** What the lines of a quote are of its price; the words of the sheet Review. */
export const LINES_ARE = ["the whole price", "all materials", "a part"] as const;
export type LinesAre = (typeof LINES_ARE)[number];

export interface TypedLine {
  /** Counted from 1 in the file. */
  readonly line: number;
  readonly part: string;
  readonly quantity?: number;
  readonly unit?: string;
  readonly each?: number;
  /** The quantity for which the price is, where that is not one: 100 for a price of 100 m. */
  readonly per?: number;
  /** Of the price, as a share, where each line has its own. */
  readonly discount?: number;
  readonly sum?: number;
  /** The heading under which it stands. */
  readonly section?: string;
  /** Named as an option, and not in the sums. */
  readonly optional?: true;
  /** Work, not a part. */
  readonly labour?: true;
}

/** A line of the file of which something is to be said. */
export interface Remark {
  readonly line: number;
  readonly text: string;
  readonly why: string;
  /** `unread`: a figure was lost; `words`: none stood there; `off`: it contradicts the rest. */
  readonly kind: "unread" | "words" | "off";
}

export interface TypedQuote {
  /** How its lines were told apart. */
  readonly source: string;
  readonly lines: readonly TypedLine[];
  readonly linesAre: LinesAre;
  /** Of one head unit. */
  readonly headPrice?: number;
  /** Of a metre of cable, or a foot where it is in feet. */
  readonly cablePrice?: number;
  readonly figures: Readonly<Partial<Record<NumberKey, number>>>;
  readonly words: Readonly<Partial<Record<TextKey, string>>>;
  /** Until which it holds, as a sheet's date number. */
  readonly until?: number;
  /** The tax, where the prices of the lines have it in them. */
  readonly taxInside?: number;
  /** A line of its own behind the tax, by which the total was made round. */
  readonly rounding?: number;
  /** In feet, where its cable says so. */
  readonly inFeet: boolean;
  /** That most of its lines name. */
  readonly currency?: string;
  readonly remarks: readonly Remark[];
}
