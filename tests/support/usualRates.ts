/** Tax rates for sweeps of ties: usual ones of value-added and sales taxes, in per cent. */
import Decimal from "decimal.js";

export const USUAL_RATES = [2.5, 5, 5.5, 7, 7.7, 8, 8.1, 9, 10, 19, 20, 21, 22, 23, 25, 27];

export const RULES = [
  ["half away", Decimal.ROUND_HALF_UP],
  ["half even", Decimal.ROUND_HALF_EVEN],
] as const;

/** @returns the amounts from `from` to `to` cents whose tax at the rate lies half-way between two cents */
export function tiesAt(percent: number, from: number, to: number): number[] {
  const amounts: number[] = [];
  // Cents times tenths of a per cent: a thousand of them are a cent of tax.
  const tenths = Math.round(percent * 10);
  for (let cents = from; cents <= to; cents++) if ((cents * tenths) % 1000 === 500) amounts.push(cents / 100);
  return amounts;
}

export const shareOf = (percent: number): number => new Decimal(percent).dividedBy(100).toNumber();

/** Tax to the cent by decimal.js. */
export const taxByDecimal = (amount: number, percent: number, mode: Decimal.Rounding): number =>
  new Decimal(amount).times(percent).dividedBy(100).toDecimalPlaces(2, mode).toNumber();
