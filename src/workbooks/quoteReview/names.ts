import type { Named } from "../../formula/build";
import { anyNumber, anyText, day, nameIn, number, oneOf, whole } from "../asks";
import { asked, block, entry, fields, result, told, type NamedField } from "../names";
import { LINES_ARE } from "./typed/typedQuote";

const MOST = 100_000_000;
const sum = (what: string) => number(0, MOST, what);
/** A discount is less than nothing. */
const sumOrLess = (what: string) => number(-MOST, MOST, what);

/** What a figure comes to when it is worked again, how far it is off, and the word for that. */
export const beside = ({ name }: NamedField): Readonly<Record<"again" | "off" | "word", Named>> => ({
  again: { name: `${name}_again` },
  off: { name: `${name}_off` },
  word: { name: `${name}_word` },
});

export const ratioNames: Named = { name: "ratio_names" };

export const ratio = fields(
  "ratio",
  {
    per_outlet: told("price per outlet", { unit: "money", format: "two" }),
    cable_each: told("cable per outlet", { unit: "m or ft", format: "two" }),
    hours_each: told("crew hours per outlet", { unit: "h", format: "two" }),
    tuners_each: told("tuners per outlet", { unit: "", format: "two" }),
    tuners_head: told("tuners per head unit", { unit: "", format: "two" }),
    materials: told("materials, share of direct cost", {
      unit: "share",
      format: "two",
    }),
    margin: told("margin that the price has", { unit: "share", format: "two" }),
    extras: told("provisional sums and options, share of the net", {
      unit: "share",
      format: "two",
    }),
    cable_price: told("price of each m or ft of cable", { unit: "money", format: "two" }),
  },
  ["values"],
);

export const review = fields("review", {
  job: asked("Job", {}, anyText("Job or customer")),
  quote: asked(
    "Quote and revision",
    {},
    anyText("Number and revision of the quote", {
      example: "D-24, revision 1",
    }),
  ),
  by: asked("Made by", {}, anyText("Who made the quote")),
  until: asked("Valid until", { format: "date" }, day("The date until which the quote holds")),
  reviewer: asked("Reviewer", {}, anyText("Who reviews it")),
  date: asked("Reviewed on", { format: "date" }, day("The day of the review")),
  tolerance: asked(
    "Tolerance of sums ±",
    { unit: "money", format: "two" },
    number(0, 1000, "Rounding of the lines may make sums differ by so much", {
      example: "0.05",
    }),
  ),
  outlets: asked("Outlets", { unit: "pieces", format: "general" }, sum("Outlets of the quote")),
  tuners: asked(
    "Tuners",
    { unit: "pieces", format: "general" },
    whole(0, 1_000_000, "Tuners of all receivers; a recorder of two counts twice"),
  ),
  bands: asked(
    "User bands of a head unit",
    { unit: "bands", format: "general" },
    whole(1, 32, "User bands of the kind of head unit quoted"),
  ),
  heads: asked("Head units", { unit: "pieces", format: "general" }, sum("Head units of the quote")),
  cable: asked(
    "Cable in all",
    { unit: "m or ft", format: "general" },
    sum("All cable of the quote, in one unit"),
  ),
  materials: asked(
    "Materials, cost",
    { unit: "money", format: "money" },
    sum("Cost of all materials; not their selling price"),
  ),
  hours: asked("Crew hours", { unit: "h", format: "general" }, sum("Hours of the crew")),
  rate: asked("Rate", { unit: "money", format: "money" }, sum("Cost of an hour of the crew")),
  labour: asked("Labour, cost", { unit: "money", format: "money" }, sum("Cost of labour")),
  contingency: asked(
    "Contingency",
    { unit: "share", format: "percent" },
    number(0, 2, "Contingency as a share of direct cost"),
  ),
  overhead: asked(
    "Overhead",
    { unit: "share", format: "percent" },
    number(0, 2, "Overhead as a share of cost with contingency"),
  ),
  cost: asked("Cost", { unit: "money", format: "money" }, sum("Cost with contingency and overhead")),
  margin: asked(
    "Margin",
    { unit: "share", format: "percent" },
    number(0, 0.95, "Margin as a share of the price"),
  ),
  price: asked(
    "Selling price",
    { unit: "money", format: "money" },
    sum("Selling price of that cost, without tax, provisional sums and options"),
  ),
  extras: asked(
    "Provisional sums and options",
    { unit: "money", format: "money" },
    sumOrLess(
      "Both together, at their selling price, less a discount; below 0 where the discount is greater",
    ),
  ),
  net: asked("Price without tax", { unit: "money", format: "money" }, sum("Net sum of the quote")),
  taxed: asked(
    "Taxable part",
    { unit: "money", format: "money" },
    sum("The part that is taxed; the net sum where all of it is"),
  ),
  rate_tax: asked("Tax", { unit: "share", format: "percent" }, number(0, 1, "Tax rate")),
  tax: asked("Tax, sum", { unit: "money", format: "money" }, sum("Tax of the quote")),
  total: asked("Total", { unit: "money", format: "money" }, sum("Total of the quote")),
  slip: told("Was the margin added as a markup?"),
  lines_are: asked(
    "The lines above are",
    {},
    oneOf(LINES_ARE, "Whether they make the whole price, all materials at cost, or are a part of them"),
  ),
  head_price: asked(
    "Head unit, price of one",
    { unit: "money", format: "money" },
    sum("As its line has it; at it head units that are missing are counted"),
  ),
  cable_price: asked(
    "Cable, price of each m or ft",
    { unit: "money", format: "two" },
    sum("As its line has it, a reel divided by its length"),
  ),
  verdict: told("Ready to send?"),
  remark: asked("Remark", {}, anyText("What the maker of the quote should do")),
});

