/**
 * An amount of 0 or more, to the cent by the rule on Site, with the spreadsheet's own functions: a template has no
 * call of ours to spare for it. Their ROUND is binary, but in tenths of a cent half a cent is a whole number, so it
 * is exact for amounts of eight decimals or fewer, up to a thousand million.
 */
export function roundedNatively(amount: string): string {
  const cents = `ROUND(${amount}*1000,5)/10`;
  return `(ROUND(${cents},0)-(site_rounding="half even")*(MOD(${cents},2)=0.5))/100`;
}
