/** Computes single formulas without a workbook, for the command line and the tests. */
import { isBookError, type BookResult } from "../../workbooks/book";
import type { GridModel } from "../grid/library";
import { loadLibrary, quietly } from "./loadLibrary";

/** What a formula gives: one value or a matrix of rows; an error in either. */
export type FormulaOutcome = BookResult | BookResult[][];

interface GridValue {
  readonly value: number | string | boolean | null;
  readonly message?: string;
}

let model: GridModel | undefined;

/**
 * @param formula with or without its equals sign, in en-US syntax
 * @returns its value; a matrix as an array of rows
 */
export function evaluateFormula(formula: string): FormulaOutcome {
  const library = loadLibrary();
  const errors = library.registries.errorTypes;
  const scratch = (model ??= quietly(() => new library.Model({ sheets: [{ id: "calc", name: "calc" }] })));
  const text = formula.trim().replace(/^=/, "");
  const outcome = scratch.getters.evaluateFormulaResult("calc", `=${text}`) as GridValue | GridValue[][];
  const result = ({ value, message }: GridValue): BookResult =>
    typeof value === "string" && errors.has(value)
      ? { error: value, message: message || undefined }
      : (value ?? 0);
  if (!Array.isArray(outcome)) return result(outcome);
  const rows = outcome[0]?.length ?? 0;
  return Array.from({ length: rows }, (_, row) => outcome.map((column) => result(column[row]!)));
}

export const holdsError = (outcome: FormulaOutcome): boolean =>
  Array.isArray(outcome) ? outcome.some((row) => row.some(isBookError)) : isBookError(outcome);
