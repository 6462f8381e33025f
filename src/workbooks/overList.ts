/** The condition of a mark for cells that are filled although a list says something, as a formula for the first cell of its range. */
import { address, columnLetters, parseRange } from "../formula/address";
import { treeOf } from "../formula/parse";
import { zoneOf } from "../formula/reference";
import { sameFormula } from "../formula/sameFormula";
import { nodesIn, type FormulaNode } from "../formula/tree";
import type { OverList } from "./book";

export function filledOver(range: string, { list, line }: OverList): string {
  const { top, left } = parseRange(range)!;
  return `AND(${address(top, left)}<>"",IFERROR(INDEX(${list},$${line}${top + 1})<>"",FALSE))`;
}

/** @returns the list of such a condition; undefined for any other */
export function overListIn(condition: string, range: string): OverList | undefined {
  const formula = condition.startsWith("=") ? condition.slice(1) : condition;
  const zone = parseRange(range);
  const tree = zone && treeOf(formula);
  const nodes = tree ? [...nodesIn(tree)] : [];
  const list = nodes.find((node): node is FormulaNode & { kind: "name" } => node.kind === "name");
  const line = nodes.filter(
    (node): node is FormulaNode & { kind: "reference" } => node.kind === "reference",
  )[1];
  if (!list || !line) return undefined;
  const over = { list: list.name, line: columnLetters(zoneOf(line.cells).left) };
  return sameFormula(formula, filledOver(range, over)) ? over : undefined;
}
