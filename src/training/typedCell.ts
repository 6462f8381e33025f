/** What stands in an answer cell, beyond its value: how it shows, what it was worked out by, what hangs on it. */
import type { BookResult } from "../workbooks/book";

export interface TypedCell {
  readonly value?: BookResult;
  /** Without the equals sign. */
  readonly formula?: string;
  /** The sheet's number format; absent where it isn't known. */
  readonly format?: string;
  readonly note?: string;
}

/** @param raw a cell, or its bare value */
export const typedCell = (raw: unknown): TypedCell => {
  if (raw === undefined || raw === null) return {};
  if (typeof raw === "object" && !("error" in raw)) return raw;
  return { value: raw as BookResult };
};

/** Days of the sheet's calendar before 1970. */
const DAYS_BEFORE_1970 = 25_569;
const MS_A_DAY = 86_400_000;
const MINUTES_A_DAY = 1440;

/** @returns how a date or a time reads, with the numbers that may have been meant; undefined for another format */
export function asDate(value: number, format: string): { shown: string; meant: string } | undefined {
  const code = format.replace(/"[^"]*"|\[[^\]]*\]|\\./g, "");
  if (/general/i.test(code) || !/[dmyhs]/i.test(code)) return undefined;
  if (value < 1) {
    const minutes = Math.round(value * MINUTES_A_DAY);
    const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
    return {
      shown: `${hours}:${String(rest).padStart(2, "0")}`,
      meant: `${Number((minutes / 60).toFixed(2))}`,
    };
  }
  const date = new Date(Math.round((value - DAYS_BEFORE_1970) * MS_A_DAY));
  const [day, month] = [date.getUTCDate(), date.getUTCMonth() + 1];
  return { shown: date.toISOString().slice(0, 10), meant: `${day}.${month} or ${month}.${day}` };
}
