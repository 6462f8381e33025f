import { anyText, nameIn, number, oneOf } from "../../asks";
import { asked, block, entry, fields, result } from "../../names";
import { keyed } from "../nameKeys";
import { taxes } from "./site";

const taxClass = entry(
  "Tax class",
  { width: 14 },
  nameIn(taxes.name, "A tax class of the sheet Site; blank is the usual tax, as of materials"),
);

export const options = block("options", {
  name: entry("Option", { width: 60 }, anyText("What the customer may add, or have instead")),
  quantity: entry(
    "How many",
    { width: 10, format: "general" },
    number(0.01, 100_000, "How many of it", { example: "2", required: true }),
  ),
  each: entry(
    "Price each",
    { unit: "money", width: 12, format: "money" },
    number(
      -10_000_000,
      10_000_000,
      "Selling price of one, without tax; what it is made of below is added to it, and it may then be blank; less than 0 for what is cheaper",
      { example: "35", zero: "reason" },
    ),
  ),
  chosen: entry(
    "Chosen",
    { width: 10 },
    oneOf(["yes", "no"], "Whether the customer takes it", { required: true }),
  ),
  instead: entry(
    "What it replaces",
    { width: 24 },
    anyText("For an alternate: what of the quote it replaces; blank for what is added", {
      example: "single outlet",
    }),
  ),
  tax: taxClass,
  sum: result("Sum", { unit: "money", width: 12, format: "money" }),
  chosen_sum: result("In the price", { unit: "money", width: 12, format: "money" }),
  made: result("Direct cost of what it is made of", { unit: "money", width: 14, format: "money" }),
  tax_key: keyed("Tax class"),
  instead_key: keyed("What it replaces"),
  pair_key: result("What it replaces with its tax class, as counted", { width: 12 }),
});

/** What options and alternates are made of: a row for each part and for each kind of work. */
export const made = block("made", {
  option: entry(
    "Option or alternate",
    { width: 60 },
    nameIn(options.name, "The option or alternate that this is a part of"),
  ),
  part: entry(
    "Part or work",
    { width: 30 },
    anyText("A part by its name on Parts, or what you price here", { example: "outlet with radio" }),
  ),
  quantity: entry(
    "Quantity",
    { width: 10, format: "general" },
    number(
      -100_000,
      100_000,
      "Pieces of it, or metres or feet of a cable, for one of the option; less than 0 for what is left out instead",
      { example: "12" },
    ),
  ),
  each: entry(
    "Cost each",
    { unit: "money", width: 12, format: "money" },
    number(0, 10_000_000, "What one costs you; blank is as on Parts", { example: "6.40", zero: "note" }),
  ),
  hours: entry(
    "Crew hours",
    { unit: "h", width: 10, format: "two" },
    number(-10_000, 10_000, "Hours of the crew for one of the option; less than 0 for hours that are saved", {
      example: "1.5",
    }),
  ),
  one: result("Cost of one", { unit: "money", width: 12, format: "three" }),
  lacks: result("Has no cost", { unit: "1 is yes", width: 10, format: "integer" }),
  cost: result("Direct cost", { unit: "money", width: 12, format: "money" }),
  key: keyed("Option or alternate"),
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
  tax: taxClass,
  tax_key: keyed("Tax class"),
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
