import { f, type Formula, type Named } from "../../formula/build";
import { site } from "./names/site";

/**
 * An amount of 0 or more, to the cent by the rule on Site, with the spreadsheet's own functions: a template has no
 * call of ours to spare for it. Their ROUND is binary, but in tenths of a cent half a cent is a whole number, so it
 * is exact for amounts of eight decimals or fewer, up to a thousand million.
 */
export function roundedNatively(amount: Named | Formula): Formula {
  const cents = f`ROUND(${amount}*1000,5)/10`;
  return f`(ROUND(${cents},0)-(${site.rounding}="half even")*(MOD(${cents},2)=0.5))/100`;
}
