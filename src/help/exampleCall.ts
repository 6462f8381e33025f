/**
 * Reads an example as it stands in a declaration, `RIG.NAME(1,"text",{1,2;3,4})`,
 * so that the help can show what it gives without a spreadsheet.
 */
import { literalOf } from "../formula/literalOf";
import { parseFormula } from "../formula/parse";
import { ourName } from "../formula/storedNames";
import type { Argument } from "../functions/core/cells";

export interface ExampleCall {
  readonly name: string;
  readonly args: readonly Argument[];
}

/** @returns the call; a declaration's example that cannot be read is a mistake of ours and throws */
export function exampleCall(formula: string): ExampleCall {
  const { tree, trouble } = parseFormula(formula);
  const name = tree?.kind === "call" ? ourName(tree.name) : undefined;
  if (tree?.kind !== "call" || name === undefined) throw new Error(`not a call: ${formula} ${trouble ?? ""}`);
  const args = tree.args.map((arg): Argument => {
    const value = literalOf(arg);
    if (value === undefined)
      throw new Error(`not a literal: ${formula.slice(arg.start, arg.end)} in ${formula}`);
    return value;
  });
  return { name, args };
}
