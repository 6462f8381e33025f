import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import { isoDate } from "../../workbooks/sheetDate";
import type { Finding } from "../finding";
import { median } from "../median";
import { filledCells, namedCells, PRICED_BLOCKS } from "../namedCells";
import type { Rule } from "../rule";

/** Prices are asked for within so many days of a quote; common practice, no source. */
const FAR_DAYS = 500;
/** No quote holds longer; common practice, no source. */
const LONGEST_DAYS = 400;

export const quoteDates: Rule = {
  id: "dates that do not agree",
  reason: "A quote with a year mistyped has run out before it goes out, or binds for years.",
  example: "A quote of 2 November 2062 whose prices are of October 2026.",
  find: ({ read }) => {
    const date = namedValue(read, estimate.site.date.name);
    const until = namedValue(read, estimate.site.until.name);
    if (typeof date !== "number") return [];
    const off = farFromPrices(read, date);
    if (off) return [off];
    if (typeof until !== "number") return [];
    const place = namedCells(read, estimate.site.until.name)[0]?.place;
    const days = until - date;
    if (days < 0)
      return [
        {
          weight: "wrong",
          place,
          message: `The quote of ${isoDate(date)} is valid until ${isoDate(until)}: it has run out before it goes out.`,
          expected: `A day after ${isoDate(date)}.`,
          remedy: "Correct the date that is off.",
        },
      ];
    if (days <= LONGEST_DAYS) return [];
    return [
      {
        weight: "doubtful",
        place,
        message: `The quote of ${isoDate(date)} is valid until ${isoDate(until)}: for ${days} days.`,
        expected: "Some weeks or months, and no longer than its prices.",
        effect: "The firm is bound to this price for so long.",
        remedy: "Correct the year, or say on Log why so long.",
      },
    ];
  },
};

/** A date of the quote that none of its prices is near. */
export function farFromPrices(read: Book, date: number): Finding | undefined {
  const priced = PRICED_BLOCKS.flatMap((block) =>
    filledCells(read, estimate[block].priced.name).flatMap(({ value }) =>
      typeof value === "number" ? [value] : [],
    ),
  );
  if (priced.length < 3) return undefined;
  const middle = median(priced);
  if (Math.abs(date - middle) <= FAR_DAYS) return undefined;
  return {
    weight: "doubtful",
    place: namedCells(read, estimate.site.date.name)[0]?.place,
    message: `The quote is of ${isoDate(date)}, its prices of about ${isoDate(Math.round(middle))}.`,
    expected: "A date near that of the prices: is the year right?",
    effect: "Validity, prices and the compass bearing go by it.",
    remedy: "Correct the date; if it is right, ask for all prices anew.",
  };
}
