/** The condition of a mark for cells that are filled beside another, as a formula for the first cell of its range. */
import { address, columnLetters, parseRange } from "../formula/address";
import { treeOf } from "../formula/parse";
import { zoneOf } from "../formula/reference";
import { sameFormula } from "../formula/sameFormula";
import { nodesIn } from "../formula/tree";

/** @param beside letters of the other column */
export function bothFilled(range: string, beside: string): string {
  const { top, left } = parseRange(range)!;
  return `AND($${beside}${top + 1}<>"",${address(top, left)}<>"")`;
}

/** @returns the letters of the other column; undefined for any other condition */
export function besideIn(formula: string, range: string): string | undefined {
  const zone = parseRange(range);
  const tree = zone && treeOf(formula.startsWith("=") ? formula.slice(1) : formula);
  const first = tree && [...nodesIn(tree)].find((node) => node.kind === "reference");
  if (first?.kind !== "reference") return undefined;
  const beside = columnLetters(zoneOf(first.cells).left);
  return sameFormula(formula.startsWith("=") ? formula.slice(1) : formula, bothFilled(range, beside))
    ? beside
    : undefined;
}
