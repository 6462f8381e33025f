/** What stands in a cell, as a list names it. */
import { isBookError, type BookCell, type BookResult } from "../workbooks/book";

const LONGEST = 120;

export function shownValue(cell: BookCell | undefined, result: BookResult | undefined): string {
  if (cell?.formula !== undefined) return cut(`=${cell.formula}`);
  if (isBookError(result)) return result.error;
  const value = cell?.value ?? result;
  if (value === undefined || isBookError(value)) return "nothing";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return typeof value === "number" ? String(value) : `“${cut(value)}”`;
}

const cut = (text: string): string => (text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text);
