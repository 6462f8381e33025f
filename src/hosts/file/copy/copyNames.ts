/** What people call the copies of a workbook, by the short word that the sources have for each. */
export const COPY_NAMES = {
  office: "Copy without add-in",
  sealed: "Values-only copy",
  cards: "Cards for the crew",
} as const;

/** Names in files that were written before. */
const EARLIER_NAMES = ["Office copy", "Sealed copy"];

/** Inside a sentence. */
export const inSentence = (name: string): string => name.slice(0, 1).toLowerCase() + name.slice(1);

/** @returns whether a line is the first that such a copy has on About */
export const isCopyLine = (line: string): boolean =>
  [COPY_NAMES.office, COPY_NAMES.sealed, ...EARLIER_NAMES].some((name) => line.startsWith(`${name}, `));
