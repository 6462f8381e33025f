import type { Field, SheetDefinition } from "../definition";
import { roundedNatively } from "./roundedNatively";
import { countOf, sumOf } from "./nameKeys";

/** The lines of the quote: four sections of cost, then what is entered at its selling price. */
const LINES = [
  { key: "reception", label: "Head units and power supplies" },
  { key: "cable", label: "Cable, splitters and taps" },
  { key: "outlets", label: "Outlets, fittings and sundries" },
  { key: "labour", label: "Labour" },
  { key: "provisional", label: "Provisional sums" },
  { key: "options", label: "Options chosen" },
] as const;

/** What is entered at its selling price. */
const SOLD_AS_IT_IS: Readonly<Record<string, string>> = {
  provisional: "price_sum_provisional",
  options: "SUM(options_chosen_sum)",
};

/** Of the total: lengths are taxed as materials, hours as labour, each only where the tax is on it. */
const TWO_DEVIATIONS =
  "2*price_factor*(1-discount_share)" +
  '*SQRT((SUM(rooms_variance)+SUM(branches_variance)+SUM(heads_variance))*(1+site_tax*(site_tax_on<>"labour only"))^2' +
  '+SUM(work_variance)*(1+site_tax*(site_tax_on<>"materials only"))^2)';

const money = (name: string, label: string, formula: string, more: Partial<Field> = {}): Field => ({
  name,
  label,
  unit: "money",
  format: "money",
  formula,
  ...more,
});

/** The lists that are added up, and the first name of each sum. */
const SUMS = [
  { key: "units", label: "Head units", of: "buyunits_sum" },
  { key: "supplies", label: "Power supplies and inserters", of: "buysupplies_sum" },
  { key: "cables", label: "Cable", of: "buycables_sum" },
  { key: "passives", label: "Splitters and taps", of: "buypassives_sum" },
  { key: "plates", label: "Outlets", of: "buyplates_sum" },
  { key: "fittings", label: "Fittings and sundries", of: "buyfittings_sum" },
  { key: "labour", label: "Labour", of: "work_sum" },
  { key: "provisional", label: "Provisional sums", of: "provisional_sum" },
] as const;

/** Fields of which the first has the formula that fills all. */
const spilledFields = (
  lines: readonly { readonly key: string; readonly label: string }[],
  name: string,
  one: string,
  formula: string,
): Field[] =>
  lines.map(({ key, label }, index): Field =>
    index === 0
      ? { ...money(name, label, formula), spillRows: lines.length }
      : { name: `${one}_${key}`, label, unit: "money", format: "money", spilled: true },
  );

