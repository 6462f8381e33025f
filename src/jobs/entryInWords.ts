/** What a list says of a job, where it is not the job's own words: the same is shown and searched. */
import { labelInWords } from "../workbooks/jobLabel";
import type { ShelfLine } from "../workbooks/shelfLine";
import type { ShelfEntry } from "./catalogue";

type Told = Partial<Pick<ShelfEntry, "state" | "away" | "conflictOf" | "trouble">>;

/** @returns for instance "sent", "draft, conflicting, put away", "cannot be read" */
export const stateInWords = ({ state, away, conflictOf, trouble }: Told): string =>
  [
    trouble ? "cannot be read" : state,
    conflictOf !== undefined && !trouble && "conflicting",
    away && "put away",
  ]
    .filter(Boolean)
    .join(", ");

/** @returns what identifies a job; a name of ours where it has none */
export const nameInWords = (line: ShelfLine | undefined): string => (line && labelInWords(line)) || NO_NAME;
export const NO_NAME = "(no name)";

const SUM = new Intl.NumberFormat("en", { minimumFractionDigits: 2, maximumFractionDigits: 2 });

/** @returns for instance "12,480.00 EUR"; empty where there is no total */
export const totalInWords = ({ total, currency }: Pick<ShelfLine, "total" | "currency">): string =>
  total === undefined ? "" : `${SUM.format(total)} ${currency}`.trim();

/**
 * @param at as `toISOString` writes it
 * @returns date and time here, for instance "2026-11-02 14:05"; empty where there is none
 */
export function timeInWords(at: string): string {
  const time = new Date(at);
  if (Number.isNaN(time.getTime())) return "";
  const two = (value: number): string => String(value).padStart(2, "0");
  const date = [time.getFullYear(), two(time.getMonth() + 1), two(time.getDate())].join("-");
  return `${date} ${two(time.getHours())}:${two(time.getMinutes())}`;
}
