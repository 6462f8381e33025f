/** A formula as a tree: what stands in it, and what each piece is an operand of. */
import type { Reference } from "./reference";

export type Operator =
  ":" | " " | "," | "^" | "*" | "/" | "+" | "-" | "&" | "=" | "<>" | "<" | ">" | "<=" | ">=";

interface At {
  /** 0-based place of the first character, and of the one behind the last. */
  readonly start: number;
  readonly end: number;
}

export type FormulaNode = At &
  (
    | { readonly kind: "number"; readonly value: number; readonly text: string }
    | { readonly kind: "text"; readonly value: string }
    | { readonly kind: "boolean"; readonly value: boolean }
    /** `#N/A`; of a cell that is gone, `Rooms!#REF!` with its sheet. */
    | { readonly kind: "error"; readonly code: string }
    /** A defined name; `sheet` as it is written before it, quotes and exclamation mark left out. */
    | { readonly kind: "name"; readonly name: string; readonly sheet?: string }
    | { readonly kind: "reference"; readonly cells: Reference }
    /** A reference into a table, and what else only the spreadsheet understands. */
    | { readonly kind: "structured"; readonly text: string }
    | { readonly kind: "call"; readonly name: string; readonly args: readonly FormulaNode[] }
    /** What a call gave is called: `LAMBDA(x,x+1)(2)`. */
    | { readonly kind: "apply"; readonly callee: FormulaNode; readonly args: readonly FormulaNode[] }
    | {
        readonly kind: "operator";
        readonly operator: Operator;
        readonly left: FormulaNode;
        readonly right: FormulaNode;
      }
    | { readonly kind: "sign"; readonly sign: "+" | "-" | "@"; readonly of: FormulaNode }
    | { readonly kind: "percent"; readonly of: FormulaNode }
    /** What a formula in that cell spilled: `B3#`. */
    | { readonly kind: "spill"; readonly of: FormulaNode }
    | { readonly kind: "brackets"; readonly of: FormulaNode }
    | { readonly kind: "array"; readonly rows: readonly (readonly FormulaNode[])[] }
    /** An argument that is left out. */
    | { readonly kind: "missing" }
  );

export function childrenOf(node: FormulaNode): readonly FormulaNode[] {
  switch (node.kind) {
    case "call":
      return node.args;
    case "apply":
      return [node.callee, ...node.args];
    case "operator":
      return [node.left, node.right];
    case "sign":
    case "percent":
    case "spill":
    case "brackets":
      return [node.of];
    case "array":
      return node.rows.flat();
    default:
      return [];
  }
}

/** The node and all below it, as they stand from left to right. */
export function* nodesIn(root: FormulaNode): Generator<FormulaNode> {
  const left = [root];
  for (let node; (node = left.pop()); left.push(...childrenOf(node).toReversed())) yield node;
}

/** What stands in brackets, however many. */
export function withoutBrackets(node: FormulaNode): FormulaNode {
  let inside = node;
  while (inside.kind === "brackets") inside = inside.of;
  return inside;
}

/** @param textOf what is to stand in the place of a name or reference; undefined leaves it */
export function withParts(node: FormulaNode, textOf: (node: FormulaNode) => string | undefined): FormulaNode {
  const inside = (one: FormulaNode): FormulaNode => withParts(one, textOf);
  switch (node.kind) {
    case "name":
    case "reference": {
      const text = textOf(node);
      return text === undefined ? node : { kind: "structured", text, start: node.start, end: node.end };
    }
    case "call":
      return { ...node, args: node.args.map(inside) };
    case "apply":
      return { ...node, callee: inside(node.callee), args: node.args.map(inside) };
    case "operator":
      return { ...node, left: inside(node.left), right: inside(node.right) };
    case "sign":
    case "percent":
    case "spill":
    case "brackets":
      return { ...node, of: inside(node.of) };
    default:
      return node;
  }
}
