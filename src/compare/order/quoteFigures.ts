/** What a computed job's Quote prints, in whole thousandths of its money, so that sums and differences are exact. */
import type { Named } from "../../formula/build";
import { isBookError, type Book, type BookResult } from "../../workbooks/book";
import { estimate } from "../../workbooks/multiRoom/names";
import { LINES } from "../../workbooks/multiRoom/names/lines";
import { taxesQuoted } from "../../workbooks/multiRoom/names/quote";
import { namedColumn, namedValue } from "../../workbooks/named";

/** No currency has more decimals. */
const THOUSANDTHS = 1000;

export const money = (thousandths: number): number => thousandths / THOUSANDTHS;

/** The lines that add up to the price without tax. */
export const QUOTE_LINES = [...(Object.keys(LINES) as (keyof typeof LINES)[]), "discount"] as const;
export type QuoteLineKey = (typeof QUOTE_LINES)[number];

export interface TaxClassQuoted {
  readonly name: string;
  readonly rate: number;
  readonly tax: number;
}

export interface QuoteFigures {
  readonly lines: Readonly<Record<QuoteLineKey, number>>;
  readonly net: number;
  readonly tax: number;
  readonly total: number;
  /** The classes in which something is; all else is at the usual rate. */
  readonly classes: readonly TaxClassQuoted[];
  readonly rate: number;
  readonly decimals: number;
}

/** @returns undefined where the quote prints no total, or what it prints does not add up */
export function quoteFigures(book: Book): QuoteFigures | undefined {
  const { quote, price, site } = estimate;
  const valueOf = ({ name }: Named): BookResult | undefined => namedValue(book, name);
  const lines = Object.fromEntries(
    QUOTE_LINES.map((key) => [key, thousandths(valueOf(quote[key]))]),
  ) as Record<QuoteLineKey, number | undefined>;
  const [net, tax, total] = [quote.net, quote.tax, quote.total].map((of) => thousandths(valueOf(of)));
  const known = Object.values(lines).filter((value) => value !== undefined);
  if (known.length < QUOTE_LINES.length || net === undefined || tax === undefined || total === undefined)
    return undefined;
  const sum = known.reduce((all, one) => all + one, 0);
  if (sum !== net || net + tax !== total || typeof valueOf(quote.total) !== "number") return undefined;
  const [names, rates, taxes] = [taxesQuoted.name, taxesQuoted.rate, taxesQuoted.tax].map(({ name }) =>
    namedColumn(book, name),
  );
  const rate = valueOf(site.tax);
  const decimals = valueOf(price.decimals);
  return {
    lines: lines as Record<QuoteLineKey, number>,
    net,
    tax,
    total,
    classes: names!.flatMap((name, row) =>
      typeof name === "string" && name !== ""
        ? [{ name, rate: numberIn(rates![row]), tax: thousandths(taxes![row]) ?? 0 }]
        : [],
    ),
    rate: numberIn(rate),
    decimals: typeof decimals === "number" ? decimals : 2,
  };
}

const numberIn = (value: BookResult | undefined): number => (typeof value === "number" ? value : 0);

/** A line with nothing in it prints nothing. */
function thousandths(value: BookResult | undefined): number | undefined {
  if (value === undefined || value === "") return 0;
  if (isBookError(value) || typeof value !== "number" || !Number.isFinite(value)) return undefined;
  return Math.round(value * THOUSANDTHS);
}
