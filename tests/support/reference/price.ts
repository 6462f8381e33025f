/** Terms, Price and Quote a second time, in decimals of 60 digits; money is rounded where it prints. */
import DecimalJs from "decimal.js";
import { commonDeviations, labourOf, siteCostOf, typeLabourOf } from "./labour";
import { costOf } from "./materials";
import { headRows } from "./headUnits";
import { slotRows } from "./sightline";
import {
  eachRow,
  field,
  figure,
  filledRows,
  isFilled,
  isSame,
  rowsOf,
  sum,
  word,
  type Cells,
  type Job,
  type Row,
  type Value,
} from "./job";
import { headNameOf, outletRows, tunersOf } from "./rooms";

const Decimal = DecimalJs.clone({ precision: 60 });
type Decimal = DecimalJs;
const of = (value: number): Decimal => new Decimal(value);
const added = (values: readonly Decimal[]): Decimal => values.reduce((a, b) => a.plus(b), of(0));

const cents = (job: Job, value: Decimal, places = 2): Decimal =>
  value.toDecimalPlaces(
    places,
    word(job, "site_rounding") === "half even" ? Decimal.ROUND_HALF_EVEN : Decimal.ROUND_HALF_UP,
  );

export interface Priced {
  readonly sums: readonly Decimal[];
  readonly sections: readonly Decimal[];
  readonly direct: Decimal;
  readonly factor: Decimal;
  readonly lines: readonly Decimal[];
  readonly before: Decimal;
  readonly discount: Decimal;
  readonly net: Decimal;
  /** Its printed part of the price, and that before it is rounded. */
  readonly taxable: Decimal;
  readonly taxableExactly: Decimal;
  readonly tax: Decimal;
  readonly total: Decimal;
  readonly options: Decimal;
}

const optionSum = (row: Row): Decimal => of(figure(row, "each")).times(figure(row, "quantity"));

export function priced(job: Job): Priced {
  const share = (name: string): Decimal => of(field(job, name));
  const bought = (block: string): Decimal =>
    added(filledRows(job, block, "name").map((part) => costOf(job, block, part)));
  const hours = (block: string): Decimal =>
    added(filledRows(job, block, "name").map((work) => labourOf(job, work)));
  const [byWork, byRoute] = [hours("labour"), hours("routes")];
  const byType = added(filledRows(job, "types", "name").map((type) => typeLabourOf(job, type)));
  const sites = added(filledRows(job, "sites", "name").map((row) => siteCostOf(job, row)));
  const provisional = added(filledRows(job, "provisional", "name").map((row) => of(figure(row, "sum"))));
  const sums = [
    ...["units", "supplies", "cables", "passives", "plates", "feeds", "resistors", "fittings"].map(bought),
    byWork,
    byRoute,
    byType,
    sites,
    provisional,
  ];
  const [units, supplies, cables, passives, plates, feeds, resistors, fittings] = sums as Decimal[];
  const sections = [
    units!.plus(supplies!).plus(feeds!),
    cables!.plus(passives!).plus(resistors!),
    plates!.plus(fittings!),
    byWork.plus(byRoute).plus(byType),
    sites,
  ];
  // Each option prints at its own sum, so each is rounded.
  const options = added(
    filledRows(job, "options", "name")
      .filter(({ chosen }) => chosen === "yes")
      .map((row) => cents(job, optionSum(row))),
  );
  const up = share("site_contingency").plus(1).times(share("site_overhead").plus(1));
  const kept = of(1).minus(share("site_margin"));
  // Multiplied before it is divided, so that what divides evenly does.
  const direct = added(sections);
  const lines = [...sections.map((section) => section.times(up).dividedBy(kept)), provisional, options].map(
    (line, at) =>
      // Without a cost there is no price for any part of it.
      cents(job, direct.isNaN() && at < sections.length ? direct : line),
  );
  const before = added(lines);
  const discount = isFilled(job.fields, "discount_share")
    ? cents(job, before.times(share("discount_share")))
    : isFilled(job.fields, "discount_sum")
      ? share("discount_sum")
      : of(0);
  const net = before.minus(discount);
  const whole =
    { "labour only": lines[3]!, "materials only": before.minus(lines[3]!) }[word(job, "site_tax_on")] ??
    before;
  const taxableExactly = before.isZero() ? whole : whole.times(net).dividedBy(before);
  const taxable = cents(job, taxableExactly);
  const tax = cents(job, taxable.times(share("site_tax")));
  return {
    ...{
      sums,
      sections,
      direct,
      factor: direct.isZero() ? of(0) : direct.times(up).dividedBy(kept).dividedBy(direct),
      lines,
    },
    ...{ before, discount, net, taxable, taxableExactly, tax, total: net.plus(tax), options },
  };
}

