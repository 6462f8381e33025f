import { block, fields, result, told } from "../../names";
import { LINES } from "./lines";

const money = (label: string, more: { readonly note?: string } = {}) =>
  told(label, { unit: "money", format: "money", ...more });

export const price = fields(
  "price",
  {
    sums: money("Head units"),
    sum_supplies: money("Power supplies and inserters"),
    sum_cables: money("Cable"),
    sum_passives: money("Devices"),
    sum_plates: money("Outlets"),
    sum_feeds: money("Feeds"),
    sum_resistors: money("End resistors"),
    sum_fittings: money("Fittings and sundries"),
    sum_labour: money("Labour by kind of work"),
    sum_routes: money("Labour by route"),
    sum_types: money("Extra work of room types"),
    sum_sites: money(LINES.sites),
    sum_provisional: money("Provisional sums"),
    reception: money(LINES.reception),
    cable: money(LINES.cable),
    fittings: money(LINES.fittings),
    labour: money(LINES.labour),
    sites: money(LINES.sites),
    direct: money("Direct cost"),
    contingency: money("Contingency"),
    overhead: money("Overhead"),
    cost: money("Cost"),
    sell: money("Selling price"),
    profit: money("Margin in money"),
    markup: told("Equivalent markup", { unit: "share of cost", format: "percent" }),
    factor: told("Selling price for each unit of direct cost", { format: "three" }),
    per_outlet: money("Price per outlet"),
    deviation: money("Standard deviation of the direct cost", {
      note: "Errors of lengths, of site costs and of each line of work are taken as independent, those that all labour has in common (Crew) as one; prices, quantities, days and whole reels as exact.",
    }),
    expected_extra: money("Expected extra price of lengths", {
      note: "Mean of shortest, likely and longest, less the likely, unless runs are cut at their longest; hours and site costs are in the price at their mean already.",
    }),
    expected: money("Expected total", {
      note: "With tax. The quote itself keeps to the lengths as entered.",
    }),
    low: money("Expected total less its uncertainty", { note: "Uncertainty ± about 95 %." }),
    high: money("Expected total plus its uncertainty"),
    part_reception: money(LINES.reception),
    part_cable: money(LINES.cable),
    part_fittings: money(LINES.fittings),
    part_labour: money(LINES.labour),
    part_sites: money(LINES.sites),
    part_provisional: money(LINES.provisional),
    part_options: money(LINES.options),
    times_reception: told(LINES.reception, { format: "three" }),
    times_cable: told(LINES.cable, { format: "three" }),
    times_fittings: told(LINES.fittings, { format: "three" }),
    times_labour: told(LINES.labour, { format: "three" }),
    times_sites: told(LINES.sites, { format: "three" }),
    times_provisional: told(LINES.provisional, { format: "three" }),
    times_options: told(LINES.options, { format: "three" }),
    lines: money(LINES.reception),
    line_cable: money(LINES.cable),
    line_fittings: money(LINES.fittings),
    line_labour: money(LINES.labour),
    line_sites: money(LINES.sites),
    line_provisional: money(LINES.provisional),
    line_options: money(LINES.options),
    decimals: told("Decimals of money", { format: "integer" }),
    before: money("Price before the discount"),
    discount: money("Discount", { note: "Of the price as printed; with its reason on Terms." }),
    net: money("Price without tax"),
    of_class: money("Of the price before the discount: in a tax class"),
    usual: money("Of the price before the discount: in none"),
    usual_labour: money("Of that, labour"),
    usual_taxed: money("Of that, taxed at the usual rate"),
    taxable: money("Taxable at the usual rate", {
      note: "Travel, access and permits, provisional sums and options count as materials; a discount lowers each part by the same share.",
    }),
    tax_usual: money("Tax at the usual rate"),
    tax: money("Tax"),
    total: money("Total"),
  },
  ["sections", "parts", "times"],
);

/** Tax by class. */
export const taxesPriced = block("taxes_priced", {
  name: result("Tax class", { width: 34 }),
  amount: result("Before the discount", { unit: "money", width: 30, format: "money" }),
  reduced: result("After the discount", { unit: "money", width: 14, format: "money" }),
  taxable: result("Taxable", { unit: "money", width: 12, format: "money" }),
  tax: result("Tax", { unit: "money", width: 12, format: "money" }),
});

/** What the customer would pay with each option or alternate. */
export const optionsPriced = block("options_priced", {
  name: result("Option or alternate", { width: 34 }),
  open: result("Not yet in the price", { unit: "money", width: 30, format: "money" }),
  total: result("Total with it", { unit: "money", width: 14, format: "money" }),
});

export const kindsPriced = block("kinds_priced", {
  name: result("Price group", { width: 34 }),
  outlets: result("Outlets", { width: 30, format: "integer" }),
  price: result("Price without tax", { unit: "money", width: 14, format: "money" }),
});
