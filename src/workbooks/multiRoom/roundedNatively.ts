import { f, type Formula, type Named } from "../../formula/build";
import { price } from "./names/price";
import { site } from "./names/site";

/**
 * An amount to the decimals and by the rule on Site, with the spreadsheet's own functions: a template has no
 * call of ours to spare for it. Their ROUND is binary, but in tenths of a cent half a cent is a whole number, so it
 * is exact for amounts of eight decimals or fewer, up to a thousand million.
 */
export function roundedNatively(amount: Named | Formula): Formula {
  const cents = f`ROUND(${amount}*10^(${price.decimals}+1),5)/10`;
  return f`(ROUND(${cents},0)-(${site.rounding}="half even")*(MOD(ABS(${cents}),2)=0.5)*((${cents}>0)-(${cents}<0)))/10^${price.decimals}`;
}
