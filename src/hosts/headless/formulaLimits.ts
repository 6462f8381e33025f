/**
 * What a formula may be before it is computed. The limits are Excel's own ("Excel specifications and limits": 8,192
 * characters, 64 levels of nested functions, from memory), so what is refused here would not work there either.
 */
export const MOST_CHARACTERS = 8192;
export const MOST_LEVELS = 64;

const SHOWN = 40;

/** @returns a sentence for a formula that is not computed, undefined for one that may be */
export function beyondLimits(formula: string): string | undefined {
  if (formula.length > MOST_CHARACTERS) {
    return `The formula has ${formula.length} characters; it may have up to ${MOST_CHARACTERS}. Split it, or put its parts into cells. It begins: ${formula.slice(0, SHOWN)}…`;
  }
  const levels = deepest(formula);
  if (levels > MOST_LEVELS) {
    return `The formula is nested ${levels} levels deep; it may be up to ${MOST_LEVELS}. Split it, or put its parts into cells.`;
  }
  return undefined;
}

/** Levels of brackets, those in texts left out. */
function deepest(formula: string): number {
  let level = 0;
  let most = 0;
  let inText = false;
  for (const letter of formula) {
    if (letter === '"') inText = !inText;
    else if (inText) continue;
    else if (letter === "(") most = Math.max(most, ++level);
    else if (letter === ")") level--;
  }
  return most;
}
