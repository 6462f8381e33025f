/** A tree into text. Brackets are written where the tree has them, and where it would be read otherwise without. */
import { quotedSheet } from "./address";
import { BINDING, SIGN_BINDING } from "./precedence";
import { cornerText, type Reference } from "./reference";
import type { FormulaNode } from "./tree";

/** @returns the formula without its equals sign, and without blanks that mean nothing */
export function printFormula(node: FormulaNode): string {
  switch (node.kind) {
    case "number":
    case "structured":
      return node.text;
    case "text":
      return quotedText(node.value);
    case "boolean":
      return node.value ? "TRUE" : "FALSE";
    case "error":
      return node.code;
    case "name":
      return node.sheet === undefined ? node.name : `${node.sheet}!${node.name}`;
    case "reference":
      return referenceText(node.cells);
    case "call":
      return `${node.name}(${listText(node.args)})`;
    case "apply":
      return `${printFormula(node.callee)}(${listText(node.args)})`;
    case "operator": {
      const own = BINDING[node.operator];
      const left = within(node.left, bindingOf(node.left) < own);
      const right = within(node.right, bindingOf(node.right) <= own);
      return `${left}${node.operator}${right}`;
    }
    case "sign":
      return `${node.sign}${within(node.of, bindingOf(node.of) < SIGN_BINDING || node.of.kind === "percent")}`;
    case "percent":
      return `${within(node.of, bindingOf(node.of) < SIGN_BINDING)}%`;
    case "spill":
      return `${within(node.of, bindingOf(node.of) < Infinity)}#`;
    case "brackets":
      return `(${printFormula(node.of)})`;
    case "array":
      return `{${node.rows.map((row) => row.map(printFormula).join(",")).join(";")}}`;
    case "missing":
      return "";
  }
}

/** @returns a text as a formula writes it */
export const quotedText = (text: string): string => `"${text.replaceAll('"', '""')}"`;

function bindingOf(node: FormulaNode): number {
  if (node.kind === "operator") return BINDING[node.operator];
  return node.kind === "sign" || node.kind === "percent" ? SIGN_BINDING : Infinity;
}

const within = (node: FormulaNode, bracketed: boolean): string =>
  bracketed ? `(${printFormula(node)})` : printFormula(node);

/** Between arguments a comma joins nothing. */
const listText = (args: readonly FormulaNode[]): string =>
  args.map((arg) => within(arg, arg.kind === "operator" && arg.operator === ",")).join(",");

function referenceText({ file, sheet, lastSheet, from, to }: Reference): string {
  const cells = to ? `${cornerText(from)}:${cornerText(to)}` : cornerText(from);
  if (sheet === undefined) return cells;
  if (file === undefined && lastSheet === undefined) return `${quotedSheet(sheet)}!${cells}`;
  const all = `${file ?? ""}${sheet}${lastSheet === undefined ? "" : `:${lastSheet}`}`;
  return `'${all.replaceAll("'", "''")}'!${cells}`;
}
