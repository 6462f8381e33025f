/** What a cell shows, for a summary: a figure, or the sentence of the error in its place. */
import { isBookError, type BookResult } from "./book";

/** Null for a blank. */
export type Figure = number | string | null;

export function figureOf(result: BookResult | undefined): Figure {
  if (typeof result === "number") return result;
  if (result === undefined || result === "") return null;
  return wordsOf(result);
}

export function wordsOf(result: BookResult | undefined): string {
  if (result === undefined) return "";
  return isBookError(result) ? (result.message ?? result.error) : String(result);
}
