/**
 * What is paid once an option or an alternate is in a quote: its sum goes into
 * its class of tax, the discount is taken off again, what is taxed is reduced
 * with it, and the tax of each class is rounded.
 *
 * Source: common practice, no source: a discount lowers each class by the same
 *   share; tax is rounded once a class. The cents by which the rounded classes
 *   miss the price go to the usual one where all of it is taxed, else, where
 *   nothing is in that, to the greatest class.
 * Accuracy: exact, see exact.ts: to the cent of the quote with the option chosen.
 * Range: amounts to two decimals, less than 0 for an alternate that is cheaper.
 */
import { Exact, type RoundingRule } from "./exact";

export const TAXED = ["materials and labour", "materials only", "labour only"] as const;

export interface QuotedBefore {
  /** Before the discount, of each class, with its rate. */
  readonly classes: readonly { readonly amount: number; readonly rate: number }[];
  /** In no class, and taxed at the usual rate. */
  readonly usualTaxed: number;
  /** In no class, and not taxed. */
  readonly untaxed: number;
  readonly usualRate: number;
  readonly taxOn: (typeof TAXED)[number];
  readonly discount: { readonly sum: number } | { readonly share: number };
  readonly rule: RoundingRule;
  /** That money is rounded to. */
  readonly decimals: number;
}

/**
 * @param sum what is added to the price before the discount
 * @param inClass its place among the classes; undefined for none
 * @returns the total with tax
 */
export function totalWith(quoted: QuotedBefore, sum: number, inClass?: number): number {
  const { rule, decimals, discount, taxOn } = quoted;
  const of = (value: number): Exact => Exact.of(value);
  const rounded = (value: Exact): Exact => of(value.rounded(decimals, rule));
  const isUsual = inClass === undefined;
  const isTaxed = taxOn !== "labour only";
  const classes = quoted.classes.map(({ amount, rate }, index) => ({
    amount: of(amount).plus(of(index === inClass ? sum : 0)),
    rate: of(rate),
  }));
  const usualTaxed = of(quoted.usualTaxed).plus(of(isUsual && isTaxed ? sum : 0));
  const untaxed = of(quoted.untaxed).plus(of(isUsual && !isTaxed ? sum : 0));
  const added = (values: readonly Exact[]): Exact => values.reduce((all, one) => all.plus(one), of(0));

  const before = added([...classes.map(({ amount }) => amount), usualTaxed, untaxed]);
  const net = before.minus(
    rounded("share" in discount ? before.times(of(discount.share)) : of(discount.sum)),
  );
  const reduced = (amount: Exact): Exact =>
    rounded(before.isZero() ? amount : amount.times(net).dividedBy(before));
  const taxables = classes.map(({ amount }) => reduced(amount));
  const odd = net.minus(added(taxables));
  const nothingUsual = usualTaxed.plus(untaxed).isZero();
  if (nothingUsual && classes.length > 0) {
    const amounts = classes.map(({ amount }) => amount.toNumber());
    const greatest = amounts.indexOf(Math.max(...amounts));
    taxables[greatest] = taxables[greatest]!.plus(odd);
  }
  const usual = nothingUsual ? of(0) : untaxed.isZero() ? odd : reduced(usualTaxed);
  const taxes = classes.map(({ rate }, index) => rounded(taxables[index]!.times(rate)));
  return added([net, ...taxes, rounded(usual.times(of(quoted.usualRate)))]).toNumber();
}
