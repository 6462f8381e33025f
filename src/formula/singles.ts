/**
 * The `@` that takes one of several cells, which files store as a function,
 * `_xlfn.SINGLE(…)` (Microsoft, "Implicit intersection operator").
 */
import { address, isInside, quotedSheet, type Place } from "./address";
import { treeOf } from "./parse";
import type { Area } from "./readAreas";
import { isOne, type IsOneCell } from "./sameFormula";
import { functionName } from "./storedNames";
import { tokensOf } from "./tokens";
import { nodesIn, withoutBrackets, type FormulaNode } from "./tree";

const STORED = "_xlfn.SINGLE(";

/** @returns the formula as people see it: with an `@` for the function */
export function withSinglesShown(stored: string): string {
  if (!stored.toUpperCase().includes("SINGLE")) return stored;
  const tokens = tokensOf(stored);
  const left = new Set<number>();
  const shown = tokens.map(({ kind, text }, index) => {
    if (left.has(index)) return "";
    if (kind !== "function" || functionName(text) !== "SINGLE" || tokens[index + 1]?.text !== "(")
      return text;
    // What is one word needs no brackets.
    if (tokens[index + 3]?.text === ")") {
      left.add(index + 1);
      left.add(index + 3);
    }
    return "@";
  });
  return shown.join("");
}

/** @returns the formula with the function for each `@` */
export function withSinglesStored(formula: string): string {
  const signs = atsIn(formula);
  let text = formula;
  const edits = signs.flatMap(({ start, end }) => [
    { at: end, cut: 0, put: ")" },
    { at: start, cut: 1, put: STORED },
  ]);
  for (const { at, cut, put } of edits.sort((a, b) => b.at - a.at || a.cut - b.cut))
    text = text.slice(0, at) + put + text.slice(at + cut);
  return text;
}

/** @returns the formula without the `@` that stand before one cell or one value, where they change nothing */
export const withoutIdleAts = (formula: string, isOneCell: IsOneCell): string =>
  withEachAt(formula, (of) => (isOne(of, isOneCell) ? "" : undefined));

/** @returns the formula without any `@`: what it would be had nobody cut it */
export const withoutAts = (formula: string): string => withEachAt(formula, () => "");

/**
 * The formula as an engine computes it that knows no `@`: the cell in its own row or column for it.
 *
 * @param place of the formula
 * @param zoneOf where a name or reference lies; undefined for what is not known
 */
export const withAtsResolved = (
  formula: string,
  place: Place,
  zoneOf: (of: FormulaNode) => Area | undefined,
): string =>
  withEachAt(formula, (of) => {
    const found = zoneOf(of);
    if (!found) return undefined;
    const { sheet, zone } = found;
    const row = zone.top === zone.bottom ? zone.top : place.row;
    const column = zone.left === zone.right ? zone.left : place.column;
    const cell = isInside(zone, row, column) ? `${quotedSheet(sheet)}!${address(row, column)}` : "#VALUE!";
    return { instead: cell };
  });

/** @param change what to put for the sign, or for it and what it is before; undefined leaves it */
function withEachAt(
  formula: string,
  change: (of: FormulaNode) => "" | { readonly instead: string } | undefined,
): string {
  let text = formula;
  for (const { of, start, end } of [...atsIn(formula)].sort((a, b) => b.start - a.start)) {
    const put = change(withoutBrackets(of));
    if (put === "") text = text.slice(0, start) + text.slice(start + 1);
    else if (put) text = text.slice(0, start) + put.instead + text.slice(end);
  }
  return text;
}

function atsIn(formula: string): Extract<FormulaNode, { kind: "sign" }>[] {
  const tree = formula.includes("@") ? treeOf(formula) : undefined;
  return [...(tree ? nodesIn(tree) : [])].flatMap((node) =>
    node.kind === "sign" && node.sign === "@" ? [node] : [],
  );
}
