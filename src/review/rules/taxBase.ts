import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import { figure, namedCells } from "../namedCells";
import type { Rule } from "../rule";

/** A cent, and what lies under the last digit that a file keeps. */
const CENT = 0.0101;

export const taxBase: Rule = {
  id: "tax on the wrong base",
  reason: "Tax is owed on what the law says and Site states, not on cost, nor on what is free of it.",
  example: "Tax on materials and labour where Site says materials only.",
  find: ({ read, expected }) => {
    const tax = namedValue(read, estimate.quote.tax.name);
    // What the template's own formulas come to, rounded by the rule that Site names.
    const right = expected && namedValue(expected, estimate.quote.tax.name);
    const share = namedValue(read, estimate.site.tax.name);
    const on = namedValue(read, estimate.site.tax_on.name);
    if (typeof tax !== "number" || typeof right !== "number" || typeof share !== "number") return [];
    if (Math.abs(right - tax) <= CENT) return [];
    const ofClass = expected && namedValue(expected, estimate.price.of_class.name);
    const base =
      typeof ofClass === "number" && ofClass !== 0
        ? "the tax classes of Site with the usual tax"
        : `${figure(share * 100)} % on ${String(on ?? "the price")}`;
    return [
      {
        weight: "wrong",
        place: namedCells(read, estimate.quote.tax.name)[0]?.place,
        message: `The tax is ${tax.toFixed(2)}; ${base} come to ${right.toFixed(2)}.`,
        expected: right.toFixed(2),
        effect: `The customer is asked for ${Math.abs(tax - right).toFixed(2)} too ${tax > right ? "much" : "little"}.`,
        remedy: "Enter the template's formulas for the taxable part and the tax again.",
      },
    ];
  },
};
