import { call, chain, f, type Formula, type Named } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { whileFunctionsAnswer } from "../aboutNames";
import { blockPart, fieldsPart, spilledInto, worked } from "../parts";
import { countOf, escaped, sought, sumOf } from "./nameKeys";
import { branches } from "./names/branches";
import { feeders } from "./names/dishes";
import { heads } from "./names/headUnits";
import { kinds, routeWork, sitesPriced, typeWork, work, workTogether } from "./names/labour";
import { LINES } from "./names/lines";
import {
  cablesBought,
  feedsBought,
  fittingsBought,
  passivesBought,
  platesBought,
  resistorsBought,
  suppliesBought,
  unitsBought,
  count,
} from "./names/materials";
import { kindsPriced, optionsPriced, price, taxesPriced } from "./names/price";
import { rooms } from "./names/rooms";
import { site, taxClass, taxes } from "./names/site";
import { discount, options, provisional } from "./names/terms";
import { roundedNatively } from "./roundedNatively";
import { BY_RATES } from "./byRates";
import { CLASSES_UNKNOWN, inClasses, ON_LINES } from "./taxes";

/** Cut at their longest, runs have been bought so: then nothing is left to doubt. */
const NOT_LONGEST = f`(${site.cut_at}<>"longest")`;
const OF_LENGTHS = f`(${chain(
  "+",
  [rooms, branches, heads, feeders].map(({ variance }) => f`SUM(${variance})`),
)})*${NOT_LONGEST}`;
const OF_SITES = f`SUM(${sitesPriced.variance})`;
const OF_HOURS = f`${workTogether.deviation}^2`;

/** Of the total: lengths are taxed as cable, hours as labour, site costs as their own line. */
const TWO_DEVIATIONS = f`2*${price.factor}*(1-${discount.share})*SQRT(${OF_LENGTHS}*(1+${ON_LINES.cable})^2+${OF_SITES}*(1+${ON_LINES.sites})^2+${OF_HOURS}*(1+${ON_LINES.labour})^2)`;

/** Each line of the quote, but those whose rows have classes of their own. */
const LINES_PRICED = {
  reception: f`INDEX(${price.lines},1)`,
  cable: price.line_cable,
  fittings: price.line_fittings,
  labour: price.line_labour,
  sites: price.line_sites,
};
/** What a discount leaves of each unit of price. */
const LEFT = f`IF(${price.before}=0,1,${price.net}/${price.before})`;
/** The cent or two by which rounded parts miss the price without tax. */
const ODD_CENTS = f`ROUND(${price.net}-SUM(${taxesPriced.reduced}),${price.decimals})`;

/** How many options are chosen whose key is so. */
const chosenWith = (keys: Named, key: Formula): Formula =>
  f`COUNTIFS(${keys},${key},${options.chosen},"yes")`;
/** The lists that are added up, in the order of their sums. */
const SUMS = [
  unitsBought,
  suppliesBought,
  cablesBought,
  passivesBought,
  platesBought,
  feedsBought,
  resistorsBought,
  fittingsBought,
  work,
  routeWork,
  typeWork,
  sitesPriced,
  provisional,
].map(({ sum }) => sum);

