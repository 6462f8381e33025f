/**
 * Rounds an amount as a person reading its decimal digits would.
 *
 * It works on the shortest decimal text of the double, so 1.005 is rounded as
 * 1.005 and not as the 1.00499999999999989… that the computer holds.
 *
 * Source: ISO 80000-1 Annex B: rule A takes a tie to the even multiple, rule B
 *   to the larger magnitude (from memory); IEEE 754 calls them roundTiesToEven
 *   and roundTiesToAway.
 * Accuracy: exact. The sum of rounded lines can differ from the rounded sum:
 *   round once, where it is printed.
 * Range: any finite amount, 0 to 6 decimals.
 */

export const ROUNDING_RULES = ["half away", "half even"] as const;
export type RoundingRule = (typeof ROUNDING_RULES)[number];

/**
 * @param value amount in the currency's main unit
 * @param decimals places kept after the decimal point, 0 to 6
 * @param rule where a tie goes
 * @returns the rounded amount
 */
export function roundMoney(value: number, decimals = 2, rule: RoundingRule = "half away"): number {
  const [mantissa, exponent] = Math.abs(value).toExponential().split("e") as [string, string];
  const digits = mantissa.replace(".", "");
  const dropped = digits.length - 1 - Number(exponent) - decimals;
  if (dropped <= 0) return value;
  if (dropped > digits.length) return 0;

  const kept = BigInt(digits.slice(0, -dropped) || "0");
  const tail = digits.slice(-dropped);
  const half = "5".padEnd(dropped, "0");
  const tieUp = rule === "half away" || kept % 2n === 1n;
  const up = tail > half || (tail === half && tieUp);
  const magnitude = Number(`${up ? kept + 1n : kept}e-${decimals}`);
  return value < 0 && magnitude > 0 ? -magnitude : magnitude;
}
