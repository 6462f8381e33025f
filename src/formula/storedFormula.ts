/**
 * A formula as people see it (`RIG.CABLELOSS(…)`) and as an .xlsx stores it
 * (`_xldudf_RIG_CABLELOSS(…)`), see {@link functionName}.
 */
import { FUTURE_FUNCTIONS, WORKSHEET_FUTURE_FUNCTIONS } from "./futureFunctions";
import { NAMESPACE } from "./namespace";
import { functionName, mentionsUs, ourName } from "./storedNames";
import { withSinglesStored, withSinglesShown } from "./singles";
import { isCalled, tokensOf, withTokens, type Token } from "./tokens";

export const toStoredFormula = (formula: string): string =>
  withTokens(withSinglesStored(formula), ({ text }, index, tokens) => {
    if (!isCalled(tokens, index)) return text;
    const own = ourName(text);
    if (own !== undefined) return `_xldudf_${NAMESPACE}_${own}`;
    const name = text.toUpperCase();
    if (WORKSHEET_FUTURE_FUNCTIONS.has(name)) return `_xlfn._xlws.${name}`;
    return FUTURE_FUNCTIONS.has(name) ? `_xlfn.${name}` : text;
  });

export function fromStoredFormula(stored: string): string {
  if (!mentionsUs(stored) && !stored.toUpperCase().includes("_XL")) return stored;
  const shown = withSinglesShown(stored);
  const file = stored.includes("!") ? ofAnotherFile(tokensOf(shown)) : undefined;
  return withTokens(shown, ({ text }, index, tokens) => {
    if (file?.has(index)) return "";
    if (!isCalled(tokens, index)) return text;
    const own = ourName(text);
    if (own !== undefined) return `${NAMESPACE}.${own}`;
    const name = functionName(text);
    return name !== text.toUpperCase() && (FUTURE_FUNCTIONS.has(name) || WORKSHEET_FUTURE_FUNCTIONS.has(name))
      ? name
      : text;
  });
}

/**
 * Excel binds a call of ours to another add-in's file where that took the
 * namespace: `[1]!_xldudf_RIG_…`, or a path before the exclamation mark.
 */
export const isBoundElsewhere = (stored: string): boolean =>
  mentionsUs(stored) && stored.includes("!") && ofAnotherFile(tokensOf(stored)).size > 0;

/** @returns the places of the tokens that name a file before a call of ours, with the mark after it */
function ofAnotherFile(tokens: readonly Token[]): ReadonlySet<number> {
  const found = new Set<number>();
  for (const [index, { text }] of tokens.entries()) {
    if (tokens[index - 1]?.text !== "!" || !isCalled(tokens, index) || ourName(text) === undefined) continue;
    // A path in apostrophes is one token, a number in brackets three.
    const isPath = tokens[index - 2]?.text.startsWith("'");
    const isNumber = tokens[index - 2]?.text === "]" && tokens[index - 4]?.text === "[";
    if (!isPath && !isNumber) continue;
    for (let at = index - (isPath ? 2 : 4); at < index; at++) found.add(at);
  }
  return found;
}
