/** An input in words: with its unit, a day as a day, a share as percent. */
import type { Column } from "../workbooks/definition";
import type { Value } from "./change";

const DAY_MS = 86_400_000;
/** 1970-01-01 as a sheet's date number (ECMA-376 part 1, 18.17.4.1). */
const UNIX_EPOCH_DAY = 25_569;
const LAST_DAY = 2_958_465;

/** @returns null for a blank */
export function shownInput(
  value: Value | undefined,
  { format, unit }: Pick<Column, "format" | "unit">,
): string | null {
  if (value === undefined) return null;
  if (typeof value === "string") return value;
  if (format === "date" && value > 0 && value <= LAST_DAY) {
    return new Date((Math.floor(value) - UNIX_EPOCH_DAY) * DAY_MS).toISOString().slice(0, 10);
  }
  if (format === "percent") return `${Number((value * 100).toPrecision(12))} %`;
  if (!unit || unit.includes(" or ") || unit === "money") return String(value);
  return `${value} ${value === 1 ? unit.replace(/^([a-z]+)s$/, "$1") : unit}`;
}
