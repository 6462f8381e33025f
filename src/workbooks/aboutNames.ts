/** What About says of the template and of our functions in the program that shows the workbook. */
import { BLANKS_AS_ZERO } from "../functions/core/blanksAsZero";
import { f, text, type Formula } from "../formula/build";
import { fields, told } from "./names";

export const about = fields("about", {
  template: told("Template"),
  functions: told("Functions"),
  blank: told("Blank on purpose", { note: "leave it empty" }),
  state: told("Answer of the functions"),
});

/** Verdicts, so that they are marked as such. */
export const STATES = { ok: "ok", missing: "missing", zeros: "look" } as const;

/** In the head of every sheet, where it is not well: a native formula, which no missing function spoils. */
export const STATE_WORDS = {
  missing: "Functions do not answer: press Rigsheet pane (Home). Inputs are safe, results are not.",
  zeros: "This program reads blanks as 0: do not trust levels and volts. See About.",
} as const;

/** What to do, on About. */
export const STATE_REMEDIES: readonly string[] = [
  "missing: inputs are safe; results stand still or are wrong. While #BUSY! shows, wait; else load the Rigsheet add-in and press “Repair formulas” in its pane.",
  "look: this program hands blank cells to the functions as 0; levels and volts are wrong though prices look right. Update it, or use the desk.",
];

export const stateFormula: Formula = f`IF(ISERROR(${about.functions}),${text(STATES.missing)},IF(RIGHT(${about.functions},${BLANKS_AS_ZERO.length})=${text(BLANKS_AS_ZERO)},${text(STATES.zeros)},${text(STATES.ok)}))`;

const isOk = f`${about.state}=${text(STATES.ok)}`;

/** The formula where our functions answer as they should; else what follows on their silence must not look right. */
export const whileFunctionsAnswer = (formula: Formula, otherwise: Formula = f`NA()`): Formula =>
  f`IF(${isOk},${formula},${otherwise})`;

export const stateInWords: Formula = f`IF(${about.state}=${text(STATES.missing)},${text(STATE_WORDS.missing)},${text(STATE_WORDS.zeros)})`;
