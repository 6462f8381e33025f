import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import { isoDate } from "../../workbooks/sheetDate";
import type { Finding } from "../finding";
import { filledCells, figure, isBlank, namedCells, plainWord, PRICED_BLOCKS } from "../namedCells";
import type { Rule } from "../rule";
import { farFromPrices } from "./quoteDates";

export const prices: Rule = {
  id: "price missing, expired or changed",
  reason:
    "A part without a price is given away; one past its date may cost more; one changed by hand needs a reason.",
  example: "The trunk cable's price held until 31 March, the quote is of 2 April.",
  find: ({ read, options }) =>
    PRICED_BLOCKS.flatMap((block) => {
      const dated = namedValue(read, estimate.site.date.name);
      // A date of the quote that is far from all prices is told once, there.
      const date = typeof dated === "number" && farFromPrices(read, dated) ? undefined : dated;
      const quoteUntil = namedValue(read, estimate.site.until.name);
      const priced = namedCells(read, estimate[block].priced.name);
      const price = namedCells(read, estimate[block].price.name);
      const until = namedCells(read, estimate[block].until.name);
      const listed = options.prices?.[block];
      return filledCells(read, estimate[block].name.name).flatMap(({ value, index }): Finding[] => {
        const part = String(value);
        const own = price[index];
        const held = until[index];
        const findings: Finding[] = [];
        if (own && isBlank(own.value)) {
          findings.push({
            weight: "wrong",
            place: own.place,
            message: `${part} has no price.`,
            effect: "Each piece of it is given away.",
            remedy: "Ask the supplier and enter the price with its date.",
          });
        }
        if (held && typeof date === "number" && (typeof held.value !== "number" || held.value < date)) {
          findings.push({
            weight: "doubtful",
            place: held.place,
            message:
              typeof held.value === "number"
                ? `The price of ${part} held until ${isoDate(held.value)}.`
                : `The price of ${part} has no date until which it holds.`,
            expected: `${isoDate(date)} or later: the date of the quote.`,
            effect: "It may cost more than was counted.",
            remedy: "Ask the supplier anew.",
          });
        }
        const from = priced[index];
        if (
          held &&
          typeof from?.value === "number" &&
          typeof held.value === "number" &&
          from.value > held.value
        ) {
          findings.push({
            weight: "wrong",
            place: from.place,
            message: `The price of ${part} is of ${isoDate(from.value)} and held until ${isoDate(held.value)}.`,
            expected: "The day of the price first, then its last day.",
            remedy: "Were the two typed in each other's column?",
          });
        } else if (typeof date === "number" && typeof from?.value === "number" && from.value > date) {
          findings.push({
            weight: "doubtful",
            place: from.place,
            message: `The price of ${part} is of ${isoDate(from.value)}, after the quote.`,
            expected: `${isoDate(date)} or earlier: the date of the quote.`,
            remedy: "Correct the date that is off.",
          });
        }
        if (
          held &&
          typeof date === "number" &&
          typeof quoteUntil === "number" &&
          typeof held.value === "number" &&
          held.value >= date &&
          held.value < quoteUntil
        ) {
          findings.push({
            weight: "doubtful",
            place: held.place,
            message: `The price of ${part} holds until ${isoDate(held.value)}, the quote until ${isoDate(quoteUntil)}.`,
            expected: `${isoDate(quoteUntil)} or later, or a quote that holds no longer than its prices.`,
            effect: "A rise in between is at the firm's cost.",
            remedy: "Ask the supplier to hold it, or shorten the quote's validity.",
          });
        }
        const list = listed && Object.hasOwn(listed, plainWord(value)) ? listed[plainWord(value)] : undefined;
        if (own && list !== undefined && own.value !== list) {
          findings.push({
            weight: "doubtful",
            place: own.place,
            message: `${part} is priced at ${typeof own.value === "number" ? figure(own.value) : "nothing"}, the list says ${figure(list)}.`,
            expected: figure(list),
            remedy: "Take the list's price, or write on Log why not.",
          });
        }
        return findings;
      });
    }),
};
