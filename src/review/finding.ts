/** What a rule that reads a filled workbook has to say. */

/** `wrong`: a figure or a cell that cannot stand. `doubtful`: look before it goes out. */
export type Weight = "wrong" | "doubtful" | "worth knowing";

export const WEIGHTS: readonly Weight[] = ["wrong", "doubtful", "worth knowing"];

export interface Finding {
  readonly weight: Weight;
  /** Where to look; absent when it is about the whole workbook. */
  readonly place?: { readonly sheet: string; readonly cell: string };
  /** What is there, in a sentence. */
  readonly says: string;
  /** What should be there, where that is known. */
  readonly should?: string;
  /** What to do about it, in a sentence. */
  readonly wayOut: string;
}
