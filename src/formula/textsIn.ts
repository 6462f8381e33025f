import { treeOf } from "./parse";
import { nodesIn } from "./tree";

/** @returns the texts that a formula says outright, in their order; none of a broken one */
export function textsIn(formula: string): string[] {
  const tree = treeOf(formula);
  return tree ? [...nodesIn(tree)].flatMap((node) => (node.kind === "text" ? [node.value] : [])) : [];
}
