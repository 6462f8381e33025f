/**
 * A number, or a word in its place, as a rule of a spreadsheet's own: a formula for the range's first cell, which
 * moves along with the others. And such a formula read back.
 */
import { literalOf } from "../formula/literalOf";
import { treeOf } from "../formula/parse";
import { printFormula, quotedText } from "../formula/print";
import { functionName } from "../formula/storedNames";
import type { FormulaNode, Operator } from "../formula/tree";
import type { BookValidation } from "./book";

type NumberRule = Extract<BookValidation["rule"], { kind: "number" }>;

/** @param rule with `min`, `max` and `orWords`; without anything else */
export function numberOrWord({ min, max, orWords = [] }: NumberRule, range: string): string {
  const [cell] = range.split(":");
  const words = orWords.map((word) => `${cell}=${quotedText(word)}`);
  return `OR(AND(ISNUMBER(${cell}),${cell}>=${min},${cell}<=${max}),${words.join(",")})`;
}

/** @returns undefined for any other formula */
export function numberOrWordIn(formula: string | undefined): NumberRule | undefined {
  const [number, ...others] = argumentsOf(formula === undefined ? undefined : treeOf(formula), "OR");
  const [isNumber, least, most, ...more] = argumentsOf(number, "AND");
  const [cell, ...rest] = argumentsOf(isNumber, "ISNUMBER");
  if (cell?.kind !== "reference" || rest.length > 0 || more.length > 0 || others.length === 0)
    return undefined;
  const limit = (node: FormulaNode | undefined, operator: Operator): unknown =>
    comparedWith(cell, node, operator);
  const [min, max] = [limit(least, ">="), limit(most, "<=")];
  const orWords = others.map((node) => limit(node, "="));
  if (typeof min !== "number" || typeof max !== "number") return undefined;
  return orWords.every((word) => typeof word === "string")
    ? { kind: "number", min, max, orWords }
    : undefined;
}

const argumentsOf = (node: FormulaNode | undefined, name: string): readonly FormulaNode[] =>
  node?.kind === "call" && functionName(node.name) === name ? node.args : [];

/** What that cell is compared with. */
function comparedWith(cell: FormulaNode, node: FormulaNode | undefined, operator: Operator): unknown {
  if (node?.kind !== "operator" || node.operator !== operator) return undefined;
  return printFormula(node.left) === printFormula(cell) ? literalOf(node.right) : undefined;
}