export function termsSheet(job: Job): Cells {
  const rows = rowsOf(job, "options");
  return {
    options_sum: eachRow<Value>(rows, "name", (row) => cents(job, optionSum(row)).toNumber(), ""),
    options_chosen_sum: eachRow<Value>(
      rows,
      "name",
      (row) => (row.chosen === "yes" ? cents(job, optionSum(row)).toNumber() : 0),
      "",
    ),
  };
}

const numbers = (values: readonly Decimal[]): number[] => values.map((value) => value.toNumber());

/** The expected total and its range: means of what is not sure, and two deviations to either side. */
export function doubt(job: Job, cells: Cells) {
  const { factor, total } = priced(job);
  const column = (name: string): number[] =>
    (cells[name] as readonly Value[]).filter((value) => value !== "") as number[];
  const over = (blocks: readonly string[]): number =>
    sum(blocks.map((block) => sum(column(`${block}_variance`))));
  const lengths = over(["rooms", "branches", "heads", "feeders"]);
  const sites = over(["sites_priced"]);
  const common = commonDeviations(job);
  const hours = over(["work", "route_work"]) + common.speed ** 2 + common.difficulty ** 2;
  const deviation = Math.sqrt(lengths + sites + hours);
  const drift = sum(column("rooms_expected_extra")) * factor.toNumber();
  // A discount by a share takes its share of what is not sure as well.
  const kept = isFilled(job.fields, "discount_share") ? 1 - field(job, "discount_share") : 1;
  const rate = field(job, "site_tax");
  const on = word(job, "site_tax_on");
  const taxOn = (isLabour: boolean): number =>
    on === "materials and labour" || (on === "labour only") === isLabour ? rate : 0;
  const expected = total.toNumber() + drift * kept * (1 + taxOn(false));
  const sold =
    kept *
    factor.toNumber() *
    Math.sqrt((lengths + sites) * (1 + taxOn(false)) ** 2 + hours * (1 + taxOn(true)) ** 2);
  return { deviation, drift, expected, low: expected - 2 * sold, high: expected + 2 * sold };
}

export function priceSheet(job: Job, cells: Cells): Cells {
  const p = priced(job);
  const direct = p.direct;
  const contingency = direct.times(field(job, "site_contingency"));
  const overhead = direct.plus(contingency).times(field(job, "site_overhead"));
  const cost = direct.plus(contingency).plus(overhead);
  const sell = cost.dividedBy(of(1).minus(field(job, "site_margin")));
  const outlets = outletRows(job);
  const { deviation, drift, expected, low, high } = doubt(job, cells);
  const parts = [...p.sections, p.sums.at(-1)!, p.options];
  const keys = ["reception", "cable", "fittings", "labour", "sites", "provisional", "options"];
  const own = new Map(
    rowsOf(job, "rooms").map((row, at) => [row, Number((cells.rooms_parts_cost as readonly Value[])[at])]),
  );
  const ownOf = (rows: readonly Row[]): number => sum(rows.map((row) => own.get(row)!)) * p.factor.toNumber();
  const shared = (sell.toNumber() - ownOf(outlets)) / outlets.length;
  const ofKind = (row: Row): Row[] => outlets.filter(({ kind }) => isSame(kind, row.name));
  const kinds = rowsOf(job, "kinds");
  return {
    price_sums: numbers(p.sums),
    ...Object.fromEntries(keys.slice(0, 5).map((key, at) => [`price_${key}`, p.sections[at]!.toNumber()])),
    price_direct: direct.toNumber(),
    price_contingency: contingency.toNumber(),
    price_overhead: overhead.toNumber(),
    price_cost: cost.toNumber(),
    price_sell: sell.toNumber(),
    price_profit: sell.minus(cost).toNumber(),
    price_markup: sell.minus(cost).dividedBy(cost).toNumber(),
    price_factor: p.factor.toNumber(),
    price_per_outlet: sell.toNumber() / outlets.length,
    ...{
      price_deviation: deviation,
      price_expected_extra: drift,
      price_expected: expected,
      price_low: low,
      price_high: high,
    },
    ...Object.fromEntries(keys.map((key, at) => [`price_part_${key}`, parts[at]!.toNumber()])),
    ...Object.fromEntries(keys.map((key, at) => [`price_times_${key}`, at < 5 ? p.factor.toNumber() : 1])),
    price_lines: numbers(p.lines),
    price_before: p.before.toNumber(),
    price_discount: p.discount.toNumber(),
    price_net: p.net.toNumber(),
    price_taxable: p.taxable.toNumber(),
    price_tax: p.tax.toNumber(),
    price_total: p.total.toNumber(),
    kinds_priced_name: eachRow<Value>(kinds, "name", (row) => row.name!, ""),
    kinds_priced_outlets: eachRow<Value>(kinds, "name", (row) => ofKind(row).length, ""),
    kinds_priced_price: eachRow<Value>(
      kinds,
      "name",
      (row) => ownOf(ofKind(row)) + shared * ofKind(row).length,
      "",
    ),
  };
}

