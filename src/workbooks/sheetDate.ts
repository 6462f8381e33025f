/** A sheet's date number: days since 1899-12-30, right for every date after February 1900. */
export const sheetDate = (year: number, month: number, day: number): number =>
  Math.round(Date.UTC(year, month - 1, day) / 86_400_000) + 25_569;

/** The ISO date of a sheet's date number, its time of day left out. */
export const isoDate = (date: number): string =>
  new Date((Math.floor(date) - 25_569) * 86_400_000).toISOString().slice(0, 10);

/** The day that it is here. */
export function sheetDateOf(now: Date): number {
  return sheetDate(now.getFullYear(), now.getMonth() + 1, now.getDate());
}
