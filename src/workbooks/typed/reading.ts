/** What a reader of typed values answers, and what it must know beside the text. */
import type { Writing } from "./writing";

export type Reading<T = number | string> =
  | { readonly value: T }
  /** A sentence: why it is not taken, and what to type. */
  | { readonly refused: string };

export interface TypedContext {
  /** Undefined where nobody has chosen: then a date with strokes is two dates. */
  readonly writing?: Writing;
  /** As the workbook names it. */
  readonly currency?: string;
  /** Of the workbook's lengths. */
  readonly lengths?: "m" | "ft";
  /** A column that writes decimals otherwise than the document: then no sign is taken for the one or the other. */
  readonly mixedSigns?: boolean;
}

export const isRefused = <T>(reading: Reading<T>): reading is { readonly refused: string } =>
  "refused" in reading;
