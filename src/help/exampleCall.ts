/**
 * Reads an example as it stands in a declaration, `RIG.NAME(1,"text",{1,2;3})`,
 * so that the help can show what it gives without a spreadsheet.
 */
import type { Argument, Cell } from "../functions/core/cells";

export interface ExampleCall {
  readonly name: string;
  readonly args: readonly Argument[];
}

const CALL = /^RIG\.([A-Z0-9]+)\((.*)\)$/;
const TOKEN = /"(?:[^"]|"")*"|[{};,()]|[^"{};,()\s]+/g;

/** @returns the call; a declaration's example that cannot be read is a mistake of ours and throws */
export function exampleCall(formula: string): ExampleCall {
  const [, name, inside] = CALL.exec(formula) ?? [];
  if (name === undefined || inside === undefined) throw new Error(`not a call: ${formula}`);
  const args: Argument[] = [];
  let block: Cell[][] | null = null;
  let empty = true;
  for (const token of inside.match(TOKEN) ?? []) {
    if (token === "{") block = [[]];
    else if (token === "}") {
      args.push(block!);
      block = null;
      empty = false;
    } else if (token === ";") block!.push([]);
    else if (token === ",") {
      if (block) continue;
      if (empty) args.push(null);
      empty = true;
    } else if (block) block.at(-1)!.push(literal(token, formula));
    else {
      args.push(literal(token, formula));
      empty = false;
    }
  }
  return { name, args };
}

function literal(token: string, formula: string): Cell {
  if (token.startsWith('"')) return token.slice(1, -1).replaceAll('""', '"');
  if (/^(?:TRUE|FALSE)$/i.test(token)) return token.toUpperCase() === "TRUE";
  if (!Number.isFinite(Number(token))) throw new Error(`not a literal: ${token} in ${formula}`);
  return Number(token);
}
