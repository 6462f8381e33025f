import type { Check } from "../workbooks/definition";

/** What a rule that reads a filled workbook has to say. */

/** `wrong`: a figure or a cell that cannot stand. `doubtful`: look before it goes out. */
export type Weight = "wrong" | "doubtful" | "worth knowing";

export const WEIGHTS: readonly Weight[] = ["wrong", "doubtful", "worth knowing"];

export interface FindingPlace {
  readonly sheet: string;
  readonly cell: string;
}

export const isSamePlace = (one: FindingPlace | undefined, other: FindingPlace | undefined): boolean =>
  one !== undefined && one.sheet === other?.sheet && one.cell === other.cell;

/** What a cell would hold if a finding were undone; with neither value nor formula it would be empty. */
export interface Undoing {
  readonly place: FindingPlace;
  readonly value?: number | string | boolean;
  readonly formula?: string;
}

/** Each is absent where the workbook has no such figure. */
export interface Sums {
  /** What the customer pays, with tax. */
  readonly total?: number;
  /** Price less cost and discount, without provisional sums and options. */
  readonly margin?: number;
}

export interface Counts {
  /** How many outlets are not good. */
  readonly outlets?: number;
  /** How many head units have too few volts. */
  readonly volts?: number;
}

export interface Measures extends Sums, Counts {}

export interface Amount {
  readonly before: Measures;
  readonly after: Measures;
  /** Undone with what would be usual, since what was meant is not known. */
  readonly isAbout: boolean;
}

/** An input that puts something right. */
export interface Mend {
  readonly place: FindingPlace;
  /** What stands there, in the sheet's words: "Run of A-07". */
  readonly what: string;
  /** What kind of change would do, as a clause. */
  readonly does: string;
}

export interface Finding {
  readonly weight: Weight;
  /** Where it is seen; absent when it is about the whole workbook. */
  readonly place?: FindingPlace;
  /** The first cell that brings it about, when that is another and is known. */
  readonly cause?: FindingPlace;
  /** What is there, in a sentence. */
  readonly message: string;
  /** What should be there, where that is known. */
  readonly expected?: string;
  /** The value itself that likely was meant for the cell, where one can be told. */
  readonly meant?: number | string;
  /** Every cell that has to change to undo it, where that is known and is more than `meant` says. */
  readonly undoing?: readonly Undoing[];
  /** What undoes it is likely, and not known. */
  readonly isGuess?: true;
  /** What would be usual in the cell, where what was meant is not known. */
  readonly usual?: { readonly low: number; readonly high: number };
  /** What it does to the price or to an outlet, where that is known. */
  readonly effect?: string;
  /** What the job comes to with it and with it undone, all else as it is; absent where nobody knows what was meant. */
  readonly amount?: Amount;
  /** What is only there because of it. */
  readonly leadsTo?: readonly Finding[];
  /** The rule that found it. */
  readonly rule?: string;
  /** The check of the workbook that it tells of. */
  readonly check?: Pick<Check, "id" | "entriesOf">;
  /** What to do about it, in a sentence. */
  readonly remedy: string;
  /** The inputs that put it right, the likeliest first, where they are not the cell in which it is seen. */
  readonly mends?: readonly Mend[];
}

/** Half a cent. */
const SAME = 0.005;

/** @returns whether both sums are known and are two */
export const differ = (a: number | undefined, b: number | undefined): boolean =>
  a !== undefined && b !== undefined && Math.abs(a - b) >= SAME;

/** For a rule whose findings have one way out. */
export const doubtfulWith =
  (remedy: string) =>
  (
    place: FindingPlace | undefined,
    message: string,
    expected: string,
    effect: string,
    more: Partial<Finding> = {},
  ): Finding => ({ weight: "doubtful", place, message, expected, effect, remedy, ...more });
