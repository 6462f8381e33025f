/** That work is in this browser only, said where jobs are listed: not while somebody types, and not twice a day. */
import type { ShelfEntry } from "../../../jobs/catalogue";
import { timeInWords } from "../../../jobs/entryInWords";

const TOLD = "rigsheet.reminded";
const QUIET_MS = 20 * 60 * 60 * 1000;

/** Jobs with edits that no file outside of the browser has. */
export const onlyHere = (entries: readonly ShelfEntry[]): readonly ShelfEntry[] =>
  entries.filter(({ savedAt, outside, trouble }) => !trouble && savedAt !== outside);

/** @returns undefined where there is nothing to remind of */
export function reminderOf(entries: readonly ShelfEntry[]): string | undefined {
  const jobs = onlyHere(entries);
  if (jobs.length === 0) return undefined;
  const oldest = jobs.reduce((first, { savedAt }) => (savedAt < first ? savedAt : first), jobs[0]!.savedAt);
  return `${jobs.length === 1 ? "One job has work that is" : `${jobs.length} jobs have work that is`} in this browser only, the oldest from ${timeInWords(oldest)}.`;
}

/** @returns whether somebody said "not today" a while ago, or never; a clock that was set back counts as never */
export function isDue(now: number, store: Pick<Storage, "getItem">): boolean {
  const told = Number(store.getItem(TOLD) ?? Number.NaN);
  return !(Math.abs(now - told) < QUIET_MS);
}

export const putOff = (now: number, store: Pick<Storage, "setItem">): void =>
  store.setItem(TOLD, String(now));
