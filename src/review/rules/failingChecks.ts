/** The workbook's own checks that do not pass, each with the first cell that it counts. */
import { address, parseRange } from "../../formula/address";
import { functionsIn } from "../../formula/functionsIn";
import { textsIn } from "../../formula/textsIn";

import { isBookError, type Book, type BookResult } from "../../workbooks/book";
import { namesIn } from "../../formula/namesIn";
import { checkWithWords } from "../../workbooks/checkWithWords";
import { templateOf } from "../../workbooks/templates";
import type { Finding, FindingPlace } from "../finding";
import { mendsOf } from "../mends";
import { checks } from "../../workbooks/checkNames";

export function failingChecks(book: Book): Finding[] {
  const named = book.names.find(({ name }) => name === checks.result.name);
  const sheet = book.sheets.find(({ name }) => name === named?.sheet);
  const zone = named && parseRange(named.range);
  if (!sheet || !zone) return [];
  const definition = templateOf(book.template)?.definition;
  const findings: Finding[] = [];
  for (let row = zone.top; row <= zone.bottom; row++) {
    const at = (column: number): BookResult | undefined => {
      const cell = address(row, zone.left + column);
      return sheet.results[cell] ?? sheet.cells[cell]?.value;
    };
    const result = at(0);
    if (result !== "look" && result !== "error" && result !== "note") continue;
    const found = at(-1);
    const check = definition && checkWithWords(definition, words(at(-3)));
    const formula = sheet.cells[address(row, zone.left - 1)]?.formula;
    const cause = formula === undefined ? undefined : firstCounted(book, formula);
    const mends = check && mendsOf(check.id, book, cause);
    findings.push({
      ...(check && { check: { id: check.id, entriesOf: check.entriesOf } }),
      weight: result === "note" ? "worth knowing" : "wrong",
      place: { sheet: sheet.name, cell: address(row, zone.left) },
      cause,
      ...(mends && mends.length > 0 && { mends }),
      message: isBookError(found)
        ? `${words(at(-3))}: could not be found out, it shows ${found.error}.`
        : `${words(at(-3))}: ${words(found)}.`,
      // The limit of a note is a wish, and its line says so.
      expected: result === "note" ? undefined : `${words(at(-2))}.`,
      remedy: `Look at ${words(at(1))}.`,
    });
  }
  return findings;
}

/** The first cell of a range in a check's formula that shows an error, or a word that the formula asks for. */
function firstCounted(book: Book, formula: string): FindingPlace | undefined {
  const asked = new Set(textsIn(formula).filter((text) => text !== ""));
  const called = functionsIn(formula);
  const countsErrors = called.has("ISERROR") || called.has("IFERROR");
  for (const { sheet: name, range } of namesIn(book, formula)) {
    const zone = parseRange(range);
    const results = book.sheets.find((one) => one.name === name)?.results;
    if (!zone || !results) continue;
    for (let row = zone.top; row <= zone.bottom; row++) {
      for (let column = zone.left; column <= zone.right; column++) {
        const cell = address(row, column);
        const result = results[cell];
        const counted = isBookError(result) ? countsErrors : typeof result === "string" && asked.has(result);
        if (counted) return { sheet: name, cell };
      }
    }
  }
  return undefined;
}

/** Digits enough to tell a figure from its limit. */
const DIGITS = 6;

function words(result: BookResult | undefined): string {
  if (typeof result === "number") return String(Number(result.toPrecision(DIGITS)));
  if (isBookError(result)) return result.error;
  return String(result ?? "");
}
