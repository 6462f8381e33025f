/**
 * A number, or a word in its place, as a rule of a spreadsheet's own: a formula for the range's first cell, which
 * moves along with the others. And such a formula read back.
 */
import type { BookValidation } from "./book";

type NumberRule = Extract<BookValidation["rule"], { kind: "number" }>;

/** @param rule with `min`, `max` and `orWords`; without anything else */
export function numberOrWord({ min, max, orWords = [] }: NumberRule, range: string): string {
  const [cell] = range.split(":");
  const words = orWords.map((word) => `${cell}="${word.replace(/"/g, '""')}"`);
  return `OR(AND(ISNUMBER(${cell}),${cell}>=${min},${cell}<=${max}),${words.join(",")})`;
}

const SHAPE =
  /^=?OR\(AND\(ISNUMBER\(([A-Z]{1,3}\d+)\),\1>=(-?[\d.]+),\1<=(-?[\d.]+)\)((?:,\1="(?:[^"]|"")*")+)\)$/;

/** @returns undefined for any other formula */
export function numberOrWordIn(formula: string | undefined): NumberRule | undefined {
  const [, , min, max, words = ""] = SHAPE.exec(formula ?? "") ?? [];
  if (min === undefined) return undefined;
  const orWords = [...words.matchAll(/="((?:[^"]|"")*)"/g)].map(([, word]) => word!.replace(/""/g, '"'));
  return { kind: "number", min: Number(min), max: Number(max), orWords };
}
