/** What the workbook's own formulas do to its total, against the template's. */
import { namedValue } from "../workbooks/named";
import type { Reviewed } from "./rule";

/** Half a cent. */
const SAME = 0.005;

/** @returns a sentence; undefined where one of the two totals is no number */
export function priceEffect({ own, expected }: Pick<Reviewed, "own" | "expected">): string | undefined {
  const now = namedValue(own, "quote_total");
  const right = expected && namedValue(expected, "quote_total");
  if (typeof now !== "number" || typeof right !== "number") return undefined;
  return Math.abs(now - right) < SAME
    ? "The total is the same with the template's formulas."
    : `The total is ${now.toFixed(2)}; with all of the template's formulas it is ${right.toFixed(2)}.`;
}
