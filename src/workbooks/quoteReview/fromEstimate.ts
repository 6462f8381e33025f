/** What the review of a quote begins with, where the quote is an estimate of ours: its figures as it computes them. */
import type { Named } from "../../formula/build";
import type { Book, BookResult } from "../book";
import type { JobInputs } from "../definition";
import { estimate } from "../multiRoom/names";
import { price } from "../multiRoom/names/price";
import { taxesQuoted } from "../multiRoom/names/quote";
import { namedColumn, namedValue } from "../named";
import { wordsOf } from "../shownFigure";
import { quoteReviewStart } from "./jobInputs";
import { review } from "./names";
import { LINES_ARE } from "./typed/typedQuote";

const LISTS = [
  estimate.unitsBought,
  estimate.feedsBought,
  estimate.suppliesBought,
  estimate.cablesBought,
  estimate.passivesBought,
  estimate.platesBought,
  estimate.fittingsBought,
  estimate.resistorsBought,
] as const;
/** The dearest lines are looked at. */
const LINES_LOOKED_AT = 12;
const CENTS = 100;

/** @param book a computed multi-room estimate */
export function fromEstimate(book: Book): JobInputs {
  const { site, count, headsNeeded, heads, crew, quote, workTogether } = estimate;
  const numberIn = ({ name }: Named): number | undefined => {
    const value = namedValue(book, name);
    return typeof value === "number" && Number.isFinite(value) ? value : undefined;
  };
  const sum = (...of: readonly Named[]): number | undefined =>
    of.reduce<number | undefined>((all, one) => {
      const value = numberIn(one);
      return all === undefined || value === undefined ? undefined : all + value;
    }, 0);
  const cents = (value: number | undefined): number | undefined =>
    value === undefined ? undefined : Math.round(value * CENTS) / CENTS;
  const [net, tax] = [numberIn(quote.net), numberIn(quote.tax)];
  /** A line with nothing in it is blank. */
  const lineOf = (of: Named): number => numberIn(of) ?? 0;
  const extras = cents(lineOf(quote.provisional) + lineOf(quote.options) + lineOf(quote.discount));
  const isOneRate = namedColumn(book, taxesQuoted.name.name).every((name) => wordsOf(name) === "");
  const numbersOf = ({ name }: Named): number[] =>
    namedColumn(book, name).filter((value): value is number => typeof value === "number");
  const figures: readonly (readonly [Named, number | string | undefined])[] = [
    [review.job, wordsOf(namedValue(book, site.job.name)) || undefined],
    [review.quote, wordsOf(namedValue(book, quote.number.name)) || undefined],
    [review.by, wordsOf(namedValue(book, site.prepared_by.name)) || undefined],
    [review.until, numberIn(site.until)],
    [review.outlets, numberIn(count.outlets)],
    [review.tuners, numberIn(headsNeeded.wanted)],
    // Of several kinds the largest: it asks for the fewest head units.
    [review.bands, Math.max(0, ...numbersOf(heads.fed.bands)) || undefined],
    [review.heads, numberIn(count.heads)],
    [review.cable, numbersOf(estimate.cablesBought.needed).reduce((all, one) => all + one, 0)],
    // Travel, access and permits are no labour.
    [review.materials, cents(sum(price.reception, price.cable, price.fittings, price.sites))],
    [review.hours, numberIn(workTogether.total_hours)],
    [review.rate, numberIn(crew.rate)],
    [review.labour, cents(numberIn(price.labour))],
    [review.contingency, numberIn(site.contingency)],
    [review.overhead, numberIn(site.overhead)],
    [review.cost, cents(numberIn(price.cost))],
    [review.margin, numberIn(site.margin)],
    [review.price, cents(numberIn(price.sell))],
    // Less the discount.
    [review.extras, extras],
    [review.net, net],
    [review.taxed, isOneRate ? numberIn(price.taxable) : net],
    // Of several rates the one that all of it bears together.
    [review.rate_tax, isOneRate ? numberIn(site.tax) : !net || tax === undefined ? undefined : tax / net],
    [review.tax, tax],
    [review.total, numberIn(quote.total)],
  ];
  const firstOf = (list: (typeof LISTS)[number]): number | undefined =>
    namedColumn(book, list.price.name).find(
      (value): value is number => typeof value === "number" && value > 0,
    );
  const [metres, cableSum] = [estimate.cablesBought.needed, estimate.cablesBought.sum].map((column) =>
    numbersOf(column).reduce((all, one) => all + one, 0),
  );
  const headPrice = firstOf(estimate.unitsBought);
  return {
    fields: {
      ...quoteReviewStart.fields,
      [review.lines_are.name]: LINES_ARE[2],
      ...(headPrice !== undefined && { [review.head_price.name]: headPrice }),
      ...(metres! > 0 && cableSum! > 0 && { [review.cable_price.name]: cents(cableSum! / metres!)! }),
      ...Object.fromEntries(
        figures.flatMap(([{ name }, value]) => (value === undefined ? [] : [[name, value]])),
      ),
    },
    blocks: { ...quoteReviewStart.blocks, lines: dearestLines(book) },
  };
}

function dearestLines(book: Book): Record<string, number | string>[] {
  const isNumber = (value: BookResult | undefined): value is number => typeof value === "number";
  return LISTS.flatMap(({ name, quantity, price: each, sum }) => {
    const [names, quantities, prices, sums] = [name, quantity, each, sum].map((of) =>
      namedColumn(book, of.name),
    );
    return names!.flatMap((part, row) => {
      const [many, one, all] = [quantities![row], prices![row], sums![row]];
      return typeof part === "string" &&
        part !== "" &&
        isNumber(many) &&
        isNumber(one) &&
        isNumber(all) &&
        all > 0
        ? [{ part, quantity: many, each: one, sum: all }]
        : [];
    });
  })
    .sort((one, other) => other.sum - one.sum)
    .slice(0, LINES_LOOKED_AT);
}
