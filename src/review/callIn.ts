/** Finds the call of one of our functions in a formula. */
import { NAMESPACE } from "../formula/namespace";

export interface Call {
  /** Without the namespace. */
  readonly name: string;
  /** The arguments as they are written; an omitted one is empty. */
  readonly args: readonly string[];
  /** The call is all that the formula does. */
  readonly whole: boolean;
}

/** A quoted text, a quoted sheet name, or one character. */
const TOKEN = /"(?:[^"]|"")*"|'(?:[^']|'')*'|[^"']/g;

/**
 * @param formula without its equals sign
 * @returns the first call of ours; undefined where there is none or it has no end
 */
export function callIn(formula: string): Call | undefined {
  const quotesHidden = formula.replace(/"(?:[^"]|"")*"/g, (text) => "\u0000".repeat(text.length));
  const head = new RegExp(`(?<![A-Z0-9_.])${NAMESPACE}\\.([A-Z0-9]+)\\(`, "i").exec(quotesHidden);
  if (!head) return undefined;
  const start = head.index + head[0].length;
  const args: string[] = [];
  let depth = 0;
  let arg = "";
  let at = start;
  for (const [token] of formula.slice(start).matchAll(TOKEN)) {
    at += token.length;
    if (depth === 0 && (token === "," || token === ")")) {
      args.push(arg.trim());
      arg = "";
      if (token === ",") continue;
      const none = args.length === 1 && args[0] === "";
      const whole = formula.slice(0, head.index).trim() === "" && formula.slice(at).trim() === "";
      return { name: head[1]!.toUpperCase(), args: none ? [] : args, whole };
    }
    if (token === "(" || token === "{") depth += 1;
    if (token === ")" || token === "}") depth -= 1;
    arg += token;
  }
  return undefined;
}
