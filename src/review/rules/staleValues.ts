import { parseAddress } from "../../formula/address";
import { isBookError, type Book, type BookResult } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { figure } from "../namedCells";
import type { Rule } from "../rule";
import { sameResult } from "../sameResult";

export const staleValues: Rule = {
  id: "stale value",
  reason:
    "The page shows the value that was stored; a program that could not compute our cells leaves an old one there.",
  example: "Quote shows a total of 4,980 while its inputs come to 5,310.",
  find: ({ read, own: computed, labelAt, earlier }) => {
    const cells = staleCells(read, computed);
    const old = earlier ? cells.filter(({ stored, anew }) => !sameInOtherWords(stored, anew)) : cells;
    const unknown = old.filter(({ stored }) => isBookError(stored) && stored.error === UNKNOWN);
    if (unknown.length > 0) return [withoutOurFunctions(old, unknown[0]!, read, computed)];
    // One column that is old throughout is one finding.
    const columns = new Map<string, { first: StaleCell; count: number }>();
    for (const one of old) {
      const column = `${one.sheet}!${one.cell.replace(/\d+/, "")}`;
      const known = columns.get(column);
      columns.set(column, { first: known?.first ?? one, count: (known?.count ?? 0) + 1 });
    }
    return [...columns.values()].map(({ first: { sheet, cell, stored, anew }, count }): Finding => {
      const more = count > 1 ? ` and ${count - 1} more in its column` : "";
      return {
        weight: "wrong",
        place: { sheet, cell },
        message: `${labelAt(sheet, parseAddress(cell)!)} shows ${words(stored)}${more}: an old value.`,
        expected: words(anew),
        effect: "What is printed or read off this sheet is not what the inputs come to.",
        remedy: "Open the workbook where our functions run, enter the formulas again and save it.",
      };
    });
  },
};

/** What a program shows that does not know a function. */
const UNKNOWN = "#NAME?";

interface StaleCell {
  readonly sheet: string;
  readonly cell: string;
  readonly stored: BookResult;
  readonly anew: BookResult | undefined;
}

const staleCells = (read: Book, computed: Book): StaleCell[] =>
  read.sheets.flatMap((sheet) => {
    const results = computed.sheets.find(({ name }) => name === sheet.name)?.results ?? {};
    return Object.entries(sheet.results).flatMap(([cell, stored]) =>
      sameResult(stored, results[cell]) ? [] : [{ sheet: sheet.name, cell, stored, anew: results[cell] }],
    );
  });

/** Less is a verdict, or a name. */
const WORDS_OF_A_SENTENCE = 4;

/** Sentences with the same figures: the functions of the workbook's own day had other words for it. */
function sameInOtherWords(stored: BookResult, anew: BookResult | undefined): boolean {
  if (typeof stored !== "string" || typeof anew !== "string") return false;
  const isSentence = (text: string): boolean => text.split(" ").length >= WORDS_OF_A_SENTENCE;
  const figures = (text: string): string => (text.match(/\d+/g) ?? []).join(" ");
  return isSentence(stored) && isSentence(anew) && figures(stored) === figures(anew);
}

/** A program that lacks our functions spoils every cell that hangs on one; that is one thing to know, not hundreds. */
function withoutOurFunctions(
  old: readonly StaleCell[],
  { sheet, cell, anew }: StaleCell,
  read: Book,
  computed: Book,
): Finding {
  const [shown, total] = [
    namedValue(read, estimate.quote.total.name),
    namedValue(computed, estimate.quote.total.name),
  ];
  return {
    weight: "doubtful",
    place: { sheet, cell },
    message: `It was last saved by a program without our functions: ${old.length} cells show ${UNKNOWN} or what follows from it.`,
    expected: words(anew),
    effect:
      total === undefined || sameResult(shown, total)
        ? "The inputs are whole; the figures that it shows are not."
        : `The total shows ${words(shown)}; the inputs come to ${words(total)}.`,
    remedy:
      "Open it where our functions run and save it; give a copy without add-in to people who lack them. The other findings here are of the figures computed anew.",
  };
}

function words(result: BookResult | undefined): string {
  if (isBookError(result)) return result.error;
  return typeof result === "number" ? figure(result) : String(result ?? "nothing");
}
