/**
 * The price that leaves a margin on a cost.
 *
 * Source: price = cost ÷ (1 − margin); definition of the margin as a share of
 *   the price. Contingency is added to the cost, overhead to both, as the
 *   workbook's Price sheet does.
 * Accuracy: exact before it is rounded, see exact.ts: 2.01 at a margin of =1/3
 *   is 3.015. Unrounded it is the nearest double.
 * Range: cost, contingency and overhead 0 or more, margin from 0 to less than 1.
 */
import { faults, type Fault } from "../faults";
import { Exact, type RoundingRule } from "./exact";

/**
 * @param cost in the currency's main unit
 * @param margin share of the price, 0.2 for 20 %
 * @param contingency share of the cost that is added to it
 * @param overhead share of cost and contingency that is added to them
 * @param decimals places to which the price is rounded; undefined leaves it as it is
 * @param rule where a tie goes
 * @returns price in the unit of the cost
 */
export function sellPrice(
  cost: number,
  margin: number,
  contingency = 0,
  overhead = 0,
  decimals?: number,
  rule: RoundingRule = "half away",
): number | Fault {
  if (!(margin < 1)) return faults.marginTooHigh(margin);
  const one = Exact.of(1);
  const price = Exact.of(cost)
    .times(one.plus(Exact.of(contingency)))
    .times(one.plus(Exact.of(overhead)))
    .dividedBy(one.minus(Exact.of(margin)));
  return decimals === undefined ? price.toNumber() : price.rounded(decimals, rule);
}
