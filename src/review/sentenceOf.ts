/**
 * The sentence of an error that a formula of ours left in a cell. Some hosts
 * show it on the cell but hand out only the error's code; the function is then
 * called again with what the workbook holds.
 */
import { isFault } from "../engine/faults";
import { allFunctions } from "../functions/all";
import { isMatrix, type Argument, type Cell, type Matrix } from "../functions/core/cells";
import type { Place } from "../formula/address";
import type { Book } from "../workbooks/book";
import { argumentValue } from "./argumentValue";
import { callIn } from "../formula/callIn";
import { inSheetWords, spokenOf, wordsIn } from "./sheetWords";

/** @returns the sentence for a cell so many rows and columns from the formula's own */
export type SentenceAt = (formula: string, offset: Place) => string | undefined;

/** Each formula is called once, whatever the number of its cells. */
export function sentencesOn(book: Book, sheet: string): SentenceAt {
  const outcomes = new Map<string, Cell | Matrix | undefined>();
  return (formula, { row, column }) => {
    if (!outcomes.has(formula)) outcomes.set(formula, outcomeOf(book, sheet, formula));
    const outcome = outcomes.get(formula);
    const cell = isMatrix(outcome) ? outcome[row]?.[column] : outcome;
    return isFault(cell) ? cell.message : undefined;
  };
}

function outcomeOf(book: Book, sheet: string, formula: string): Cell | Matrix | undefined {
  const call = callIn(formula);
  const called = call?.whole ? allFunctions.find(({ name }) => name === call.name) : undefined;
  const values = call?.args.map((text) => argumentValue(book, sheet, text));
  if (!called || !values?.every((value): value is Argument => value !== undefined)) return undefined;
  return inSheetWords(called, call!.args, called.call(values), () => wordsIn(spokenOf(book), sheet));
}
