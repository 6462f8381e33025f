/**
 * Quotes with several rates of tax, discounts, options and alternates, worked by somebody who had not seen the
 * code (tests/fixtures/money): each is put into the template and computed.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import { checkLines } from "../../src/workbooks/checkLines";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { startingPoint } from "../../src/workbooks/multiRoom/startingPoint";
import { namedColumn, namedValue } from "../../src/workbooks/named";
import { sheetDate } from "../../src/workbooks/sheetDate";

type Row = Record<string, number | string>;

interface Priced {
  readonly name: string;
  readonly class: string;
  readonly cost?: number;
  readonly price?: number;
  readonly "tax class"?: string;
}
interface Option {
  readonly name: string;
  readonly parts?: readonly { name: string; quantity: number; price?: number; cost?: number }[];
  readonly labour?: readonly { name: string; hours: number }[];
  readonly chosen: string;
  readonly "tax class"?: string;
}
interface Given {
  readonly currency?: string;
  readonly rounding?: string;
  readonly lines: readonly Priced[];
  readonly contingency?: number;
  readonly overhead?: number;
  readonly margin?: number;
  readonly "rate per hour"?: number;
  readonly "tax classes": readonly { name: string; rate: string }[];
  readonly discount?: { readonly share?: number; readonly sum?: number; readonly on?: string };
  readonly options?: readonly Option[];
  readonly alternates?: readonly {
    name: string;
    "instead of": string;
    lines: readonly Priced[];
  }[];
}
type Totals = Readonly<Record<string, unknown>>;
interface Case {
  readonly id: string;
  readonly why: string;
  readonly given: Given;
  readonly expect: Totals;
  /** Ours, where we judge otherwise, or where the template has no such thing. */
  readonly ours?: string;
}

const CASES = JSON.parse(
  readFileSync(path.join(__dirname, "../fixtures/money/cases.json"), "utf8"),
) as readonly Case[];

const RATE = 60;
const DATES = { priced: sheetDate(2026, 11, 1), until: sheetDate(2027, 11, 1) };
/** ISO 4217, minor units; of all others here it is 2. */
const DECIMALS: Readonly<Record<string, number>> = { JPY: 0, KWD: 3 };
const share = (rate: string): number => (rate.endsWith("%") ? parseFloat(rate) / 100 : 0);

/** The quote as a filled template; lines that have a price stand among the provisional sums, credits among the options. */
function quoted(given: Given): Book {
  const classes = given["tax classes"];
  const isListed = given.lines.some((line) => line["tax class"]) || classes.length > 1;
  const rate = given["rate per hour"] ?? RATE;
  const taxed = (name: string | undefined): Row => (name === undefined ? {} : { tax: name });
  const provisional: Row[] = [];
  const options: Row[] = [];
  const made: Row[] = [];
  const fittings: Row[] = [];
  const labour: Row[] = [];
  const fields: Row = {};
  for (const { name, class: kind, cost, price, "tax class": tax } of given.lines) {
    if (price !== undefined && price >= 0) provisional.push({ name, sum: price, ...taxed(tax) });
    else if (price !== undefined)
      options.push({ name, quantity: 1, each: price, chosen: "yes", ...taxed(tax) });
    else if (kind === "labour") {
      labour.push({ name, minutes: (cost! / rate) * 60, fixed: 1, difficulty: 1 });
      if (tax) fields.tax_class_labour = tax;
    } else {
      fittings.push({ name, fixed: 1, pack: 1, price: cost!, ...DATES });
      if (tax) fields.tax_class_fittings = tax;
    }
  }
  for (const { name, parts = [], labour: work = [], chosen, "tax class": tax } of given.options ?? []) {
    const each = parts.reduce((sum, part) => sum + part.quantity * (part.price ?? 0), 0);
    options.push({
      name,
      quantity: 1,
      ...(each !== 0 && { each: Number(each.toFixed(6)) }),
      chosen: chosen === "open" ? "no" : chosen,
      ...taxed(tax ?? (isListed ? classes[0]!.name : undefined)),
    });
    for (const part of parts)
      if (part.cost !== undefined)
        made.push({ option: name, part: part.name, quantity: part.quantity, each: part.cost });
    for (const one of work) made.push({ option: name, part: one.name, hours: one.hours });
  }
  for (const { name, "instead of": instead, lines } of given.alternates ?? []) {
    const base = given.lines.find((line) => line.name === instead);
    const each = lines.reduce((sum, line) => sum + line.price!, 0) - (base?.price ?? 0);
    options.push({ name, quantity: 1, each, chosen: "no", instead, ...taxed(base?.["tax class"]) });
  }
  const discount = given.discount ?? {};
  return recalculate(
    layOut(multiRoom, {
      fields: {
        ...startingPoint.fields,
        site_date: sheetDate(2026, 11, 20),
        site_until: sheetDate(2026, 12, 20),
        site_currency: given.currency ?? "EUR",
        ...(given.currency &&
          DECIMALS[given.currency] !== undefined && { site_decimals: DECIMALS[given.currency]! }),
        site_rounding: given.rounding ?? "half away",
        site_contingency: given.contingency ?? 0,
        site_overhead: given.overhead ?? 0,
        site_margin: given.margin ?? 0,
        site_tax: share(classes[0]!.rate),
        labour_rate: rate,
        ...fields,
        ...(discount.share !== undefined && { discount_share: discount.share }),
        ...(discount.sum !== undefined && { discount_sum: discount.sum }),
        ...(given.discount && { discount_reason: "agreed (demonstration)" }),
      },
      blocks: {
        taxes: isListed ? classes.map(({ name, rate }) => ({ name, rate: share(rate) })) : [],
        ...{ provisional, options, made, fittings, labour },
      },
    }),
  );
}

