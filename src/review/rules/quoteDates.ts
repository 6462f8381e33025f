import type { Book } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { namedValue } from "../../workbooks/named";
import { isoDate, sheetDate } from "../../workbooks/sheetDate";
import type { Finding, FindingPlace } from "../finding";
import { median } from "../median";
import { filledCells, namedCells, PRICED_BLOCKS } from "../namedCells";
import type { Rule } from "../rule";

/** Prices are asked for within so many days of a quote; common practice, no source. */
const FAR_DAYS = 500;
const FEWEST = 3;
/** Prices that are asked for after the quote is written are the exception. */
const MOSTLY = 0.5;
/** And by so many days before it: a list is of a year, and a month to come. */
const OLD_DAYS = 400;
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
    const old = oldPrices(read, date);
    if (typeof until !== "number") return old;
    return [...old, ...validity(read, date, until)];
  },
};

function validity(read: Book, date: number, until: number): Finding[] {
  const place = namedCells(read, estimate.site.until.name)[0]?.place;
  const days = until - date;
  if (days < 0)
    return [
      {
        weight: "wrong",
        place,
        message: `The quote of ${isoDate(date)} is valid until ${isoDate(until)}: it has run out before it goes out.`,
        expected: `A day after ${isoDate(date)}.`,
        ...inOtherYear(date, until, 1),
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
      ...inOtherYear(date, until, -1),
      effect: "The firm is bound to this price for so long.",
      remedy: "Correct the year, or say on Log why so long.",
    },
  ];
}

/** The same day a year later or earlier, where the quote then is valid for as long as quotes are. */
function inOtherYear(date: number, until: number, by: number): Pick<Finding, "meant"> {
  const [year, month, day] = isoDate(until).split("-").map(Number) as [number, number, number];
  const meant = sheetDate(year + by, month, day);
  return meant !== undefined && meant > date && meant - date <= LONGEST_DAYS ? { meant } : {};
}

/** A price of another year than nearly all others. */
function oldPrices(read: Book, date: number): Finding[] {
  const days = pricesOn(read);
  if (days.length < FEWEST || date - median(days.map(({ day }) => day)) > OLD_DAYS) return [];
  return days
    .filter(({ day }) => date - day > OLD_DAYS)
    .map(({ day, place, part }): Finding => ({
      weight: "doubtful",
      place,
      message: `The price of ${part} is of ${isoDate(day)}, the others are of about ${isoDate(Math.round(median(days.map((one) => one.day))))}.`,
      expected: "A price of this year: is the year right?",
      usual: { low: date - OLD_DAYS, high: date },
      effect: "It may cost more than was counted.",
      remedy: "Ask the supplier anew, or correct the date.",
    }));
}

const pricesOn = (read: Book): { day: number; place: FindingPlace; part: string }[] =>
  PRICED_BLOCKS.flatMap((block) => {
    const names = namedCells(read, estimate[block].name.name);
    return filledCells(read, estimate[block].priced.name).flatMap(({ value, place, index }) =>
      typeof value === "number" ? [{ day: value, place, part: String(names[index]?.value ?? "") }] : [],
    );
  });

/** A date of the quote that none of its prices is near, or that nearly all of them come after. */
export function farFromPrices(read: Book, date: number): Finding | undefined {
  const priced = pricesOn(read).map(({ day }) => day);
  if (priced.length < FEWEST) return undefined;
  const middle = median(priced);
  const later = priced.filter((day) => day > date).length;
  if (Math.abs(date - middle) <= FAR_DAYS && later <= MOSTLY * priced.length) return undefined;
  const swapped = daysExchanged(date);
  const meant =
    swapped !== undefined && swapped >= middle && swapped - middle <= OLD_DAYS ? swapped : undefined;
  return {
    weight: "doubtful",
    place: namedCells(read, estimate.site.date.name)[0]?.place,
    message: `The quote is of ${isoDate(date)}, its prices of about ${isoDate(Math.round(middle))}.`,
    expected:
      meant === undefined
        ? "A date near that of the prices: is the year right?"
        : `${isoDate(meant)}, if day and month were exchanged.`,
    ...(meant !== undefined && { meant }),
    effect: "Validity, prices and the compass bearing go by it.",
    remedy: "Correct the date; if it is right, ask for all prices anew.",
  };
}

/** The day that a date is with its day and month in the other order. */
function daysExchanged(date: number): number | undefined {
  const [year, month, day] = isoDate(date).split("-").map(Number) as [number, number, number];
  return day <= 12 && day !== month ? sheetDate(year, day, month) : undefined;
}