export const price: SheetDefinition = {
  name: "Price",
  kind: "workings",
  intro:
    "From cost to price, for the office. The quote shows the rounded sums at the end; the rest stays here.",
  print: { orientation: "portrait" },
  parts: [
    {
      kind: "fields",
      heading: "What the lists come to, added exactly",
      fields: spilledFields(
        SUMS,
        "price_sums",
        "price_sum",
        `RIG.ADDMONEY(${SUMS.map(({ of }) => of).join(",")})`,
      ),
    },
    {
      kind: "fields",
      heading: "Direct cost by section",
      name: "price_sections",
      fields: [
        money("price_reception", LINES[0].label, "INDEX(price_sums,1)+price_sum_supplies"),
        money("price_cable", LINES[1].label, "price_sum_cables+price_sum_passives"),
        money("price_outlets", LINES[2].label, "price_sum_plates+price_sum_fittings"),
        money("price_labour", LINES[3].label, "price_sum_labour"),
      ],
    },
    {
      kind: "fields",
      heading: "Cost and price",
      fields: [
        money("price_direct", "Direct cost", "SUM(price_sections)"),
        money("price_contingency", "Contingency", "price_direct*site_contingency"),
        money("price_overhead", "Overhead", "(price_direct+price_contingency)*site_overhead"),
        money("price_cost", "Cost", "price_direct+price_contingency+price_overhead", { strong: true }),
        money("price_sell", "Price of it", "RIG.SELLPRICE(price_cost,site_margin)", { strong: true }),
        money("price_profit", "Margin in money", "price_sell-price_cost"),
        {
          name: "price_markup",
          label: "The same as markup on cost",
          unit: "share of cost",
          format: "percent",
          formula: "IF(price_cost=0,0,price_profit/price_cost)",
        },
        {
          name: "price_factor",
          label: "Price for each unit of direct cost",
          format: "three",
          formula: "IF(price_direct=0,0,price_sell/price_direct)",
        },
        money("price_per_outlet", "Price per outlet", "IF(count_outlets=0,0,price_sell/count_outlets)"),
      ],
    },
    {
      kind: "fields",
      heading: "How sure it is",
      fields: [
        {
          ...money(
            "price_deviation",
            "Deviation of the direct cost",
            "SQRT(SUM(rooms_variance)+SUM(branches_variance)+SUM(heads_variance)+SUM(work_variance))",
          ),
          note: "Lengths and hours taken as independent; prices, quantities and whole reels as sure.",
        },
        {
          ...money("price_drift", "Expected beside the lengths as entered", "SUM(rooms_drift)*price_factor"),
          note: "Mean of low, likely and high, less the likely; hours are in the price at their mean already.",
        },
        {
          ...money(
            "price_expected",
            "Expected total",
            'price_total+price_drift*(1-discount_share)*(1+site_tax*(site_tax_on<>"labour only"))',
          ),
          note: "With tax. The quote itself keeps to the lengths as entered.",
        },
        {
          ...money("price_low", "Total, at least", `price_expected-${TWO_DEVIATIONS}`),
          note: "Two deviations below and above: about 19 in 20.",
        },
        money("price_high", "Total, at most", `price_expected+${TWO_DEVIATIONS}`),
      ],
    },
    {
      kind: "fields",
      heading: "Lines of the quote: the cost of a section, or a sum at its selling price",
      name: "price_parts",
      fields: LINES.map(({ key, label }) =>
        money(`price_part_${key}`, label, SOLD_AS_IT_IS[key] ?? `price_${key}`),
      ),
    },
    {
      kind: "fields",
      heading: "Times: the price for each unit of direct cost, or 1",
      name: "price_times",
      fields: LINES.map(({ key, label }): Field => ({
        name: `price_times_${key}`,
        label,
        format: "three",
        formula: SOLD_AS_IT_IS[key] ? "1" : "price_factor",
      })),
    },
    {
      kind: "fields",
      heading: "Rounded for the quote: the only rounded sums",
      fields: [
        // The one is multiplied by the other exactly, and rounded once.
        ...spilledFields(
          LINES,
          "price_lines",
          "price_line",
          "RIG.ROUNDMONEY(price_parts,2,site_rounding,price_times)",
        ),
        // A sum of whole cents has no tie to decide, so the native function is safe here.
        money("price_before", "Price before a discount", "ROUND(SUM(price_lines),2)"),
        {
          ...money(
            "price_discount",
            "Discount",
            // The price has two decimals and a share six or fewer.
            roundedNatively('IF(discount_share="",discount_sum,price_before*discount_share)'),
          ),
          note: "Of the price as printed; with its reason on Terms.",
        },
        money("price_net", "Price without tax", "ROUND(price_before-price_discount,2)"),
        {
          ...money(
            "price_taxable",
            "Taxable part",
            roundedNatively(
              '((price_before-price_line_labour)*(site_tax_on<>"labour only")+price_line_labour*(site_tax_on<>"materials only"))*IF(price_before=0,1,price_net/price_before)',
            ),
          ),
          note: "Provisional sums and options count as materials; a discount lowers each part by the same share.",
        },
        // A rate that is missing is no rate of 1, as a blank factor would be.
        money(
          "price_tax",
          "Tax",
          // The call is the whole of it, so that an office copy can have a native formula in its place.
          'RIG.ROUNDMONEY(price_taxable,2,site_rounding,IF(site_tax="",0,site_tax))',
        ),
        money("price_total", "Total", "ROUND(price_net+price_tax,2)", { strong: true }),
      ],
    },
    {
      kind: "block",
      name: "bykind",
      heading: "Price by kind of room: its outlets' own parts and an equal share of all else",
      prepared: 5,
      mirrors: "kinds",
      columns: [
        { key: "name", head: "Room kind", width: 34, formula: 'IF(kinds_name="","",kinds_name)' },
        {
          key: "outlets",
          head: "Outlets",
          width: 30,
          format: "integer",
          formula: `IF(kinds_name="","",${countOf("rooms_kind", "kinds_name")})`,
        },
        {
          key: "price",
          head: "Price without tax",
          unit: "money",
          width: 14,
          format: "money",
          formula: `IF(kinds_name="","",price_factor*(${sumOf("rooms_own", "rooms_kind", "kinds_name")}+bykind_outlets*(price_direct-SUM(rooms_own))/count_outlets))`,
        },
      ],
    },
  ],
};
