/** Terms, Price and Quote a second time, in decimals of 60 digits; money is rounded where it prints. */
import DecimalJs from "decimal.js";
import { keyOf } from "./keys";
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
  named,
  orNought,
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

/** ISO 4217 calls them minor units. */
const placesOf = (job: Job): number =>
  isFilled(job.fields, "site_decimals") ? field(job, "site_decimals") : 2;
const cents = (job: Job, value: Decimal): Decimal =>
  value.toDecimalPlaces(
    placesOf(job),
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
  readonly taxes: Taxes;
  readonly tax: Decimal;
  readonly total: Decimal;
  readonly options: Decimal;
  /** With its class of tax. */
  readonly chosen: readonly (readonly [sum: Decimal, taxed: Value | undefined])[];
}

/** Every priced list of Parts with what one piece, metre or foot of it costs. */
const costOfOne = (job: Job, part: Value | undefined): Decimal => {
  for (const block of [
    "cables",
    "passives",
    "units",
    "supplies",
    "plates",
    "feeds",
    "resistors",
    "fittings",
  ]) {
    const row = named(rowsOf(job, block), "name", part);
    if (!row) continue;
    const by = block === "cables" ? figure(row, "reel") : block === "fittings" ? figure(row, "pack") : 1;
    return of(figure(row, "price")).dividedBy(by);
  }
  return of(NaN);
};
const madeCost = (job: Job, row: Row): Decimal =>
  of(orNought(row, "hours"))
    .times(isFilled(row, "hours") ? field(job, "labour_rate") : 0)
    .plus(
      isFilled(row, "quantity")
        ? of(figure(row, "quantity")).times(
            isFilled(row, "each") ? figure(row, "each") : costOfOne(job, row.part),
          )
        : 0,
    );
const lacksCost = (job: Job, row: Row): boolean =>
  (isFilled(row, "quantity")
    ? !isFilled(row, "each") && costOfOne(job, row.part).isNaN()
    : !isFilled(row, "hours")) ||
  ["quantity", "hours", "each"].some((key) => isFilled(row, key) && typeof row[key] !== "number");
const madeOf = (job: Job, option: Row): Decimal =>
  added(
    filledRows(job, "made", "option")
      .filter(({ option: name }) => isSame(name, option.name))
      .map((row) => (lacksCost(job, row) ? of(NaN) : madeCost(job, row))),
  );
/** What a unit of cost sells at. */
const soldAt = (job: Job): Decimal =>
  of(1)
    .plus(field(job, "site_contingency"))
    .times(of(1).plus(field(job, "site_overhead")))
    .dividedBy(of(1).minus(field(job, "site_margin")));
const optionSum = (job: Job, row: Row): Decimal => {
  const own = madeOf(job, row);
  return of(orNought(row, "each"))
    .plus(own.isZero() ? own : own.times(soldAt(job)))
    .times(figure(row, "quantity"));
};

export interface Taxes {
  /** By class of Site: before the discount, after it, taxed, and its tax. */
  readonly classes: readonly {
    readonly amount: Decimal;
    readonly reduced: Decimal;
    readonly taxable: Decimal;
    readonly tax: Decimal;
  }[];
  readonly ofClass: Decimal;
  readonly usual: Decimal;
  readonly usualLabour: Decimal;
  readonly usualTaxed: Decimal;
  readonly taxable: Decimal;
  readonly taxUsual: Decimal;
  readonly tax: Decimal;
  /** Nothing of it rounded. */
  readonly exactly: Decimal;
}

const LINES_WITH_CLASS = ["reception", "cable", "fittings", "labour", "sites"];

