import { block, fields, result, told } from "../../names";
import { LINES } from "./lines";
import { site } from "./site";

export const quote = fields("quote", {
  draft: told("Draft"),
  job: told("Job"),
  customer: told(site.customer.words.label),
  place: told(site.place.words.label),
  number: told("Number and revision"),
  date: told("Date", { format: "date" }),
  until: told("Valid until", { format: "date" }),
  by: told("Prepared by"),
  scope: told("Scope"),
  reception: told(LINES.reception, { format: "money" }),
  cable: told(LINES.cable, { format: "money" }),
  fittings: told(LINES.fittings, { format: "money" }),
  labour: told(LINES.labour, { format: "money" }),
  sites: told(LINES.sites, { format: "money" }),
  provisional: told(LINES.provisional, { format: "money" }),
  options: told(LINES.options, { format: "money" }),
  discount: told("Discount", { format: "money" }),
  discount_reason: told("Reason for the discount"),
  net: told("Price without tax", { format: "money" }),
  tax: told("Tax", { format: "money" }),
  tax_usual: told("Of that at the usual rate", { format: "money" }),
  tax_reason: told("Reason for no tax"),
  total: told("Total", { format: "money" }),
  currency: told(site.currency.words.label),
});

export const optionsQuoted = block("options_quoted", {
  name: result("Option", { width: 40 }),
  sum: result("Price without tax", { width: 38, format: "money" }),
  total: result("Total with it", { width: 14, format: "money" }),
  word: result("In the total", { width: 14 }),
});

export const taxesQuoted = block("taxes_quoted", {
  name: result("Tax class", { width: 40 }),
  taxable: result("Price without tax", { width: 38, format: "money" }),
  rate: result("Rate", { width: 14, format: "percent" }),
  tax: result("Tax", { width: 14, format: "money" }),
});

export const assumptionsQuoted = block("assumptions_quoted", {
  text: result("Assumed", { width: 40 }),
});

export const letterheadQuoted = block("letterhead_quoted", {
  line: result("Firm", { width: 40 }),
});

export const exclusionsQuoted = block("exclusions_quoted", {
  text: result("Not included", { width: 40 }),
});
