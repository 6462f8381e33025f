/** What the firm's standards have beside what a job has: of the firm itself, of its suppliers and of what they offer. */
import { anyNumber, anyText, day, nameIn, number, oneOf, whole } from "../asks";
import { asked, block, entry, fields, result } from "../names";
import { keyed } from "../multiRoom/nameKeys";

export const standards = fields("standards", {
  firm: asked(
    "Firm",
    {},
    anyText("The name of the firm, as jobs tell it", { example: "Harbour Aerials", required: true }),
  ),
  edition: asked(
    "Edition",
    { format: "integer", note: "Count on when you change it: a job tells which edition it drew on." },
    whole(1, 9999, "The number of this edition", { example: "3", required: true }),
  ),
  date: asked(
    "Date of this edition",
    { format: "date", note: "Prices and offers must hold on this day." },
    day("The day of this edition", { example: "2026-11-02", required: true }),
  ),
  days: asked(
    "Days that a quote is valid",
    { unit: "days", format: "integer", note: "From these a new job gets “Quote valid until”." },
    whole(1, 730, "From the date of a quote to its last day", { example: "60", required: true }),
  ),
});

export const suppliers = block("suppliers", {
  name: entry("Supplier", { width: 30 }, anyText("The supplier, as offers and Parts name it")),
  currency: entry(
    "Currency",
    { width: 14 },
    anyText("The currency of its price list; blank is that of the standards", { example: "EUR" }),
  ),
  contact: entry("Contact", { width: 34 }, anyText("Who to ask, and how")),
  columns: entry(
    "How its list is read",
    { width: 60 },
    anyText("Which column of its price list is which; written when a list is read, and remembered here"),
  ),
});

export const OFFER_UNITS = ["piece", "m", "ft"] as const;

export const offers = block("offers", {
  part: entry("Part", { width: 34 }, anyText("A part by its name on Parts", { example: "4-way splitter" })),
  supplier: entry(
    "Supplier",
    { width: 20 },
    nameIn(suppliers.name, "A supplier of the sheet Suppliers", { required: true }),
  ),
  article: entry("Article", { width: 14 }, anyText("Its number in the price list", { example: "S-04" })),
  each: entry(
    "Price per unit",
    { unit: "money", width: 12, format: "three" },
    number(0, 1_000_000, "Price of one piece, metre or foot, without tax; blank where the pack is priced", {
      example: "0.39",
      zero: "reason",
    }),
  ),
  unit: entry(
    "Unit",
    { width: 10 },
    oneOf(
      OFFER_UNITS,
      "What is priced; blank is as Parts counts it: cables in the unit of length, else pieces",
    ),
  ),
  pack: entry(
    "In a pack",
    { unit: "units", width: 10, format: "general" },
    number(0.1, 100_000, "Units in a pack or on a reel; blank is 1", { example: "100" }),
  ),
  pack_price: entry(
    "Price per pack",
    { unit: "money", width: 12, format: "money" },
    number(0, 1_000_000, "Price of a whole pack or reel, without tax; where it is given it counts", {
      example: "39.00",
      zero: "reason",
    }),
  ),
  currency: entry(
    "Currency",
    { width: 12 },
    anyText("Its currency; blank is that of the standards", { example: "EUR" }),
  ),
  priced: entry(
    "Priced on",
    { width: 12, format: "date" },
    day("The day of the price list", { example: "2026-10-01" }),
  ),
  until: entry(
    "Valid until",
    { width: 12, format: "date" },
    day("The last day on which the price holds", { example: "2026-12-31", required: true }),
  ),
  pinned: entry(
    "Pinned",
    { width: 10 },
    oneOf(["yes", "no"], "yes: this offer is used, whatever the others cost; blank is no"),
  ),
  word: result("In use", { width: 14 }),
  dearer: result("Dearer than the one in use", { unit: "share", width: 12, format: "percent" }),
  price: result("Price as Parts has it", { unit: "money", width: 12, format: "money" }),
  now: result("Price on Parts", { unit: "money", width: 12, format: "money" }),
  one: result("Price of one", { unit: "money", width: 12, format: "three" }),
  amount: result("Priced on Parts by", { unit: "units", width: 12, format: "general" }),
  fits: result("Can be compared", { unit: "1 is yes", width: 12, format: "integer" }),
  stands: result("Stands for choice", { unit: "1 is yes", width: 12, format: "integer" }),
  leads: result("None is cheaper", { unit: "1 is yes", width: 12, format: "integer" }),
  key: keyed("Part"),
  words: entry(
    "In the supplier's words",
    { width: 44 },
    anyText("What its price list calls it; by it an offer without an article number is found again"),
  ),
});

/** What accepted quotes had, as it was learned from them: for the review, and for a person to read and to change. */
export const ranges = block("ranges", {
  what: entry("Figure", { width: 34 }, anyText("What was learned of", { example: "Price per m" })),
  of: entry("Of", { width: 34 }, anyText("The part, work or route; blank for a figure of the whole job")),
  unit: entry("Unit", { width: 14 }, anyText("Its unit; money has its currency", { example: "EUR per m" })),
  low: entry(
    "Lowest usual",
    { width: 12, format: "general" },
    anyNumber("The least that a quote usually has; change it as you see fit", { example: "0.36" }),
  ),
  middle: entry(
    "Middle",
    { width: 12, format: "general" },
    anyNumber("Half of the quotes had more, half less", { example: "0.38" }),
  ),
  high: entry(
    "Highest usual",
    { width: 12, format: "general" },
    anyNumber("The most that a quote usually has; change it as you see fit", { example: "0.41" }),
  ),
  quotes: entry(
    "From quotes",
    { width: 10, format: "integer" },
    whole(
      0,
      100_000,
      "From how many quotes it comes; under 3 nothing is held to it, under 5 nothing is doubted",
    ),
  ),
  learned: entry("Learned on", { width: 12, format: "date" }, day("The day on which it was learned")),
  keep: entry(
    "Kept",
    { width: 8 },
    oneOf(["yes", "no"], "yes: this row is yours, and learning leaves it as it is; blank is no"),
  ),
  known: entry(
    "Known as",
    { width: 24 },
    anyText("The input's name in a job; the review finds the cell by it"),
  ),
});