/** @param chosen the options in the price, with their classes */
function taxesOf(
  job: Job,
  lines: readonly Decimal[],
  net: Decimal,
  before: Decimal,
  chosen: readonly (readonly [sum: Decimal, taxed: Value | undefined])[],
): Taxes {
  const places = placesOf(job);
  const listed = filledRows(job, "taxes", "name");
  const own = [
    ...LINES_WITH_CLASS.map((line, at) => [lines[at]!, job.fields[`tax_class_${line}`]] as const),
    ...filledRows(job, "provisional", "name").map((row) => [of(figure(row, "sum")), row.tax] as const),
    ...chosen,
  ].filter(([, taxed]) => (taxed ?? "") !== "");
  const classedLines = LINES_WITH_CLASS.filter((line) => isFilled(job.fields, `tax_class_${line}`)).length;
  const usualOn = (isLabour: boolean): number => {
    const on = word(job, "site_tax_on");
    return on === "materials and labour" || (on === "labour only") === isLabour ? field(job, "site_tax") : 0;
  };
  const isUnknown = own.some(([, taxed]) => !named(listed, "name", taxed));
  const left = before.isZero() ? of(1) : net.dividedBy(before);
  // To the places of the currency, a tie away from nothing: no rule is asked there.
  const isOpen = lines.slice(0, LINES_WITH_CLASS.length).some((line) => line.isNaN());
  const amounts = listed.map(({ name }) =>
    // A section that is no number leaves none; a row that is none makes the price an error, and is in no class.
    isOpen
      ? of(NaN)
      : added(
          own.filter(([sum, taxed]) => !sum.isNaN() && isSame(taxed, name)).map(([sum]) => sum),
        ).toDecimalPlaces(places, Decimal.ROUND_HALF_UP),
  );
  const reduced = amounts.map((amount) => cents(job, amount.times(left)));
  const ofClass = isUnknown ? of(NaN) : added(amounts);
  const usual = before.minus(ofClass);
  const usualLabour = isFilled(job.fields, "tax_class_labour") ? of(0) : lines[3]!;
  const on = word(job, "site_tax_on");
  const usualTaxed = usual.isNaN()
    ? usual
    : ({ "labour only": usualLabour, "materials only": usual.minus(usualLabour) }[on] ?? usual);
  const odd = net.minus(added(reduced));
  const taxable = usualTaxed.equals(usual)
    ? usual.isZero()
      ? of(0)
      : odd
    : cents(job, usualTaxed.times(left));
  const greatest = amounts.findIndex((amount) => amounts.every((other) => amount.gte(other)));
  const taxables = reduced.map((sum, at) => (usual.isZero() && at === greatest ? sum.plus(odd) : sum));
  const taxed = taxables.map((sum, at) => cents(job, sum.times(figure(listed[at], "rate"))));
  const rate = field(job, "site_tax");
  // Without the rate of a class nothing is known of the others' tax.
  const taxUsual = cents(job, (isUnknown ? of(NaN) : taxable).times(rate));
  return {
    classes: listed.map((_, at) => ({
      amount: amounts[at]!,
      reduced: reduced[at]!,
      taxable: isUnknown ? of(NaN) : taxables[at]!,
      tax: isUnknown ? of(NaN) : taxed[at]!,
    })),
    ...{ ofClass, usual, usualLabour, usualTaxed, taxable, taxUsual },
    tax: taxUsual.plus(added(taxed)),
    exactly: added([
      ...LINES_WITH_CLASS.map((line, at) => {
        const taxed = job.fields[`tax_class_${line}`];
        if ((taxed ?? "") !== "")
          return lines[at]!.times(orNought(named(listed, "name", taxed) ?? {}, "rate"));
        return lines[at]!.times(usualOn(line === "labour"));
      }),
      ...own
        .slice(classedLines)
        .map(([sum, taxed]) => sum.times(figure(named(listed, "name", taxed), "rate"))),
      lines[5]!
        .plus(lines[6]!)
        .minus(added(own.slice(classedLines).map(([sum]) => sum)))
        .times(usualOn(false)),
    ]).times(left),
  };
}

const discountOf = (job: Job, before: Decimal): Decimal =>
  isFilled(job.fields, "discount_share")
    ? cents(job, before.times(field(job, "discount_share")))
    : isFilled(job.fields, "discount_sum")
      ? cents(job, of(field(job, "discount_sum")))
      : of(0);

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
  const chosen = filledRows(job, "options", "name")
    .filter(({ chosen }) => chosen === "yes")
    .map((row) => [cents(job, optionSum(job, row)), row.tax] as const);
  const options = added(chosen.map(([sum]) => sum));
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
  const discount = discountOf(job, before);
  const net = before.minus(discount);
  const taxes = taxesOf(job, lines, net, before, chosen);
  const { tax } = taxes;
  return {
    ...{
      sums,
      sections,
      direct,
      factor: direct.isZero() ? soldAt(job) : direct.times(up).dividedBy(kept).dividedBy(direct),
      lines,
    },
    ...{ before, discount, net, taxes, tax, total: net.plus(tax), options, chosen },
  };
}