export const lines = block("lines", {
  part: entry("Part", { width: 46 }, anyText("A line of the quote")),
  quantity: entry(
    "Quantity",
    { width: 24, format: "general" },
    number(0, 1_000_000, "How many, or how many metres or reels"),
  ),
  each: entry("Unit cost", { unit: "money", width: 12, format: "money" }, sumOrLess("Cost of one")),
  again: result("Worked again", { unit: "money", width: 13, format: "money" }),
  sum: entry(
    "As quoted",
    { unit: "money", width: 12, format: "money" },
    sumOrLess("Sum of the line; of a discount below 0"),
  ),
  word: result("Word", { width: 10 }),
});

/** What the quote comes to without its slips, and what that is made of. */
export const corrected = fields("corrected", {
  lines: told("Lines worked again, more than quoted", { unit: "money", format: "money" }),
  twice: told("Lines entered twice, taken out", { unit: "money", format: "money" }),
  heads: told("Head units that are missing", { unit: "money", format: "money" }),
  net: told("Price without tax, corrected", { unit: "money", format: "money" }),
  tax: told("Tax, corrected", { unit: "money", format: "money" }),
  total: told("Total, corrected", { unit: "money", format: "money" }),
  off: told("More than the quoted total", { unit: "money", format: "money" }),
});

export const ranges = block("ranges", {
  ratio: entry("Ratio", { width: 46 }, nameIn(ratioNames, "A ratio of the sheet Ratios")),
  basis: entry(
    "Where the range comes from",
    { width: 24 },
    anyText("Your own jobs, or what the trade does", {
      example: "our last ten jobs",
    }),
  ),
  low: entry(
    "From",
    { width: 12, format: "two" },
    anyNumber("Least that is usual with you; blank for no range"),
  ),
  high: entry(
    "To",
    { width: 13, format: "two" },
    anyNumber("Most that is usual with you; blank for no range"),
  ),
  value: result("This quote", { width: 12, format: "two" }),
  word: result("Word", { width: 10 }),
});

export const questions = block("asked", {
  question: entry("Question", { width: 62 }, anyText("What must be settled")),
  answer: entry("Answer", { width: 24 }, oneOf(["yes", "no", "not applicable"], "Whether it is settled")),
  word: result("Word", { width: 12 }),
});
