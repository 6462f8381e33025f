import { parseAddress } from "../../workbooks/address";
import { isBookError, type BookResult } from "../../workbooks/book";
import type { Finding } from "../finding";
import { figure } from "../namedCells";
import type { Rule } from "../rule";

/** Hosts add in different orders; their last digits differ. */
const RELATIVE = 1e-7;
const ABSOLUTE = 1e-6;

export const staleValues: Rule = {
  id: "stale value",
  reason:
    "The page shows the value that was stored; a program that could not compute our cells leaves an old one there.",
  example: "Quote shows a total of 4,980 while its inputs come to 5,310.",
  find: ({ read, computed, labelAt }) =>
    read.sheets.flatMap((sheet) => {
      const anew = computed.sheets.find(({ name }) => name === sheet.name)?.results ?? {};
      // One column that is old throughout is one finding.
      const columns = new Map<string, { cell: string; count: number }>();
      for (const [cell, stored] of Object.entries(sheet.results)) {
        if (same(stored, anew[cell])) continue;
        const column = cell.replace(/\d+/, "");
        const known = columns.get(column);
        columns.set(column, { cell: known?.cell ?? cell, count: (known?.count ?? 0) + 1 });
      }
      return [...columns.values()].map(({ cell, count }): Finding => {
        const more = count > 1 ? ` and ${count - 1} more in its column` : "";
        return {
          weight: "wrong",
          place: { sheet: sheet.name, cell },
          says: `${labelAt(sheet.name, parseAddress(cell)!)} shows ${words(sheet.results[cell])}${more}: an old value.`,
          should: words(anew[cell]),
          effect: "What is printed or read off this sheet is not what the inputs come to.",
          wayOut: "Open the workbook where our functions run, enter the formulas again and save it.",
        };
      });
    }),
};

function same(stored: BookResult, anew: BookResult | undefined): boolean {
  // An error is told by its own rule; a host without our functions shows one where we have a value.
  if (isBookError(anew)) return isBookError(stored);
  if (typeof stored === "number" && typeof anew === "number") {
    return Math.abs(stored - anew) <= Math.max(ABSOLUTE, RELATIVE * Math.abs(anew));
  }
  return stored === (anew ?? "");
}

function words(result: BookResult | undefined): string {
  if (isBookError(result)) return result.error;
  return typeof result === "number" ? figure(result) : String(result ?? "nothing");
}