/** Why a figure is 0, as Terms lists it. */
const reasonFor = (job: Job, what: string): Value =>
  filledRows(job, "onpurpose", "what").find((row) => isSame(row.what, what))?.why ?? "";

/** A list that is empty says so. */
const orNone = (list: Value[]): Value[] => (list.some((text) => text !== "") ? list : ["none"]);

/** @param entries how many entries are missing or out of bounds, and rows that cannot be worked out */
export function quoteSheet(job: Job, entries: number): Cells {
  const p = priced(job);
  const options = rowsOf(job, "options");
  const column = (block: string, key: string): Value[] =>
    eachRow<Value>(rowsOf(job, block), key, (row) => row[key]!, "");
  const outlets = outletRows(job);
  // Of what cannot be worked out none is known.
  const tuners = sum(outlets.flatMap((row) => (headNameOf(job, row) === "" ? [] : [tunersOf(job, row)])));
  /** What is not known is open, on a customer's page. */
  const shown = (value: number): Value => (Number.isNaN(value) ? "open" : value);
  const scope = [
    ["outlets", outlets.length],
    ["tuners", tuners],
    ["head units", headRows(job).length],
    ["orbital slots", slotRows(job).length],
  ]
    .filter(([, count]) => Number(count) > 0)
    .map(([what, count]) => `${what}: ${count}`)
    .join(", ");
  const untaxed = field(job, "site_tax") === 0 ? reasonFor(job, "Tax") : "";
  const isDraft = entries > 0 || p.total.isNaN();
  const isOff = !p.discount.isZero();
  return {
    quote_job: word(job, "site_job"),
    quote_customer: word(job, "site_customer"),
    quote_place: word(job, "site_place"),
    quote_number: `${word(job, "site_quote")}, revision ${word(job, "site_revision")}`,
    quote_date: field(job, "site_date"),
    quote_until: field(job, "site_until"),
    quote_by: word(job, "site_prepared_by"),
    quote_scope: scope,
    "Quote!A5": isDraft ? "Draft: not to be sent" : "",
    quote_draft: isDraft ? "Entries are missing or wrong: see Checks" : "",
    "Quote!A23": isOff ? "Discount" : "",
    "Quote!A24": isOff && word(job, "discount_reason") !== "" ? "Reason for the discount" : "",
    "Quote!A27": untaxed === "" ? "" : "Reason for no tax",
    ...Object.fromEntries(
      ["reception", "cable", "fittings", "labour", "sites", "provisional", "options"].map((key, at) => [
        `quote_${key}`,
        p.lines[at]!.isZero() ? "" : shown(p.lines[at]!.toNumber()),
      ]),
    ),
    quote_discount: isOff ? shown(-p.discount.toNumber()) : "",
    quote_discount_reason: isOff ? word(job, "discount_reason") : "",
    quote_net: shown(p.net.toNumber()),
    quote_tax: shown(p.tax.toNumber()),
    quote_tax_reason: untaxed,
    quote_total: shown(p.total.toNumber()),
    quote_currency: word(job, "site_currency"),
    options_quoted_name: column("options", "name"),
    options_quoted_sum: eachRow<Value>(options, "name", (row) => cents(job, optionSum(row)).toNumber(), ""),
    options_quoted_word: eachRow<Value>(
      options,
      "name",
      ({ chosen }) => (chosen === "yes" || chosen === "no" ? chosen : "open"),
      "",
    ),
    assumptions_quoted_text: orNone(column("assumptions", "text")),
    exclusions_quoted_text: orNone(column("exclusions", "text")),
    letterhead_quoted_line: column("letterhead", "line"),
  };
}
