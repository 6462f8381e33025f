/**
 * Formulas built from the objects that they name, so that a name that is not
 * there does not compile, and one that changes changes everywhere.
 */
import { treeOf } from "./parse";
import { BINDING, SIGN_BINDING } from "./precedence";
import { quotedText } from "./print";
import { withoutBrackets, type Operator } from "./tree";

/** What a formula can name: a cell, a column, a table. */
export interface Named {
  /** The defined name in the workbook. */
  readonly name: string;
}

declare const BUILT: unique symbol;

/** The text of a formula without its equals sign; made by the functions of this file only. */
export type Formula = string & { readonly [BUILT]: true };

/** A formula for what is named or built already, and the literal for a number. */
export type Operand = Named | Formula | number;

/**
 * A formula as a template: f`${rooms.level}-${site.level_low}`. A formula in it stays
 * an operand of its own: it gets brackets where the operators beside it would
 * tear it apart.
 */
export function f(texts: TemplateStringsArray, ...operands: readonly Operand[]): Formula {
  let formula = texts[0]!;
  operands.forEach((operand, index) => {
    const after = texts[index + 1]!;
    formula += typeof operand === "string" ? operandText(formula, operand, after) : textOf(operand);
    formula += after;
  });
  return formula as Formula;
}

/** A function of the spreadsheet by its name, where a template can't hold it. */
export const call = (name: string, ...args: readonly Operand[]): Formula =>
  `${name}(${args.map(textOf).join(",")})` as Formula;

/** Formulas with one operator between them, as in a sum of sums; none is the empty text. */
export const chain = (operator: Operator, formulas: readonly Operand[]): Formula =>
  formulas.map(textOf).join(operator) as Formula;

/** A text as a formula writes it, in quotes. */
export const text = (words: string): Formula => quotedText(words) as Formula;

/** A cell by its address: for the few formulas that mean the cell beside them. */
export const cellAt = (address: string): Formula => address as Formula;

function textOf(operand: Operand): string {
  // The compiler sees to it; what is not compiled would print the word "undefined".
  if (operand === undefined) throw new TypeError("A formula names what is not there.");
  return typeof operand === "object" ? operand.name : String(operand);
}

const OPERATORS = Object.keys(BINDING)
  .filter((operator) => operator !== "," && operator !== " ")
  .sort((a, b) => b.length - a.length) as Operator[];
/** What is taken away, divided by or compared with is one thing, though the operators bind alike. */
const ONE_THING_BEHIND: readonly Operator[] = ["-", "/", "^", "=", "<>", "<", ">", "<=", ">="];

function operandText(before: string, formula: Formula, after: string): string {
  const left = OPERATORS.find((operator) => before.endsWith(operator));
  const right = OPERATORS.find((operator) => after.startsWith(operator));
  if (left === undefined && right === undefined) return formula;
  const node = treeOf(formula);
  if (!node || node !== withoutBrackets(node)) return formula;
  const own =
    node.kind === "operator" ? BINDING[node.operator] : node.kind === "sign" ? SIGN_BINDING : Infinity;
  const torn =
    (left !== undefined &&
      (own < BINDING[left] || (own === BINDING[left] && ONE_THING_BEHIND.includes(left)))) ||
    (right !== undefined && own < BINDING[right]);
  return torn ? `(${formula})` : formula;
}
