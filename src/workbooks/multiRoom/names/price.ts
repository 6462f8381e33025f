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
    sum_passives: money("Splitters and taps"),
    sum_plates: money("Outlets"),
    sum_fittings: money("Fittings and sundries"),
    sum_labour: money("Labour"),
    sum_provisional: money("Provisional sums"),
    reception: money(LINES.reception),
    cable: money(LINES.cable),
    outlets: money(LINES.outlets),
    labour: money(LINES.labour),
    direct: money("Direct cost"),
    contingency: money("Contingency"),
    overhead: money("Overhead"),
    cost: money("Cost"),
    sell: money("Price of it"),
    profit: money("Margin in money"),
    markup: told("The same as markup on cost", { unit: "share of cost", format: "percent" }),
    factor: told("Price for each unit of direct cost", { format: "three" }),
    per_outlet: money("Price per outlet"),
    deviation: money("Deviation of the direct cost", {
      note: "Lengths and hours taken as independent; prices, quantities and whole reels as sure.",
    }),
    drift: money("Expected beside the lengths as entered", {
      note: "Mean of low, likely and high, less the likely; hours are in the price at their mean already.",
    }),
    expected: money("Expected total", {
      note: "With tax. The quote itself keeps to the lengths as entered.",
    }),
    low: money("Total, at least", { note: "Two deviations below and above: about 19 in 20." }),
    high: money("Total, at most"),
    part_reception: money(LINES.reception),
    part_cable: money(LINES.cable),
    part_outlets: money(LINES.outlets),
    part_labour: money(LINES.labour),
    part_provisional: money(LINES.provisional),
    part_options: money(LINES.options),
    times_reception: told(LINES.reception, { format: "three" }),
    times_cable: told(LINES.cable, { format: "three" }),
    times_outlets: told(LINES.outlets, { format: "three" }),
    times_labour: told(LINES.labour, { format: "three" }),
    times_provisional: told(LINES.provisional, { format: "three" }),
    times_options: told(LINES.options, { format: "three" }),
    lines: money(LINES.reception),
    line_cable: money(LINES.cable),
    line_outlets: money(LINES.outlets),
    line_labour: money(LINES.labour),
    line_provisional: money(LINES.provisional),
    line_options: money(LINES.options),
    before: money("Price before a discount"),
    discount: money("Discount", { note: "Of the price as printed; with its reason on Terms." }),
    net: money("Price without tax"),
    taxable: money("Taxable part", {
      note: "Provisional sums and options count as materials; a discount lowers each part by the same share.",
    }),
    tax: money("Tax"),
    total: money("Total"),
  },
  ["sections", "parts", "times"],
);

export const bykind = block("bykind", {
  name: result("Room kind", { width: 34 }),
  outlets: result("Outlets", { width: 30, format: "integer" }),
  price: result("Price without tax", { unit: "money", width: 14, format: "money" }),
});
