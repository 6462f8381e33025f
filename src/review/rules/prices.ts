import { isoDate } from "../../workbooks/sheetDate";
import { namedValue } from "../../workbooks/named";
import type { Finding } from "../finding";
import { filledCells, figure, isBlank, namedCells, plainWord, PRICED_BLOCKS } from "../namedCells";
import type { Rule } from "../rule";

export const prices: Rule = {
  id: "price missing, expired or changed",
  reason:
    "A part without a price is given away; one past its date may cost more; one changed by hand needs a reason.",
  example: "The trunk cable's price held until 31 March, the quote is of 2 April.",
  find: ({ read, options }) =>
    PRICED_BLOCKS.flatMap((block) => {
      const date = namedValue(read, "site_date");
      const price = namedCells(read, `${block}_price`);
      const until = namedCells(read, `${block}_until`);
      const listed = options.prices?.[block];
      return filledCells(read, `${block}_name`).flatMap(({ value, index }): Finding[] => {
        const part = String(value);
        const own = price[index];
        const held = until[index];
        const findings: Finding[] = [];
        if (own && isBlank(own.value)) {
          findings.push({
            weight: "wrong",
            place: own.place,
            says: `${part} has no price.`,
            effect: "Each piece of it is given away.",
            wayOut: "Ask the supplier and enter the price with its date.",
          });
        }
        if (held && typeof date === "number" && (typeof held.value !== "number" || held.value < date)) {
          findings.push({
            weight: "doubtful",
            place: held.place,
            says:
              typeof held.value === "number"
                ? `The price of ${part} held until ${isoDate(held.value)}.`
                : `The price of ${part} has no date until which it holds.`,
            should: `${isoDate(date)} or later: the date of the quote.`,
            effect: "It may cost more than was counted.",
            wayOut: "Ask the supplier anew.",
          });
        }
        const list = listed && Object.hasOwn(listed, plainWord(value)) ? listed[plainWord(value)] : undefined;
        if (own && list !== undefined && own.value !== list) {
          findings.push({
            weight: "doubtful",
            place: own.place,
            says: `${part} is priced at ${typeof own.value === "number" ? figure(own.value) : "nothing"}, the list says ${figure(list)}.`,
            should: figure(list),
            wayOut: "Take the list's price, or write on Log why not.",
          });
        }
        return findings;
      });
    }),
};
