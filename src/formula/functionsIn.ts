import { functionName } from "./storedNames";
import { isCalled, tokensOf } from "./tokens";

/** @returns the functions that a formula calls, in capitals and without what files put before them; of a broken one too */
export function functionsIn(formula: string): Set<string> {
  const tokens = tokensOf(formula);
  return new Set(tokens.flatMap(({ text }, index) => (isCalled(tokens, index) ? [functionName(text)] : [])));
}
