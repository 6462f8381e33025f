import { cornerText, readReference, type Reference } from "./reference";
import { withTokens } from "./tokens";

/**
 * @param change where a reference leads now; undefined for nowhere, which is `#REF!`
 * @returns the formula with its references changed; their sheets and all else as they were written
 */
export const withReferences = (
  formula: string,
  change: (cells: Reference) => Pick<Reference, "from" | "to"> | undefined,
): string =>
  withTokens(formula, ({ kind, text }) => {
    const cells = kind === "reference" ? readReference(text) : undefined;
    if (!cells) return text;
    const changed = change(cells);
    const written = changed && [changed.from, ...(changed.to ? [changed.to] : [])].map(cornerText).join(":");
    return `${text.slice(0, text.lastIndexOf("!") + 1)}${written ?? "#REF!"}`;
  });
