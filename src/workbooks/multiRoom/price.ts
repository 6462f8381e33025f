import { call, chain, f } from "../../formula/build";
import type { SheetDefinition } from "../definition";
import { whileFunctionsAnswer } from "../aboutNames";
import { blockPart, fieldsPart, spilledInto, worked } from "../parts";
import { countOf, sumOf } from "./nameKeys";
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
import { kindsPriced, price } from "./names/price";
import { rooms } from "./names/rooms";
import { site } from "./names/site";
import { discount, options, provisional } from "./names/terms";
import { roundedNatively } from "./roundedNatively";

const OF_LENGTHS = f`(${chain(
  "+",
  [rooms, branches, heads, feeders].map(({ variance }) => f`SUM(${variance})`),
)})`;
const OF_SITES = f`SUM(${sitesPriced.variance})`;
const OF_HOURS = f`${workTogether.deviation}^2`;

/** Of the total: lengths and site costs are taxed as materials, hours as labour, each only where the tax is on it. */
const TWO_DEVIATIONS = f`2*${price.factor}*(1-${discount.share})*SQRT((${OF_LENGTHS}+${OF_SITES})*(1+${site.tax}*(${site.tax_on}<>"labour only"))^2+${OF_HOURS}*(1+${site.tax}*(${site.tax_on}<>"materials only"))^2)`;

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
      worked(price.factor, f`IF(${price.direct}=0,0,${price.sell}/${price.direct})`),
      worked(price.per_outlet, f`IF(${count.outlets}=0,0,${price.sell}/${count.outlets})`),
    ]),
    fieldsPart("Expected total and its uncertainty", [
      worked(price.deviation, f`SQRT(${OF_LENGTHS}+${OF_SITES}+${OF_HOURS})`),
      worked(price.expected_extra, f`SUM(${rooms.expected_extra})*${price.factor}`),
      worked(
        price.expected,
        f`${price.total}+${price.expected_extra}*(1-${discount.share})*(1+${site.tax}*(${site.tax_on}<>"labour only"))`,
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
      // The one is multiplied by the other exactly, and rounded once.
      worked(price.lines, f`RIG.ROUNDMONEY(${price.parts},2,${site.rounding},${price.times})`, {
        spillRows: Object.keys(LINES).length,
      }),
      spilledInto(price.line_cable),
      spilledInto(price.line_fittings),
      spilledInto(price.line_labour),
      spilledInto(price.line_sites),
      spilledInto(price.line_provisional),
      spilledInto(price.line_options),
      // A sum of whole cents has no tie to decide, so the native function is safe here.
      worked(price.before, f`ROUND(SUM(${price.lines}),2)`),
      worked(
        price.discount,
        // The price has two decimals and a share six or fewer.
        roundedNatively(f`IF(${discount.share}="",${discount.sum},${price.before}*${discount.share})`),
      ),
      worked(price.net, f`ROUND(${price.before}-${price.discount},2)`),
      worked(
        price.taxable,
        roundedNatively(
          f`((${price.before}-${price.line_labour})*(${site.tax_on}<>"labour only")+${price.line_labour}*(${site.tax_on}<>"materials only"))*IF(${price.before}=0,1,${price.net}/${price.before})`,
        ),
      ),
      // A rate that is missing is no rate of 1, as a blank factor would be.
      // The call is the whole of it, so that an office copy can have a native formula in its place.
      worked(
        price.tax,
        f`RIG.ROUNDMONEY(${price.taxable},2,${site.rounding},IF(${site.tax}="",0,${site.tax}))`,
      ),
      worked(price.total, f`ROUND(${price.net}+${price.tax},2)`, { strong: true }),
    ]),
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