export const priceSheet: SheetDefinition = {
  name: "Price",
  kind: "workings",
  intro:
    "From cost to price, for the office. The quote shows the rounded sums at the end; the rest stays here.",
  print: { orientation: "portrait" },
  parts: [
    fieldsPart("What the lists come to, added exactly", [
      worked(price.sums, call("RIG.ADDMONEY", ...SUMS), { spillRows: SUMS.length }),
      spilledInto(price.sum_supplies),
      spilledInto(price.sum_cables),
      spilledInto(price.sum_passives),
      spilledInto(price.sum_plates),
      spilledInto(price.sum_feeds),
      spilledInto(price.sum_resistors),
      spilledInto(price.sum_fittings),
      spilledInto(price.sum_labour),
      spilledInto(price.sum_routes),
      spilledInto(price.sum_types),
      spilledInto(price.sum_sites),
      spilledInto(price.sum_provisional),
    ]),
    fieldsPart(
      "Direct cost by section",
      [
        worked(price.reception, f`INDEX(${price.sums},1)+${price.sum_supplies}+${price.sum_feeds}`),
        worked(
          price.cable,
          whileFunctionsAnswer(f`${price.sum_cables}+${price.sum_passives}+${price.sum_resistors}`),
        ),
        worked(price.fittings, whileFunctionsAnswer(f`${price.sum_plates}+${price.sum_fittings}`)),
        worked(
          price.labour,
          whileFunctionsAnswer(f`${price.sum_labour}+${price.sum_routes}+${price.sum_types}`),
        ),
        worked(price.sites, whileFunctionsAnswer(f`${price.sum_sites}`)),
      ],
      { together: price.sections },
    ),
    fieldsPart("Cost and price", [
      worked(price.direct, f`SUM(${price.sections})`),
      worked(price.contingency, f`${price.direct}*${site.contingency}`),
      worked(price.overhead, f`(${price.direct}+${price.contingency})*${site.overhead}`),
      worked(price.cost, f`${price.direct}+${price.contingency}+${price.overhead}`, { strong: true }),
      worked(price.sell, f`RIG.SELLPRICE(${price.cost},${site.margin})`, { strong: true }),
      worked(price.profit, f`${price.sell}-${price.cost}`),
      worked(price.markup, f`IF(${price.cost}=0,0,${price.profit}/${price.cost})`),
      // Also of a quote in which nothing but options has a cost.
      worked(price.factor, f`IF(${price.direct}=0,${BY_RATES},${price.sell}/${price.direct})`),
      worked(price.per_outlet, f`IF(${count.outlets}=0,0,${price.sell}/${count.outlets})`),
    ]),
    fieldsPart("Expected total and its uncertainty", [
      worked(price.deviation, f`SQRT(${OF_LENGTHS}+${OF_SITES}+${OF_HOURS})`),
      worked(price.expected_extra, f`SUM(${rooms.expected_extra})*${price.factor}*${NOT_LONGEST}`),
      worked(
        price.expected,
        f`${price.total}+${price.expected_extra}*(1-${discount.share})*(1+${ON_LINES.cable})`,
      ),
      worked(price.low, f`${price.expected}-${TWO_DEVIATIONS}`),
      worked(price.high, f`${price.expected}+${TWO_DEVIATIONS}`),
    ]),
    fieldsPart(
      "Lines of the quote: the cost of a section, or a sum at its selling price",
      [
        worked(price.part_reception, f`${price.reception}`),
        worked(price.part_cable, f`${price.cable}`),
        worked(price.part_fittings, f`${price.fittings}`),
        worked(price.part_labour, f`${price.labour}`),
        worked(price.part_sites, f`${price.sites}`),
        worked(price.part_provisional, f`${price.sum_provisional}`),
        worked(price.part_options, f`SUM(${options.chosen_sum})`),
      ],
      { together: price.parts },
    ),
    fieldsPart(
      "Times: the selling price for each unit of direct cost, or 1",
      [
        worked(price.times_reception, f`${price.factor}`),
        worked(price.times_cable, f`${price.factor}`),
        worked(price.times_fittings, f`${price.factor}`),
        worked(price.times_labour, f`${price.factor}`),
        worked(price.times_sites, f`${price.factor}`),
        worked(price.times_provisional, f`1`),
        worked(price.times_options, f`1`),
      ],
      { together: price.times },
    ),
    fieldsPart("Rounded for the quote: the only rounded sums", [
      worked(price.decimals, f`IF(${site.decimals}="",2,${site.decimals})`),
      // The one is multiplied by the other exactly, and rounded once.
      worked(
        price.lines,
        f`RIG.ROUNDMONEY(${price.parts},${price.decimals},${site.rounding},${price.times})`,
        {
          spillRows: Object.keys(LINES).length,
        },
      ),
      spilledInto(price.line_cable),
      spilledInto(price.line_fittings),
      spilledInto(price.line_labour),
      spilledInto(price.line_sites),
      spilledInto(price.line_provisional),
      spilledInto(price.line_options),
      // A sum of whole cents has no tie to decide, so the native function is safe here.
      worked(price.before, f`ROUND(SUM(${price.lines}),${price.decimals})`),
      worked(
        price.discount,
        // The price has two decimals and a share six or fewer.
        roundedNatively(f`IF(${discount.share}="",${discount.sum},${price.before}*${discount.share})`),
      ),
      worked(price.net, f`ROUND(${price.before}-${price.discount},${price.decimals})`),
      // Without the rate of a class nobody knows the tax.
      worked(
        price.of_class,
        f`IF(${CLASSES_UNKNOWN}>0,NA(),ROUND(SUM(${taxesPriced.amount}),${price.decimals}))`,
      ),
      worked(price.usual, f`ROUND(${price.before}-${price.of_class},${price.decimals})`),
      worked(price.usual_labour, f`${price.line_labour}*(${taxClass.labour}="")`),
      worked(
        price.usual_taxed,
        f`ROUND((${price.usual}-${price.usual_labour})*(${site.tax_on}<>"labour only")+${price.usual_labour}*(${site.tax_on}<>"materials only"),${price.decimals})`,
      ),
      // Where all of it is taxed, it takes the odd cents, so that what is taxed is what is paid.
      worked(
        price.taxable,
        f`IF(${price.usual_taxed}=${price.usual},IF(${price.usual}=0,0,${ODD_CENTS}),${roundedNatively(f`${price.usual_taxed}*${LEFT}`)})`,
      ),
      // A rate that is missing is no rate of 1, as a blank factor would be.
      // The call is the whole of it, so that an office copy can have a native formula in its place.
      worked(
        price.tax_usual,
        f`RIG.ROUNDMONEY(${price.taxable},${price.decimals},${site.rounding},IF(${site.tax}="",0,${site.tax}))`,
      ),
      worked(price.tax, f`ROUND(${price.tax_usual}+SUM(${taxesPriced.tax}),${price.decimals})`),
      worked(price.total, f`ROUND(${price.net}+${price.tax},${price.decimals})`, { strong: true }),
    ]),
    blockPart(taxesPriced, {
      heading: "Tax by class",
      prepared: 3,
      mirrors: taxes,
      formulas: {
        name: f`IF(${taxes.name}="","",${taxes.name})`,
        amount: f`IF(${taxes.name}="","",ROUND(${inClasses(LINES_PRICED)},${price.decimals}))`,
        reduced: f`IF(${taxes.name}="","",${roundedNatively(f`${taxesPriced.amount}*${LEFT}`)})`,
        // Where nothing is taxed otherwise, the greatest takes the odd cents.
        taxable: f`IF(${taxes.name}="","",${taxesPriced.reduced}+(${price.usual}=0)*(IFERROR(MATCH(MAX(${taxesPriced.amount}),${taxesPriced.amount},0),0)=ROW(${taxes.name})-MIN(ROW(${taxes.name}))+1)*${ODD_CENTS})`,
        // A rate that is missing is no rate of 1 here either.
        tax: f`RIG.ROUNDMONEY(${taxesPriced.taxable},${price.decimals},${site.rounding},IF(${taxes.rate}="",0,${taxes.rate}))`,
      },
    }),
    blockPart(optionsPriced, {
      heading: "What is paid with each option or alternate, in place of the total above",
      prepared: 5,
      mirrors: options,
      formulas: {
        name: f`IF(${options.name}="","",${options.name})`,
        // In place of another for the same thing that is chosen, which goes out; one of another class is not worked out here.
        open: f`IF(${options.name}="","",IF(${options.chosen}="yes",0,${options.sum}-IF(${options.instead}="",0,IF(${chosenWith(options.instead_key, sought(options.instead))}>${chosenWith(options.pair_key, escaped(options.pair_key))},NA(),${sumOf(options.chosen_sum, options.instead_key, options.instead)}))))`,
        total: call(
          "RIG.TOTALSWITH",
          optionsPriced.open,
          taxes.name,
          taxes.rate,
          taxesPriced.amount,
          price.usual_taxed,
          f`${price.usual}-${price.usual_taxed}`,
          site.tax,
          options.tax,
          site.tax_on,
          discount.sum,
          discount.share,
          site.rounding,
          price.decimals,
        ),
      },
    }),
    blockPart(kindsPriced, {
      heading: "Price by price group: its outlets' own parts and an equal share of all else",
      prepared: 5,
      mirrors: kinds,
      formulas: {
        name: f`IF(${kinds.name}="","",${kinds.name})`,
        outlets: f`IF(${kinds.name}="","",${countOf(rooms.kind_key, kinds.name)})`,
        price: f`IF(${kinds.name}="","",${price.factor}*(${sumOf(rooms.parts_cost, rooms.kind_key, kinds.name)}+${kindsPriced.outlets}*(${price.direct}-SUM(${rooms.parts_cost}))/${count.outlets}))`,
      },
    }),
  ],
};
