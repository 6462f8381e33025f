import { namedValue } from "../../workbooks/named";
import { figure, namedCells } from "../namedCells";
import type { Rule } from "../rule";

/** A cent, and what lies under the last digit that a file keeps. */
const CENT = 0.0101;

export const taxBase: Rule = {
  id: "tax on the wrong base",
  reason: "Tax is owed on what the law says and Site states, not on cost, nor on what is free of it.",
  example: "Tax on materials and labour where Site says materials only.",
  find: ({ read }) => {
    const [net, labour, tax] = ["net", "labour", "tax"].map((key) => namedValue(read, `quote_${key}`));
    const share = namedValue(read, "site_tax") ?? 0;
    const on = namedValue(read, "site_tax_on");
    if (typeof net !== "number" || typeof labour !== "number" || typeof tax !== "number") return [];
    if (typeof share !== "number") return [];
    const base = on === "labour only" ? labour : on === "materials only" ? net - labour : net;
    const should = base * share;
    if (Math.abs(should - tax) <= CENT) return [];
    return [
      {
        weight: "wrong",
        place: namedCells(read, "quote_tax")[0]?.place,
        says: `The tax is ${tax.toFixed(2)}; ${figure(share * 100)} % on ${String(on ?? "the price")} come to ${should.toFixed(2)}.`,
        should: should.toFixed(2),
        effect: `The customer is asked for ${Math.abs(tax - should).toFixed(2)} too ${tax > should ? "much" : "little"}.`,
        wayOut: "Enter the template's formulas for the taxable part and the tax again.",
      },
    ];
  },
};
