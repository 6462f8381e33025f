import { namedValue } from "../../workbooks/named";
import type { Book } from "../../workbooks/book";
import type { Finding } from "../finding";
import { namedCells } from "../namedCells";
import type { Rule } from "../rule";

/** A cent, and what lies under the last digit that a file keeps. */
const CENT = 0.0101;

const LINES = ["reception", "cable", "fittings", "labour", "provisional", "options"] as const;

export const totals: Rule = {
  id: "total that does not add",
  reason: "The customer adds up the printed lines.",
  example: "Lines of 9,900 and a tax of 1,980 under a total of 11,000.",
  find: ({ read }) => {
    const lines = LINES.map((key) => namedValue(read, `quote_${key}`));
    const [net, tax, total] = ["net", "tax", "total"].map((key) => namedValue(read, `quote_${key}`));
    if (!lines.every((line) => typeof line === "number")) return [];
    if (typeof net !== "number" || typeof tax !== "number" || typeof total !== "number") return [];
    const findings: Finding[] = [];
    const sum = lines.reduce((a, b) => a + b, 0);
    if (Math.abs(sum - net) > CENT) {
      findings.push(off(read, "quote_net", "The price without tax", net, sum, "the lines above it"));
    }
    if (Math.abs(net + tax - total) > CENT) {
      findings.push(off(read, "quote_total", "The total", total, net + tax, "the price and the tax"));
    }
    return findings;
  },
};

function off(book: Book, name: string, what: string, is: number, should: number, of: string): Finding {
  return {
    weight: "wrong",
    place: namedCells(book, name)[0]?.place,
    says: `${what} is ${is.toFixed(2)}, ${of} come to ${should.toFixed(2)}.`,
    should: should.toFixed(2),
    effect: `The customer is asked for ${Math.abs(is - should).toFixed(2)} too ${is > should ? "much" : "little"}.`,
    wayOut: "Enter the template's formula in this cell again.",
  };
}
