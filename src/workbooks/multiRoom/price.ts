import type { Field, SheetDefinition } from "../definition";

/** The lines of the quote: four sections of cost, then what is entered at its selling price. */
const LINES = [
  { key: "reception", label: "Head units and power supplies" },
  { key: "cable", label: "Cable, splitters and taps" },
  { key: "outlets", label: "Outlets, fittings and sundries" },
  { key: "labour", label: "Labour" },
  { key: "provisional", label: "Provisional sums" },
  { key: "options", label: "Options chosen" },
] as const;

const money = (name: string, label: string, formula: string, more: Partial<Field> = {}): Field => ({
  name,
  label,
  unit: "money",
  format: "money",
  formula,
  ...more,
});

const soldAt = (key: (typeof LINES)[number]["key"]): string =>
  key === "provisional"
    ? "SUM(provisional_sum)"
    : key === "options"
      ? "SUM(options_chosen_sum)"
      : `price_${key}*price_factor`;

export const price: SheetDefinition = {
  name: "Price",
  kind: "workings",
  intro:
    "From cost to price, for the office. The quote shows the rounded sums at the end; the rest stays here.",
  print: { orientation: "portrait" },
  parts: [
    {
      kind: "fields",
      heading: "Direct cost by section",
      name: "price_sections",
      fields: [
        money("price_reception", LINES[0].label, "SUM(buyunits_sum)+SUM(buysupplies_sum)"),
        money("price_cable", LINES[1].label, "SUM(buycables_sum)+SUM(buypassives_sum)"),
        money("price_outlets", LINES[2].label, "SUM(buyplates_sum)+SUM(buyfittings_sum)"),
        money("price_labour", LINES[3].label, "SUM(work_sum)"),
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
            'price_total+price_drift*(1+site_tax*(site_tax_on<>"labour only"))',
          ),
          note: "With tax. The quote itself keeps to the lengths as entered.",
        },
        {
          ...money(
            "price_low",
            "Total, at least",
            "price_expected-2*price_deviation*price_factor*(1+site_tax)",
          ),
          note: "Two deviations below and above: about 19 in 20.",
        },
        money("price_high", "Total, at most", "price_expected+2*price_deviation*price_factor*(1+site_tax)"),
      ],
    },
    {
      kind: "fields",
      heading: "Lines of the quote, unrounded",
      name: "price_parts",
      fields: LINES.map(({ key, label }) => money(`price_part_${key}`, label, soldAt(key))),
    },
    {
      kind: "fields",
      heading: "Rounded for the quote: the only rounded sums",
      fields: [
        ...LINES.map(({ key, label }, index): Field =>
          index === 0
            ? {
                ...money("price_lines", label, "RIG.ROUNDMONEY(price_parts,2,site_rounding)"),
                spillRows: LINES.length,
              }
            : { name: `price_line_${key}`, label, unit: "money", format: "money", spilled: true },
        ),
        // A sum of whole cents has no tie to decide, so the native function is safe here.
        money("price_net", "Price without tax", "ROUND(SUM(price_lines),2)"),
        {
          ...money(
            "price_taxable",
            "Taxable part",
            'ROUND((price_net-price_line_labour)*(site_tax_on<>"labour only")+price_line_labour*(site_tax_on<>"materials only"),2)',
          ),
          note: "Provisional sums and options count as materials.",
        },
        money("price_tax", "Tax", "RIG.ROUNDMONEY(price_taxable*site_tax,2,site_rounding)"),
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
          formula: 'IF(kinds_name="","",COUNTIF(rooms_kind,kinds_name))',
        },
        {
          key: "price",
          head: "Price without tax",
          unit: "money",
          width: 14,
          format: "money",
          formula:
            'IF(kinds_name="","",price_factor*(SUMIFS(rooms_own,rooms_kind,kinds_name)+bykind_outlets*(price_direct-SUM(rooms_own))/count_outlets))',
        },
      ],
    },
  ],
};
