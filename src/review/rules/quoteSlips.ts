import { isBookError, type Book, type BookResult } from "../../workbooks/book";
import { namedValue } from "../../workbooks/named";
import type { NamedField } from "../../workbooks/names";
import { estimate } from "../../workbooks/multiRoom/names";
import { beside, corrected, lines, ranges, ratio, review } from "../../workbooks/quoteReview/names";
import type { Finding, FindingPlace } from "../finding";
import { median } from "../median";
import { figure, isBlank, namedCells } from "../namedCells";
import { usualPrice, USUAL_RATE } from "../ranges/partPrices";
import { USUAL } from "../ranges/usual";
import type { Rule } from "../rule";

/** Checks of the sheet of which each cell that they count is named by itself. */
export const NAMED_ONE_BY_ONE: ReadonlySet<string> = new Set([
  "sums that differ",
  "lines that differ",
  "lines twice",
  "ratios out of range",
]);

export const isQuoteReview = ({ template }: Book): boolean => template === "quote-review";

export const quoteSlips: Rule = {
  id: "slip in a quote",
  reason:
    "What the quote review works again is told with both figures, cell by cell, and what the total should be.",
  example:
    "A line of 4 times 14.80 with a sum of 49.20; a line that stands twice; a margin added as a markup.",
  find: ({ read, computed }) => (isQuoteReview(read) ? slipsIn(computed) : []),
};

/** @param book a computed quote review */
export const slipsIn = (book: Book): Finding[] =>
  [linesOff, figuresOff, headsShort, ratiosOff, sharesOff, pricesOff].flatMap((find) => find(book));

