/**
 * A formula as people see it (`RIG.CABLELOSS(…)`) and as an .xlsx stores it
 * (`_xldudf_RIG_CABLELOSS(…)`), see {@link functionName}.
 */
import { FUTURE_FUNCTIONS, WORKSHEET_FUTURE_FUNCTIONS } from "./futureFunctions";
import { NAMESPACE } from "./namespace";
import { functionName, mentionsUs, ourName } from "./storedNames";
import { isCalled, withTokens } from "./tokens";

export const toStoredFormula = (formula: string): string =>
  withTokens(formula, ({ text }, index, tokens) => {
    if (!isCalled(tokens, index)) return text;
    const own = ourName(text);
    if (own !== undefined) return `_xldudf_${NAMESPACE}_${own}`;
    const name = text.toUpperCase();
    if (WORKSHEET_FUTURE_FUNCTIONS.has(name)) return `_xlfn._xlws.${name}`;
    return FUTURE_FUNCTIONS.has(name) ? `_xlfn.${name}` : text;
  });

export function fromStoredFormula(stored: string): string {
  if (!mentionsUs(stored) && !stored.toUpperCase().includes("_XL")) return stored;
  return withTokens(stored, ({ text }, index, tokens) => {
    if (!isCalled(tokens, index)) return text;
    const own = ourName(text);
    if (own !== undefined) return `${NAMESPACE}.${own}`;
    const name = functionName(text);
    return name !== text.toUpperCase() && (FUTURE_FUNCTIONS.has(name) || WORKSHEET_FUTURE_FUNCTIONS.has(name))
      ? name
      : text;
  });
}
