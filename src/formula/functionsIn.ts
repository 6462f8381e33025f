import { functionName } from "./storedNames";
import { isCalled, tokensOf, type Token } from "./tokens";

/** Kept with the tokens. */
const known = new WeakMap<readonly Token[], ReadonlySet<string>>();

/** @returns the functions that a formula calls, in capitals and without what files put before them; of a broken one too */
export function functionsIn(formula: string): ReadonlySet<string> {
  const tokens = tokensOf(formula);
  const before = known.get(tokens);
  if (before) return before;
  const found = new Set(
    tokens.flatMap(({ text }, index) => (isCalled(tokens, index) ? [functionName(text)] : [])),
  );
  known.set(tokens, found);
  return found;
}
