/** Finds the call of one of our functions in a formula. */
import { treeOf } from "./parse";
import { mentionsUs, ourName } from "./storedNames";
import { nodesIn } from "./tree";

export interface Call {
  /** Without the namespace. */
  readonly name: string;
  /** The arguments as they are written; an omitted one is empty. */
  readonly args: readonly string[];
  /** The call is all that the formula does. */
  readonly whole: boolean;
}

/** @returns the first call of ours; undefined where there is none or the formula is broken */
export function callIn(formula: string): Call | undefined {
  const tree = mentionsUs(formula) ? treeOf(formula) : undefined;
  if (!tree) return undefined;
  for (const node of nodesIn(tree)) {
    const name = node.kind === "call" ? ourName(node.name) : undefined;
    if (node.kind !== "call" || name === undefined) continue;
    const args = node.args.map(({ start, end }) => formula.slice(start, end));
    return { name, args, whole: node === tree };
  }
  return undefined;
}