export function termsSheet(job: Job): Cells {
  const rows = rowsOf(job, "options");
  const keys = (block: string, key: string): Value[] => rowsOf(job, block).map((row) => keyOf(row[key]));
  return {
    taxes_key: keys("taxes", "name"),
    options_tax_key: keys("options", "tax"),
    options_instead_key: keys("options", "instead"),
    options_pair_key: rowsOf(job, "options").map((row) =>
      isFilled(row, "instead") ? `_${row.tax ?? ""}_${row.instead}` : "",
    ),
    rests_key: keys("rests", "cable"),
    provisional_tax_key: keys("provisional", "tax"),
    made_key: keys("made", "option"),
    options_sum: eachRow<Value>(rows, "name", (row) => cents(job, optionSum(job, row)).toNumber(), ""),
    options_made: eachRow<Value>(rows, "name", (row) => madeOf(job, row).toNumber(), ""),
    made_one: eachRow<Value>(
      rowsOf(job, "made"),
      "option",
      (row) => {
        const one = isFilled(row, "each") ? of(figure(row, "each")) : costOfOne(job, row.part);
        return one.isNaN() ? "" : one.toNumber();
      },
      "",
    ),
    made_lacks: eachRow<Value>(rowsOf(job, "made"), "option", (row) => (lacksCost(job, row) ? 1 : 0), ""),
    made_cost: eachRow<Value>(
      rowsOf(job, "made"),
      "option",
      (row) => (lacksCost(job, row) ? 0 : madeCost(job, row).toNumber()),
      "",
    ),
    options_chosen_sum: eachRow<Value>(
      rows,
      "name",
      (row) => (row.chosen === "yes" ? cents(job, optionSum(job, row)).toNumber() : 0),
      "",
    ),
  };
}

/** One value for each class, a blank one for each empty row. */
function ofClassesOf(job: Job, what: (at: number) => Value): Value[] {
  let at = -1;
  return eachRow<Value>(rowsOf(job, "taxes"), "name", () => what((at += 1)), "");
}

/** Of an option what comes on top of the price; of an alternate less what goes out for it, if that is in one class with it. */
function openSum(job: Job, option: Row): Decimal {
  if (option.chosen === "yes") return of(0);
  const out = filledRows(job, "options", "name").filter(
    ({ chosen, instead }) => chosen === "yes" && isSame(instead, option.instead),
  );
  if (
    out.some(
      ({ tax }) =>
        String(tax ?? "")
          .trim()
          .toLowerCase() !==
        String(option.tax ?? "")
          .trim()
          .toLowerCase(),
    )
  )
    return of(NaN);
  return cents(job, optionSum(job, option)).minus(added(out.map((row) => cents(job, optionSum(job, row)))));
}

/** The whole quote once more, with the option in it. */
function totalWith(job: Job, option: Row): Decimal {
  const p = priced(job);
  if (option.chosen === "yes") return p.total;
  const added = openSum(job, option);
  const before = p.before.plus(added);
  const net = before.minus(discountOf(job, before));
  return net.plus(taxesOf(job, p.lines, net, before, [...p.chosen, [added, option.tax]]).tax);
}

const numbers = (values: readonly Decimal[]): number[] => values.map((value) => value.toNumber());

