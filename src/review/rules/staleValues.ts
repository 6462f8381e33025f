import { parseAddress } from "../../formula/address";
import type { BookResult } from "../../workbooks/book";
import type { Finding } from "../finding";
import { isBeyondUs } from "../beyondUs";
import { followersOf } from "../followersOf";
import type { Reviewed, Rule } from "../rule";
import { brokenCells } from "./brokenInputs";
import { sameResult } from "../sameResult";
import { words, type StaleCell } from "./stateOfFile";

export const staleValues: Rule = {
  id: "stale value",
  reason:
    "The page shows the value that was stored; a program that could not compute our cells leaves an old one there.",
  example: "Quote shows a total of 4,980 while its inputs come to 5,310.",
  find: (reviewed) => {
    const { labelAt } = reviewed;
    const old = withoutFollowers(staleCells(reviewed), reviewed);
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

/** The cells that show another value than their own formulas come to. */
export function staleCells({ read, own, earlier }: Reviewed): StaleCell[] {
  const cells = read.sheets.flatMap((sheet) => {
    const results = own.sheets.find(({ name }) => name === sheet.name)?.results ?? {};
    return Object.entries(sheet.results).flatMap(([cell, stored]) =>
      sameResult(stored, results[cell]) || isBeyondUs(stored, results[cell])
        ? []
        : [{ sheet: sheet.name, cell, stored, anew: results[cell] }],
    );
  });
  return earlier ? cells.filter(({ stored, anew }) => !sameInOtherWords(stored, anew)) : cells;
}

/** Old values that only follow from cells which are named by themselves. */
function withoutFollowers(
  old: readonly StaleCell[],
  { read, own, differences }: Reviewed,
): readonly StaleCell[] {
  if (old.length === 0) return old;
  const cut = [...differences.flatMap(({ place }) => (place ? [place] : [])), ...brokenCells(read)];
  if (cut.length === 0) return old;
  const follows = followersOf(own, cut);
  return old.filter(({ sheet, cell }) => !follows(sheet, parseAddress(cell)!));
}

/** Less is a verdict, or a name. */
const WORDS_OF_A_SENTENCE = 4;

/** Sentences with the same figures: the functions of the workbook's own day had other words for it. */
function sameInOtherWords(stored: BookResult, anew: BookResult | undefined): boolean {
  if (typeof stored !== "string" || typeof anew !== "string") return false;
  const isSentence = (text: string): boolean => text.split(" ").length >= WORDS_OF_A_SENTENCE;
  const figures = (text: string): string => (text.match(/\d+/g) ?? []).join(" ");
  return isSentence(stored) && isSentence(anew) && figures(stored) === figures(anew);
}
