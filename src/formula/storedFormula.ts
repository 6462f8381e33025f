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
  const isBound = isBoundElsewhere(stored);
  return withTokens(withSinglesShown(stored), ({ text }, index, tokens) => {
    if (isBound && isOfAnotherFile(tokens, index)) return "";
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
export const isBoundElsewhere = (stored: string): boolean => {
  if (!mentionsUs(stored) || !stored.includes("!")) return false;
  const tokens = tokensOf(stored);
  return tokens.some((_, index) => isOfAnotherFile(tokens, index));
};

/** Whether the token is of the file's name before a call of ours, or the mark after it. */
function isOfAnotherFile(tokens: readonly Token[], index: number): boolean {
  for (let length = LONGEST_FILE; length > 0; length--) {
    for (let first = Math.max(0, index - length); first <= index; first++) {
      if (!isFileBefore(tokens, first, length)) continue;
      if (index <= first + length) return true;
    }
  }
  return false;
}

/** `[`, a number, `]`; a name in apostrophes is one. */
const LONGEST_FILE = 3;

function isFileBefore(tokens: readonly Token[], first: number, length: number): boolean {
  const mark = tokens[first + length];
  const called = tokens[first + length + 1];
  if (mark?.text !== "!" || !called || !isCalled(tokens, first + length + 1)) return false;
  if (ourName(called.text) === undefined) return false;
  const file = tokens.slice(first, first + length).map(({ text }) => text);
  return length === 1 ? file[0]!.startsWith("'") : file[0] === "[" && file.at(-1) === "]";
}
