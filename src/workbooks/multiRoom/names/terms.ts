import { anyText, number, oneOf } from "../../asks";
import { asked, block, entry, fields, result } from "../../names";

export const options = block("options", {
  name: entry("Option", { width: 60 }, anyText("What the customer may add")),
  quantity: entry(
    "How many",
    { width: 10, format: "general" },
    number(0.01, 100_000, "How many of it", { example: "2", required: true }),
  ),
  each: entry(
    "Price each",
    { unit: "money", width: 12, format: "money" },
    number(0, 10_000_000, "Selling price of one, without tax", {
      example: "35",
      required: true,
      zero: "reason",
    }),
  ),
  chosen: entry(
    "Chosen",
    { width: 10 },
    oneOf(["yes", "no"], "Whether the customer takes it", { required: true }),
  ),
  sum: result("Sum", { unit: "money", width: 12, format: "money" }),
  chosen_sum: result("In the price", { unit: "money", width: 12, format: "money" }),
});

export const provisional = block("provisional", {
  name: entry("Provisional work", { width: 60 }, anyText("Work that cannot be priced yet")),
  sum: entry(
    "Sum",
    { unit: "money", width: 12, format: "money" },
    number(0, 10_000_000, "The sum put in for it, without tax", {
      example: "150",
      required: true,
      zero: "reason",
    }),
  ),
});

export const discount = fields("discount", {
  sum: asked(
    "Discount as a sum",
    { unit: "money", format: "money" },
    number(0.01, 10_000_000, "The sum taken off the price without tax; blank for none", { example: "250" }),
  ),
  share: asked(
    "Discount as a share",
    { unit: "share of price", format: "percent" },
    number(0.0001, 0.9, "The share taken off the price without tax; blank for none", { example: "5%" }),
  ),
  reason: asked(
    "Reason for the discount",
    {},
    anyText("Why there is a discount", { example: "three houses ordered together" }),
  ),
});

export const assumptions = block("assumptions", {
  text: entry("Assumed", { width: 60 }, anyText("What the price takes for granted")),
});

export const exclusions = block("exclusions", {
  text: entry("Not included", { width: 60 }, anyText("What the price leaves out")),
});

export const letterhead = block("letterhead", {
  line: entry(
    "Line",
    { width: 60 },
    anyText("A line of the letterhead: name, street, town, telephone", { example: "12 Quay Street" }),
  ),
});

export const onpurpose = block("onpurpose", {
  what: entry(
    "What is 0",
    { width: 60 },
    anyText("The part, work, option or figure that is meant to be 0, by its name on its own sheet", {
      example: "weather cabinet",
    }),
  ),
  why: entry(
    "Why",
    { width: 30 },
    anyText("Who supplies it, or why it is 0", { example: "supplied by the customer", required: true }),
  ),
});