/** The expected total and its range: means of what is not sure, and two deviations to either side. */
export function doubt(job: Job, cells: Cells) {
  const { factor, total } = priced(job);
  const column = (name: string): number[] =>
    (cells[name] as readonly Value[]).filter((value) => value !== "") as number[];
  const over = (blocks: readonly string[]): number =>
    sum(blocks.map((block) => sum(column(`${block}_variance`))));
  // Cut at their longest, runs have been bought so.
  const isBought = word(job, "site_cut_at") === "longest";
  const lengths = isBought ? 0 : over(["rooms", "branches", "heads", "feeders"]);
  const sites = over(["sites_priced"]);
  const common = commonDeviations(job);
  const hours = over(["work", "route_work"]) + common.speed ** 2 + common.difficulty ** 2;
  const deviation = Math.sqrt(lengths + sites + hours);
  const drift = isBought ? 0 : sum(column("rooms_expected_extra")) * factor.toNumber();
  // A discount by a share takes its share of what is not sure as well.
  const kept = isFilled(job.fields, "discount_share") ? 1 - field(job, "discount_share") : 1;
  const on = word(job, "site_tax_on");
  const taxOn = (line: "cable" | "labour" | "sites"): number => {
    const own = job.fields[`tax_class_${line}`];
    const isLabour = line === "labour";
    if ((own ?? "") !== "") return orNought(named(rowsOf(job, "taxes"), "name", own) ?? {}, "rate");
    return on === "materials and labour" || (on === "labour only") === isLabour ? field(job, "site_tax") : 0;
  };
  const expected = total.toNumber() + drift * kept * (1 + taxOn("cable"));
  const sold =
    kept *
    factor.toNumber() *
    Math.sqrt(
      lengths * (1 + taxOn("cable")) ** 2 +
        sites * (1 + taxOn("sites")) ** 2 +
        hours * (1 + taxOn("labour")) ** 2,
    );
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
    price_decimals: placesOf(job),
    price_of_class: p.taxes.ofClass.toNumber(),
    price_usual: p.taxes.usual.toNumber(),
    price_usual_labour: p.taxes.usualLabour.toNumber(),
    price_usual_taxed: p.taxes.usualTaxed.toNumber(),
    price_taxable: p.taxes.taxable.toNumber(),
    price_tax_usual: p.taxes.taxUsual.toNumber(),
    price_tax: p.tax.toNumber(),
    taxes_priced_name: eachRow<Value>(rowsOf(job, "taxes"), "name", (row) => row.name!, ""),
    ...Object.fromEntries(
      (["amount", "reduced", "taxable", "tax"] as const).map((key) => [
        `taxes_priced_${key}`,
        ofClassesOf(job, (at) => p.taxes.classes[at]![key].toNumber()),
      ]),
    ),
    options_priced_name: eachRow<Value>(rowsOf(job, "options"), "name", (row) => row.name!, ""),
    options_priced_open: eachRow<Value>(
      rowsOf(job, "options"),
      "name",
      (row) => openSum(job, row).toNumber(),
      "",
    ),
    options_priced_total: eachRow<Value>(
      rowsOf(job, "options"),
      "name",
      (row) => totalWith(job, row).toNumber(),
      "",
    ),
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
  const classes = filledRows(job, "taxes", "name");
  /** Of a class in which nothing is, nothing is said. */
  const inClass = (what: (at: number) => Value): Value[] =>
    ofClassesOf(job, (at) => (p.taxes.classes[at]!.amount.isZero() ? "" : what(at)));
  const ofClasses: Value =
    p.taxes.ofClass.isZero() || p.taxes.taxUsual.isZero() ? "" : shown(p.taxes.taxUsual.toNumber());
  const isPriced = (row: Row): boolean =>
    isFilled(row, "quantity") &&
    (isFilled(row, "each") ||
      filledRows(job, "made", "option").some(({ option }) => isSame(option, row.name)));
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
    "Quote!A20": p.lines[4]!.isZero() ? "" : "Travel, access and permits",
    "Quote!A23": isOff ? "Discount" : "",
    "Quote!A24": isOff && word(job, "discount_reason") !== "" ? "Reason for the discount" : "",
    "Quote!A27": ofClasses === "" ? "" : "Of that at the usual rate",
    "Quote!A28": untaxed === "" ? "" : "Reason for no tax",
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
    quote_tax_usual: ofClasses,
    quote_tax_reason: untaxed,
    taxes_quoted_name: inClass((at) => classes[at]!.name!),
    taxes_quoted_taxable: inClass((at) => shown(p.taxes.classes[at]!.taxable.toNumber())),
    taxes_quoted_rate: inClass((at) => classes[at]!.rate!),
    taxes_quoted_tax: inClass((at) => shown(p.taxes.classes[at]!.tax.toNumber())),
    quote_total: shown(p.total.toNumber()),
    quote_currency: word(job, "site_currency"),
    options_quoted_name: eachRow<Value>(
      options,
      "name",
      (row) => (isFilled(row, "instead") ? `${row.name}, instead of ${row.instead}` : row.name!),
      "",
    ),
    options_quoted_sum: eachRow<Value>(
      options,
      "name",
      (row) => (isPriced(row) ? shown(cents(job, optionSum(job, row)).toNumber()) : ""),
      "",
    ),
    options_quoted_total: eachRow<Value>(
      options,
      "name",
      (row) => (isPriced(row) ? shown(totalWith(job, row).toNumber()) : ""),
      "",
    ),
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
