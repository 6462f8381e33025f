/** Which areas a formula reads as a whole, rather than row by row. */
import { areasOf, type Area, type NamedAreas } from "../formula/readAreas";
import { ourName } from "../formula/storedNames";
import { childrenOf, type FormulaNode } from "../formula/tree";
import { allFunctions } from "../functions/all";

/**
 * The native functions that look at lists: which of their arguments are one,
 * counted from 0; from the last given one on, each further one, or each other
 * one where that is said.
 */
const LISTS: Readonly<Record<string, { readonly at: readonly number[]; readonly then?: "all" | "others" }>> =
  {
    ...named("AND AVERAGE COLUMNS COUNT COUNTA COUNTBLANK MAX MIN MMULT OR ROWS SUM SUMPRODUCT", [0], "all"),
    ...named("COUNTIF INDEX LARGE OFFSET SMALL", [0]),
    ...named("HLOOKUP MATCH VLOOKUP", [1]),
    COUNTIFS: { at: [0], then: "others" },
    LOOKUP: { at: [1], then: "all" },
    SUBTOTAL: { at: [1], then: "all" },
    SUMIF: { at: [0, 2] },
    SUMIFS: { at: [0, 1], then: "others" },
  };

function named(names: string, at: readonly number[], then?: "all") {
  return Object.fromEntries(names.split(" ").map((name) => [name, { at, ...(then && { then }) }]));
}

function takesList(name: string, index: number): boolean {
  const own = ourName(name);
  if (own !== undefined) {
    const parameters = allFunctions.find((one) => one.name === own)?.parameters ?? [];
    const parameter = parameters[Math.min(index, parameters.length - 1)];
    return parameter?.shape === "list" || parameter?.shape === "table";
  }
  const list = LISTS[name.toUpperCase()];
  if (!list) return false;
  const last = list.at.at(-1)!;
  if (list.at.includes(index)) return true;
  return index > last && (list.then === "all" || (list.then === "others" && (index - last) % 2 === 0));
}

export interface AreaRead extends Area {
  readonly whole: boolean;
}

/** @returns each area once for each way in which the formula reads it, in the order in which they stand */
export function areasRead(book: NamedAreas, sheet: string, tree: FormulaNode): AreaRead[] {
  const found = new Map<string, AreaRead>();
  const walk = (node: FormulaNode, whole: boolean): void => {
    const isRange = node.kind === "operator" && node.operator === ":";
    if (node.kind === "name" || node.kind === "reference" || isRange) {
      for (const area of areasOf(book, sheet, node)) {
        const { top, left, bottom, right } = area.zone;
        const key = [area.sheet, top, left, bottom, right, whole].join(" ");
        if (!found.has(key)) found.set(key, { ...area, whole });
      }
      return;
    }
    childrenOf(node).forEach((child, index) =>
      walk(child, node.kind === "call" ? takesList(node.name, index) : whole),
    );
  };
  walk(tree, false);
  return [...found.values()];
}
