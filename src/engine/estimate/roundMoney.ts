/**
 * Rounds an amount, or an amount times and divided by others, as a person does
 * who works with its decimal digits.
 *
 * Source: ISO 80000-1 Annex B: rule A takes a tie to the even multiple, rule B
 *   to the larger magnitude (from memory); IEEE 754 calls them roundTiesToEven
 *   and roundTiesToAway.
 * Accuracy: exact, see exact.ts: 1.005 is rounded as 1.005 and not as the
 *   1.00499999999999989… that the computer holds. The sum of rounded lines can
 *   differ from the rounded sum: round once, where it is printed.
 * Range: any finite amount, 0 to 6 decimals.
 */
import { Exact, type RoundingRule } from "./exact";

/**
 * @param value amount in the currency's main unit
 * @param decimals places kept after the decimal point, 0 to 6
 * @param rule where a tie goes
 * @param times a share or a count that the amount is multiplied by first
 * @param dividedBy what it is divided by first, not 0
 * @returns the rounded amount
 */
export const roundMoney = (
  value: number,
  decimals = 2,
  rule: RoundingRule = "half away",
  times = 1,
  dividedBy = 1,
): number => Exact.of(value).times(Exact.of(times)).dividedBy(Exact.of(dividedBy)).rounded(decimals, rule);
