/** The workbook's own checks that do not pass. */
import { address, parseRange } from "../../workbooks/address";
import { isBookError, type Book, type BookResult } from "../../workbooks/book";
import type { Finding } from "../finding";

export function failingChecks(book: Book): Finding[] {
  const named = book.names.find(({ name }) => name === "checks_result");
  const sheet = book.sheets.find(({ name }) => name === named?.sheet);
  const zone = named && parseRange(named.range);
  if (!sheet || !zone) return [];
  const findings: Finding[] = [];
  for (let row = zone.top; row <= zone.bottom; row++) {
    const at = (column: number): BookResult | undefined => {
      const cell = address(row, zone.left + column);
      return sheet.results[cell] ?? sheet.cells[cell]?.value;
    };
    const result = at(0);
    if (result !== "look" && result !== "error" && result !== "note") continue;
    const found = at(-1);
    findings.push({
      weight: result === "note" ? "worth knowing" : "wrong",
      place: { sheet: sheet.name, cell: address(row, zone.left) },
      says: isBookError(found)
        ? `${words(at(-3))}: could not be found out, ${words(found)}.`
        : `${words(at(-3))}: ${words(found)}.`,
      should: `${words(at(-2))}.`,
      wayOut: `Look at ${words(at(1))}.`,
    });
  }
  return findings;
}

/** Digits enough to tell a figure from its limit. */
const DIGITS = 6;

function words(result: BookResult | undefined): string {
  if (typeof result === "number") return String(Number(result.toPrecision(DIGITS)));
  if (isBookError(result)) return result.message ?? result.error;
  return String(result ?? "");
}
