/** Computes single formulas without a workbook, for the command line and the tests. */
import { isBookError, type BookResult } from "../../workbooks/book";
import type { GridModel } from "../grid/library";
import { beyondLimits } from "./formulaLimits";
import { loadLibrary, quietly } from "./loadLibrary";

/** What a formula gives: one value or a matrix of rows; an error in either. */
export type FormulaOutcome = BookResult | BookResult[][];

interface GridValue {
  readonly value: number | string | boolean | null;
  readonly message?: string;
}

/** More than any column of ours has, and what a terminal takes. */
const MOST_CELLS = 200_000;

const TOO_LARGE: BookResult = {
  error: "#NUM!",
  message: "The result is too large for a number, or is none. Check the powers and divisions in it.",
};
const TOO_MUCH: BookResult = {
  error: "#VALUE!",
  message: "The formula has too many parts to be computed. Split it, or put its parts into cells.",
};

let model: GridModel | undefined;

/**
 * @param formula with or without its equals sign, in en-US syntax
 * @returns its value; a matrix as an array of rows
 */
export function evaluateFormula(formula: string): FormulaOutcome {
  const written = formula.trim();
  const text = written.startsWith("=") ? written.slice(1) : written;
  const refused = beyondLimits(text);
  if (refused !== undefined) return { error: "#VALUE!", message: refused };
  const library = loadLibrary();
  const errors = library.registries.errorTypes;
  const scratch = (model ??= quietly(() => new library.Model({ sheets: [{ id: "calc", name: "calc" }] })));
  const result = ({ value, message }: GridValue): BookResult => {
    if (typeof value === "string" && errors.has(value))
      return { error: value, message: message || undefined };
    if (typeof value === "number" && !Number.isFinite(value)) return TOO_LARGE;
    return value ?? 0;
  };
  let outcome: GridValue | GridValue[][];
  try {
    outcome = quietly(() => scratch.getters.evaluateFormulaResult("calc", `=${text}`)) as typeof outcome;
  } catch (error) {
    if (error instanceof RangeError) return TOO_MUCH;
    return {
      error: "#VALUE!",
      message: "The formula could not be computed. Check its brackets and arguments.",
    };
  }
  if (!Array.isArray(outcome)) return result(outcome);
  const cells = outcome.length * (outcome[0]?.length ?? 0);
  if (cells > MOST_CELLS) {
    return {
      error: "#VALUE!",
      message: `The formula gives ${cells} cells; up to ${MOST_CELLS} are printed. Sum it up, or compute a part of it.`,
    };
  }
  const rows = outcome[0]?.length ?? 0;
  return Array.from({ length: rows }, (_, row) => outcome.map((column) => result(column[row]!)));
}

export const holdsError = (outcome: FormulaOutcome): boolean =>
  Array.isArray(outcome) ? outcome.some((row) => row.some(isBookError)) : isBookError(outcome);
