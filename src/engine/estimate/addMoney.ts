/**
 * The sum of amounts, without the error that a computer's own addition gathers.
 *
 * Accuracy: the double nearest to the exact sum, see exact.ts.
 * Range: finite amounts, any number of them.
 */
import { Exact } from "./exact";

/**
 * @param amounts in one unit; what was worked out (a quantity times a price) is read without its last bits' noise
 * @returns their sum in that unit
 */
export const addMoney = (amounts: readonly number[]): number =>
  amounts.reduce((sum, amount) => sum.plus(Exact.of(amount)), Exact.of(0)).toNumber();
