import type { SheetDefinition } from "../definition";

export const price: SheetDefinition = {
  name: "Price",
  kind: "workings",
  intro:
    "From cost to price, for the office: nothing here is rounded, and nothing here goes to the customer.",
  print: { orientation: "portrait" },
  parts: [
    {
      kind: "fields",
      heading: "Direct cost by section",
      name: "price_sections",
      fields: [
        {
          name: "price_reception",
          label: "Head units and power supplies",
          unit: "money",
          format: "money",
          formula: "SUM(buyunits_sum)+SUM(buysupplies_sum)",
        },
        {
          name: "price_cable",
          label: "Cable, splitters and taps",
          unit: "money",
          format: "money",
          formula: "SUM(buycables_sum)+SUM(buypassives_sum)",
        },
        {
          name: "price_outlets",
          label: "Outlets, fittings and sundries",
          unit: "money",
          format: "money",
          formula: "SUM(buyplates_sum)+SUM(buyfittings_sum)",
        },
        { name: "price_labour", label: "Labour", unit: "money", format: "money", formula: "SUM(work_sum)" },
      ],
    },
    {
      kind: "fields",
      heading: "Cost and price",
      fields: [
        {
          name: "price_direct",
          label: "Direct cost",
          unit: "money",
          format: "money",
          formula: "SUM(price_sections)",
        },
        {
          name: "price_contingency",
          label: "Contingency",
          unit: "money",
          format: "money",
          formula: "price_direct*site_contingency",
        },
        {
          name: "price_overhead",
          label: "Overhead",
          unit: "money",
          format: "money",
          formula: "(price_direct+price_contingency)*site_overhead",
        },
        {
          name: "price_cost",
          label: "Cost",
          unit: "money",
          format: "money",
          strong: true,
          formula: "price_direct+price_contingency+price_overhead",
        },
        {
          name: "price_sell",
          label: "Price without tax",
          unit: "money",
          format: "money",
          strong: true,
          formula: "RIG.SELLPRICE(price_cost,site_margin)",
        },
        {
          name: "price_profit",
          label: "Margin in money",
          unit: "money",
          format: "money",
          formula: "price_sell-price_cost",
        },
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
        {
          name: "price_per_outlet",
          label: "Price per outlet",
          unit: "money",
          format: "money",
          formula: "IF(count_outlets=0,0,price_sell/count_outlets)",
        },
      ],
    },
  ],
};
