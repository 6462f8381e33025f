/** A short mark by which a formula is known again, however a program writes it and wherever its rows lie now. */
import { normalForm } from "../formula/sameFormula";
import { withReferences } from "../formula/withReferences";
import { fnv1a } from "./fnv1a";

const DIGITS = 8;
/** In the place of every address: rows that a person inserts move them. */
const ANYWHERE = { from: { row: 0, column: 0, rowFixed: false, columnFixed: false } } as const;

/** @returns the same for formulas that differ in addresses, blanks, case or a program's own spelling alone */
export const formulaMark = (formula: string): string =>
  fnv1a(withReferences(normalForm(formula), () => ANYWHERE).replaceAll("@", ""))
    .toString(16)
    .padStart(16, "0")
    .slice(0, DIGITS);
