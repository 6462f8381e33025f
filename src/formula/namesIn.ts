/** The defined names that a formula reads. */
import { isCalled, tokensOf } from "./tokens";

/**
 * @param formula a broken one too
 * @returns those of the names that it reads, in their own order
 */
export function namesIn<T extends { readonly name: string }>(
  { names }: { readonly names: readonly T[] },
  formula: string,
): T[] {
  const tokens = tokensOf(formula);
  const read = new Set(
    tokens.flatMap(({ kind, text }, index) =>
      // A name of another file is none of ours.
      kind === "name" && !isCalled(tokens, index) && !text.includes("]")
        ? [text.slice(text.lastIndexOf("!") + 1).toUpperCase()]
        : [],
    ),
  );
  return names.filter(({ name }) => read.has(name.toUpperCase()));
}