const number = (value: BookResult | undefined): number => (typeof value === "number" ? value : 0);
const MONEY = new Intl.NumberFormat("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
const money = (value: BookResult | undefined): string => MONEY.format(number(value));

const wrong = (
  place: FindingPlace | undefined,
  message: string,
  remedy: string,
  more: Partial<Finding> = {},
): Finding => ({ weight: "wrong", ...(place && { place }), message, remedy, ...more });

function linesOff(book: Book): Finding[] {
  const [parts, quantities, prices, again, sums, words] = [
    lines.part,
    lines.quantity,
    lines.each,
    lines.again,
    lines.sum,
    lines.word,
  ].map(({ name }) => namedCells(book, name));
  return words!.flatMap(({ value: word, index }): Finding[] => {
    const at = sums![index]?.place;
    const part = String(parts![index]?.value ?? "");
    const called = `“${part}”`;
    if (isBookError(word) || word === "missing")
      return [
        {
          weight: "doubtful",
          place: at,
          message: `${called} cannot be worked again: quantity, price of one or sum is missing or is no number.`,
          remedy: "Type what the quote has, or ask its maker.",
        },
      ];
    if (word === "twice")
      return [
        wrong(
          parts![index]?.place,
          `${called} stands twice, each time with ${money(again![index]?.value)}.`,
          "Delete one of the lines, or say in its words how they differ.",
        ),
      ];
    if (word !== "look") return [];
    return [
      wrong(
        at,
        `${called} is ${money(sums![index]?.value)}; ${figure(number(quantities![index]?.value))} times ${figure(number(prices![index]?.value))} is ${money(again![index]?.value)}.`,
        "Correct the sum, the quantity or the price, and the sums that follow from it.",
        { expected: `${money(again![index]?.value)}.` },
      ),
    ];
  });
}

const SUMS: readonly NamedField[] = [
  review.materials,
  review.labour,
  review.cost,
  review.price,
  review.net,
  review.tax,
  review.total,
];

function figuresOff(book: Book): Finding[] {
  const isMarkup = namedValue(book, review.slip.name) === "look";
  const place = (name: string): FindingPlace | undefined => namedCells(book, name)[0]?.place;
  const sums = SUMS.flatMap((of): Finding[] => {
    const word = namedValue(book, beside(of).word.name);
    // The price of a markup is told as that.
    if ((word !== "look" && !isBookError(word)) || (isMarkup && of === review.price)) return [];
    const { label } = of.words;
    const [quoted, again] = [of, beside(of).again].map(({ name }) => namedValue(book, name));
    if (isBookError(word) || typeof again !== "number")
      return [
        {
          weight: "doubtful",
          place: place(of.name),
          message: `${label} cannot be worked again.`,
          remedy: "Look at the figures above it that it follows from.",
        },
      ];
    return [
      wrong(
        place(of.name),
        `${label} is ${money(quoted)}; worked again it is ${money(again)}.`,
        "Correct it, and what follows from it.",
        { expected: `${money(again)}${of === review.net ? netAsQuoted(book, again) : ""}.` },
      ),
    ];
  });
  if (!isMarkup) return sums;
  const [cost, margin, price] = [review.cost, review.margin, review.price].map(({ name }) =>
    number(namedValue(book, name)),
  );
  const percent = `${figure(margin! * 100)} %`;
  return [
    wrong(
      place(review.price.name),
      `The margin of ${percent} was added to the cost as a markup: ${money(cost)} and ${percent} of it are ${money(price)}.`,
      "Divide the cost by 1 less the margin, or agree the smaller margin.",
      { expected: `${money(cost! / (1 - margin!))}, of which the margin is ${percent}.` },
    ),
    ...sums,
  ];
}

/** Lines that are wrong themselves come to another sum as they stand. */
function netAsQuoted(book: Book, again: number): string {
  const off = number(namedValue(book, corrected.lines.name));
  return off === 0 ? "" : `; ${money(again - off)} with its lines as quoted`;
}

function headsShort(book: Book): Finding[] {
  const word = namedValue(book, beside(review.heads).word.name);
  if (word !== "look") return [];
  const [heads, tuners, bands, needed, each] = [
    review.heads,
    review.tuners,
    review.bands,
    beside(review.heads).again,
    review.head_price,
  ].map(({ name }) => namedValue(book, name));
  const missing = number(needed) - number(heads);
  return [
    wrong(
      namedCells(book, review.heads.name)[0]?.place,
      `${figure(number(heads))} head units of ${figure(number(bands))} user bands serve ${figure(number(heads) * number(bands))} of the ${figure(number(tuners))} tuners.`,
      "Add what is missing, or feed those outlets otherwise.",
      {
        expected: `${figure(number(needed))} head units${isBlank(each) ? "" : `: ${figure(missing)} more at ${money(each)}`}.`,
        effect: "Some of the tuners get no user band.",
      },
    ),
  ];
}

/** What each ratio is made of, as its label stands in the block of ranges. */
const MADE_OF: ReadonlyMap<string, readonly NamedField[]> = new Map(
  (
    [
      [ratio.per_outlet, [review.price, review.net, review.outlets]],
      [ratio.cable_each, [review.cable, review.outlets]],
      [ratio.hours_each, [review.hours, review.outlets]],
      [ratio.tuners_each, [review.tuners, review.outlets]],
      [ratio.tuners_head, [review.tuners, review.heads]],
      [ratio.materials, [review.materials, review.labour]],
      [ratio.margin, [review.margin, review.cost, review.price]],
      [ratio.extras, [review.extras, review.net]],
    ] as const
  ).map(([of, made]) => [of.words.label, made]),
);

const shownAs = (value: number, unit: string | undefined): string =>
  unit === "share"
    ? `${figure(Number((value * 100).toPrecision(4)))} %`
    : figure(Number(value.toPrecision(4)));

function ratiosOff(book: Book): Finding[] {
  const [names, lows, highs, bases, values, words] = [
    ranges.ratio,
    ranges.low,
    ranges.high,
    ranges.basis,
    ranges.value,
    ranges.word,
  ].map(({ name }) => namedCells(book, name));
  return words!.flatMap(({ value: word, index }): Finding[] => {
    if (word !== "look" && !isBookError(word)) return [];
    const value = values![index]?.value;
    const basis = String(bases![index]?.value ?? "").trim();
    const label = String(names![index]?.value ?? "");
    const made = (MADE_OF.get(label) ?? []).flatMap((of) => {
      const own = namedValue(book, of.name);
      return typeof own === "number" ? [`${of.words.label} ${shownAs(own, of.words.unit)}`] : [];
    });
    const isShare = /share|margin/.test(label);
    const shown = (one: BookResult | undefined): string => shownAs(number(one), isShare ? "share" : "");
    return [
      {
        weight: "doubtful",
        place: values![index]?.place,
        message: `The ${label} ${typeof value === "number" ? `is ${shown(value)}` : "cannot be found"}${made.length > 0 ? ` (${made.join(", ")})` : ""}.`,
        expected: `Usually ${shown(lows![index]?.value)} to ${shown(highs![index]?.value)}${basis === "" ? "" : ` (${basis})`}.`,
        remedy: "Look at the figures that it comes from, and at their units.",
      },
    ];
  });
}

/** Shares that have a bound of their own in every job. */
const SHARES = [
  [review.contingency, estimate.site.contingency],
  [review.overhead, estimate.site.overhead],
  [review.rate_tax, estimate.site.tax],
] as const;

function sharesOff(book: Book): Finding[] {
  return SHARES.flatMap(([of, site]): Finding[] => {
    const [cell] = namedCells(book, of.name);
    const { most, because } = USUAL.find(({ name }) => name === site.name)!;
    if (typeof cell?.value !== "number" || cell.value <= most!) return [];
    return [
      {
        weight: "doubtful",
        place: cell.place,
        message: `${of.words.label} is ${shownAs(cell.value, "share")}.`,
        expected: `Usually at most ${shownAs(most!, "share")} ${because}.`,
        remedy: "Look at the figure; ask its maker.",
      },
    ];
  });
}

const PRACTICE = "common practice, no source";
/** So many times the middle of what is usual: another currency, or a list at other prices. */
const OTHER_PRICES = 4;

/** Prices of parts far beside what such a part costs; in another currency, beside the other lines of the quote. */
function pricesOff(book: Book): Finding[] {
  const [parts, prices] = [lines.part, lines.each].map(({ name }) => namedCells(book, name));
  const priced = parts!.flatMap(({ value: part, index }) => {
    const each = prices![index];
    const usual = typeof part === "string" ? usualPrice(part) : undefined;
    return usual && typeof each?.value === "number" && each.value > 0
      ? [{ part: String(part), place: each.place, each: each.value, ...usual }]
      : [];
  });
  const rate = namedCells(book, review.rate.name)[0];
  if (typeof rate?.value === "number" && rate.value > 0)
    priced.push({ part: review.rate.words.label, place: rate.place, each: rate.value, ...USUAL_RATE });
  const logs = priced.map(({ each, low, high }) => Math.log(each / Math.sqrt(low * high)));
  const middle = logs.length > 0 ? Math.exp(median(logs)) : 1;
  const scale = logs.length >= FEWEST && (middle > OTHER_PRICES || middle < 1 / OTHER_PRICES) ? middle : 1;
  return priced.flatMap(({ part, place, each, low, high }): Finding[] => {
    if (each >= low * scale && each <= high * scale) return [];
    const shown = (value: number): string => figure(Number((value * scale).toPrecision(2)));
    return [
      {
        weight: "doubtful",
        place,
        message: `“${part}” is ${figure(each)} for one.`,
        expected: `Usually ${shown(low)} to ${shown(high)} (${PRACTICE}${scale === 1 ? "" : "; by the other prices of this quote"}).`,
        remedy: "Look at the point, at the unit (a metre, a reel, a pack) and at the price list.",
      },
    ];
  });
}

const FEWEST = 4;

/** What the quote has for a total, and what it comes to without its slips. */
export const totalsOf = (book: Book): { quoted?: number; shouldBe?: number } => {
  const [quoted, shouldBe] = [review.total, corrected.total].map(({ name }) => namedValue(book, name));
  return {
    ...(typeof quoted === "number" && { quoted }),
    ...(typeof shouldBe === "number" && { shouldBe }),
  };
};

/** The headline of a quote that was just read. */
export function correctedInWords(book: Book): string {
  const { quoted, shouldBe } = totalsOf(book);
  if (quoted === undefined) return "It has no total; type it on Review.";
  const off = Math.abs((shouldBe ?? quoted) - quoted) > number(namedValue(book, review.tolerance.name));
  return off
    ? `Quoted ${money(quoted)}; without its slips it comes to ${money(shouldBe)}.`
    : `Quoted ${money(quoted)}, and that is what it comes to.`;
}
