/** The paper that somebody chose last, kept in the browser's storage: an office has one in its printer. */
import type { BookPrint } from "../../../workbooks/book";

type Paper = BookPrint["paper"];

const KEY = "rigsheet.paper";

/** @returns undefined where none was chosen yet, or the browser refuses its storage */
export function keptPaper(): Paper | undefined {
  try {
    const kept = localStorage.getItem(KEY);
    return kept === "a4" || kept === "letter" ? kept : undefined;
  } catch {
    return undefined;
  }
}

export function keepPaper(paper: Paper): void {
  try {
    localStorage.setItem(KEY, paper);
  } catch {
    // It is asked for again the next time.
  }
}
