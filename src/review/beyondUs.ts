/** A person's own formulas that other programs compute and ours cannot: what they show there counts. */
import { isBookError, type Book, type BookResult } from "../workbooks/book";

const UNKNOWN_HERE: ReadonlySet<string> = new Set(["#BAD_EXPR", "#NAME?"]);

/** Whether a value was stored where ours knows no function or sign of the formula. */
export const isBeyondUs = (stored: BookResult | undefined, anew: BookResult | undefined): boolean =>
  stored !== undefined && !isBookError(stored) && isBookError(anew) && UNKNOWN_HERE.has(anew.error);

/** The computed book with the stored value in each such cell. */
export function withStoredWhereBeyondUs(read: Book, computed: Book): Book {
  const sheets = computed.sheets.map((sheet) => {
    const stored = read.sheets.find(({ name }) => name === sheet.name)?.results ?? {};
    const beyond = Object.entries(sheet.results).filter(([at, anew]) => isBeyondUs(stored[at], anew));
    if (beyond.length === 0) return sheet;
    return {
      ...sheet,
      results: { ...sheet.results, ...Object.fromEntries(beyond.map(([at]) => [at, stored[at]!])) },
    };
  });
  return { ...computed, sheets };
}
