import type { JobInputs } from "../definition";
import { sheetDate } from "../sheetDate";

const PRACTICE = "common practice, no source";

/** What every quote is asked; the firm adds its own. */
const QUESTIONS = [
  "Is bonding in the price, and left to the local code and licensed practice?",
  "Is each supply or inserter named, with a mains outlet near it?",
  "Does the estimate's Checks sheet pass, levels and volts too?",
  "Are roof, ladder, overhead lines and lightning named as cautions?",
  "Are exclusions and assumptions listed on the quote?",
  "Are provisional sums named, and options kept out of the total?",
  "Are the prices of the parts still valid on the quote's date?",
  "Does the scope in words match outlets and tuners above?",
  "Is the site surveyed, or does the quote say that it is not?",
];

/** Ranges are the firm's own: only where the trade has a common figure is one given. */
const RANGES: readonly Readonly<Record<string, number | string>>[] = [
  { ratio: "price per outlet" },
  { ratio: "cable per outlet" },
  { ratio: "crew hours per outlet" },
  { ratio: "tuners per outlet", low: 1, high: 2, basis: PRACTICE },
  { ratio: "tuners per head unit", low: 1, high: 32, basis: "EN 50607: 32 bands at most" },
  { ratio: "materials, share of direct cost" },
  { ratio: "margin that the price has" },
];

export const quoteReviewStart: JobInputs = {
  fields: { review_tolerance: 0.05 },
  blocks: { ranges: RANGES, asked: QUESTIONS.map((question) => ({ question })) },
};

const OWN = "invented (demonstration)";
const answers = ["yes", "no", "yes", "yes", "yes", "yes", "yes", "yes", "not applicable"];

/** An invented quote with three slips: margin added as a markup, a line multiplied wrongly, a question open. */
export const quoteReviewExample: JobInputs = {
  fields: {
    review_tolerance: 0.05,
    review_job: "Boarding house, 18 outlets (demonstration)",
    review_quote: "D-31, revision 2",
    review_by: "demonstration",
    review_until: sheetDate(2026, 12, 18),
    review_reviewer: "demonstration",
    review_date: sheetDate(2026, 11, 9),
    review_outlets: 18,
    review_tuners: 22,
    review_bands: 16,
    review_heads: 2,
    review_cable: 390,
    review_materials: 1240,
    review_hours: 31,
    review_rate: 58,
    review_labour: 1798,
    review_contingency: 0.03,
    review_overhead: 0.12,
    review_cost: 3504.64,
    review_margin: 0.22,
    review_price: 4275.66,
    review_extras: 180,
    review_net: 4455.66,
    review_taxed: 4455.66,
    review_rate_tax: 0.2,
    review_tax: 891.13,
    review_total: 5346.79,
    review_remark: "Price again with the margin on the price; correct the splitters' line.",
  },
  blocks: {
    lines: [
      { part: "head unit, 16 bands", quantity: 2, each: 148, sum: 296 },
      { part: "indoor drop, reels of 100 m", quantity: 4, each: 52, sum: 208 },
      { part: "6-way splitter", quantity: 4, each: 14.8, sum: 49.2 },
      { part: "dish 0.9 m with mount", quantity: 1, each: 189, sum: 189 },
    ],
    ranges: RANGES.map((range) => ({
      ...range,
      ...(
        {
          "price per outlet": { low: 180, high: 320, basis: OWN },
          "cable per outlet": { low: 12, high: 35, basis: OWN },
          "crew hours per outlet": { low: 1, high: 2.2, basis: OWN },
          "materials, share of direct cost": { low: 0.3, high: 0.6, basis: OWN },
          "margin that the price has": { low: 0.2, high: 0.3, basis: OWN },
        } as Readonly<Record<string, object>>
      )[String(range.ratio)],
    })),
    asked: QUESTIONS.map((question, at) => ({ question, answer: answers[at]! })),
  },
};
