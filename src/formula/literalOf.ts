import { withoutBrackets, type FormulaNode } from "./tree";

export type Literal = number | string | boolean;

/** @returns what a part of a formula says outright, a list as rows, null for what is left out; undefined for what must be worked out */
export function literalOf(node: FormulaNode): Literal | Literal[][] | null | undefined {
  const one = withoutBrackets(node);
  if (one.kind === "missing") return null;
  if (one.kind !== "array") return single(one);
  const rows = one.rows.map((row) => row.map(single));
  return rows.every((row) => row.every((value) => value !== undefined)) ? (rows as Literal[][]) : undefined;
}

function single(node: FormulaNode): Literal | undefined {
  if (node.kind === "number" || node.kind === "text" || node.kind === "boolean") return node.value;
  if (node.kind !== "sign" || node.sign === "@") return undefined;
  const value = single(node.of);
  if (typeof value !== "number") return undefined;
  return node.sign === "-" ? -value : value;
}