const cents = (value: unknown): number | string =>
  typeof value === "number" ? Number(value.toFixed(3)) : JSON.stringify(value);

/** What came out, under the names of the case's own expectations. */
function cameOut(book: Book, given: Given): Totals {
  const column = (name: string): unknown[] => namedColumn(book, name).slice(1);
  const value = (name: string): number => Number(namedValue(book, name) ?? NaN);
  const byRate = new Map<string, number>();
  const netBy = new Map<string, number>();
  const classes = given["tax classes"];
  const taxable = column("taxes_priced_taxable");
  const taxes = column("taxes_priced_tax");
  column("taxes_priced_name").forEach((name, at) => {
    const found = classes.find((one) => one.name === name);
    if (!found) return;
    byRate.set(found.rate, (byRate.get(found.rate) ?? 0) + Number(taxes[at]));
    netBy.set(found.rate, (netBy.get(found.rate) ?? 0) + Number(taxable[at]));
  });
  const first = classes[0]!.rate;
  byRate.set(first, (byRate.get(first) ?? 0) + value("price_tax_usual"));
  netBy.set(first, (netBy.get(first) ?? 0) + value("price_taxable"));
  const rounded = (of: ReadonlyMap<string, number>) =>
    Object.fromEntries([...of].map(([rate, sum]) => [rate, cents(sum)]));
  const names = column("options_name");
  const sums = column("options_sum");
  const totals = column("options_priced_total");
  const total = value("price_total");
  const of = (list: readonly { name: string }[] = [], what: (at: number) => unknown) =>
    Object.fromEntries(list.map(({ name }) => [name, what(names.indexOf(name))]));
  return {
    net: cents(value("price_net")),
    tax: cents(value("price_tax")),
    total: cents(total),
    discount: cents(value("price_discount")),
    "tax by rate": rounded(byRate),
    "net by rate": rounded(netBy),
    "option prices": of(given.options, (at) => cents(sums[at])),
    "option totals": of(given.options, (at) => cents(Number(totals[at]) - total)),
    "alternate totals": of(given.alternates, (at) => cents(totals[at])),
  };
}

const LOOKED_AT = [
  ...["net", "tax", "total", "discount", "tax by rate", "net by rate"],
  ...["option prices", "option totals", "alternate totals"],
];

/** Of an alternate its total; what is said of it besides follows from that. */
const plain = (key: string, wanted: unknown): unknown =>
  key === "alternate totals"
    ? Object.fromEntries(
        Object.entries(wanted as Record<string, unknown>).map(([name, one]) => [
          name,
          typeof one === "object" ? (one as { total: number }).total : one,
        ]),
      )
    : wanted;

function differences({ given, expect: wanted }: Case): string[] {
  const book = quoted(given);
  const found = cameOut(book, given);
  const differs = (of: Totals): string[] =>
    LOOKED_AT.filter((key) => key in of && of[key] !== null).flatMap((key) => {
      const [want, got] = [plain(key, of[key]), found[key]];
      return JSON.stringify(sorted(want)) === JSON.stringify(sorted(got))
        ? []
        : [`${key}: ${JSON.stringify(got)} in place of ${JSON.stringify(want)}`];
    });
  const sentences: string[] = [];
  if (wanted.sentence === "must" || wanted.sentence === "check") {
    const told = checkLines(book).filter(
      ({ what, found, result }) =>
        (result === "look" || result === "error") &&
        !WITHOUT_FAULT.some((line) => line.what === what && line.found === found),
    );
    if (told.length === 0) sentences.push("no check tells of it");
  }
  if (wanted.total === null && !Number.isNaN(Number(namedValue(book, "price_total"))))
    sentences.push("a total shows");
  return [...differs(wanted), ...sentences];
}

/** What fails in a quote of nothing but two lines, whatever they are: it has no outlets. */
const WITHOUT_FAULT = checkLines(
  quoted({
    lines: [{ name: "parts", class: "materials", price: 600 }],
    "tax classes": [{ name: "standard", rate: "20 %" }],
  }),
);

const sorted = (value: unknown): unknown =>
  typeof value === "object" && value !== null
    ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => a.localeCompare(b)))
    : value;

/** Right as another reading of the case says, in those figures that it names. */
function asRead(one: Case): string[] {
  const first = differences(one);
  const others = (one.expect["other readings"] ?? []) as Totals[];
  return first.length === 0 ||
    others.some(
      (other) =>
        differences({
          ...one,
          expect: {
            ...one.expect,
            "net by rate": null,
            "discount by rate": null,
            "tax by rate": null,
            ...other,
          },
        }).length === 0,
    )
    ? []
    : first;
}

test.each(CASES.filter(({ ours }) => ours === undefined).map((one) => [one.id, one.why, one] as const))(
  "%s: %s",
  (_, __, one) => expect(asRead(one)).toEqual([]),
);

test.each(CASES.filter(({ ours }) => ours !== undefined).map((one) => [one.id, one.ours!, one] as const))(
  "%s, otherwise: %s",
  (_, __, one) => expect(asRead(one)).not.toEqual([]),
);
