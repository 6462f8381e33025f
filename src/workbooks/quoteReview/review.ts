import type { Block, Field, Fields, InputRule, SheetDefinition } from "../definition";
import { writingField } from "../typed/writingField";

const SUM: InputRule["rule"] = { kind: "number", min: 0, max: 100_000_000 };
const SHARE: InputRule["rule"] = { kind: "number", min: 0, max: 2 };

/** A figure of the quote; where it can be worked again, beside it what that gives and how far it is off. */
function figure(
  name: string,
  label: string,
  unit: string,
  what: string,
  again?: string,
  rule: InputRule["rule"] = SUM,
): Field {
  const format = unit === "money" ? "money" : unit === "share" ? "percent" : "general";
  const field: Field = { name: `review_${name}`, label, unit, format, input: { what, rule } };
  const off = `review_${name}-review_${name}_again`;
  return again === undefined
    ? field
    : {
        ...field,
        beside: [
          { key: "again", format, formula: again },
          {
            key: "off",
            format: unit === "money" ? "money" : "two",
            formula: `IF(${field.name}="","",${off})`,
          },
          {
            key: "word",
            formula: `IF(${field.name}="","missing",IF(ABS(${off})<=review_tolerance,"ok","look"))`,
            verdict: true,
          },
        ],
      };
}

const which: Fields = {
  kind: "fields",
  heading: "The quote and its review",
  fields: [
    { name: "review_job", label: "Job", input: { what: "Job or customer", rule: { kind: "text" } } },
    {
      name: "review_quote",
      label: "Quote and revision",
      input: {
        what: "Number and revision of the quote",
        example: "D-24, revision 1",
        rule: { kind: "text" },
      },
    },
    { name: "review_by", label: "Made by", input: { what: "Who made the quote", rule: { kind: "text" } } },
    {
      name: "review_until",
      label: "Valid until",
      format: "date",
      input: { what: "The date until which the quote holds", rule: { kind: "date" } },
    },
    { name: "review_reviewer", label: "Reviewer", input: { what: "Who reviews it", rule: { kind: "text" } } },
    {
      name: "review_date",
      label: "Reviewed on",
      format: "date",
      input: { what: "The day of the review", rule: { kind: "date" } },
    },
    // A note would make a column of its own, and the page too wide to read.
    { ...writingField, note: undefined },
  ],
};

const figures: Fields = {
  kind: "fields",
  heading: "Figures as the quote has them",
  besideHeads: ["worked again", "off by", "word"],
  fields: [
    {
      name: "review_tolerance",
      label: "Sums may differ by",
      unit: "money",
      format: "two",
      input: {
        what: "Rounding of the lines may make sums differ by so much",
        example: "0.05",
        rule: { kind: "number", min: 0, max: 1000 },
      },
    },
    figure("outlets", "Outlets", "pieces", "Outlets of the quote"),
    figure(
      "tuners",
      "Tuners",
      "pieces",
      "Tuners of all receivers; a recorder of two counts twice",
      undefined,
      {
        kind: "number",
        min: 0,
        max: 1_000_000,
        integer: true,
      },
    ),
    figure(
      "bands",
      "User bands of a head unit",
      "bands",
      "User bands of the kind of head unit quoted",
      undefined,
      // EN 50607: 32 on one output at the most.
      { kind: "number", min: 1, max: 32, integer: true },
    ),
    {
      ...figure("heads", "Head units", "pieces", "Head units of the quote"),
      beside: [
        {
          key: "again",
          format: "general",
          formula: 'IF((review_tuners="")+(review_bands="")>0,"",RIG.HEADUNITS(review_tuners,review_bands))',
        },
        { key: "off", format: "general", formula: 'IF(review_heads="","",review_heads-review_heads_again)' },
        {
          key: "word",
          formula:
            'IF((review_heads="")+(review_heads_again="")>0,"missing",IF(review_heads>=review_heads_again,"ok","look"))',
          verdict: true,
        },
      ],
    },
    figure("cable", "Cable in all", "m or ft", "All cable of the quote, in one unit"),
    {
      ...figure("materials", "Materials, cost", "money", "Cost of all materials; not their selling price"),
      beside: [
        { key: "again", format: "money", formula: "SUM(lines_again)" },
        {
          key: "off",
          format: "money",
          formula: 'IF(review_materials="","",review_materials-review_materials_again)',
        },
        {
          key: "word",
          // The lines below are a sample, so they may come to less, never to more.
          formula:
            'IF(review_materials="","missing",IF(review_materials_off>=-review_tolerance,"ok","look"))',
          verdict: true,
        },
      ],
    },
    figure("hours", "Crew hours", "h", "Hours of the crew"),
    figure("rate", "Rate", "money", "Cost of an hour of the crew"),
    figure("labour", "Labour, cost", "money", "Cost of labour", "review_hours*review_rate"),
    figure("contingency", "Contingency", "share", "Contingency as a share of direct cost", undefined, SHARE),
    figure("overhead", "Overhead", "share", "Overhead as a share of cost with contingency", undefined, SHARE),
    figure(
      "cost",
      "Cost",
      "money",
      "Cost with contingency and overhead",
      "(review_materials+review_labour)*(1+review_contingency)*(1+review_overhead)",
    ),
    figure("margin", "Margin", "share", "Margin as a share of the price", undefined, {
      kind: "number",
      min: 0,
      max: 0.95,
    }),
    figure(
      "price",
      "Price of it",
      "money",
      "Selling price of that cost, without tax, provisional sums and options",
      "RIG.SELLPRICE(review_cost,review_margin)",
    ),
    figure("extras", "Provisional sums and options", "money", "Both together, at their selling price"),
    figure("net", "Price without tax", "money", "Net sum of the quote", "review_price+review_extras"),
    figure("taxed", "Taxable part", "money", "The part that is taxed; the net sum where all of it is"),
    figure("rate_tax", "Tax", "share", "Tax rate", undefined, { kind: "number", min: 0, max: 1 }),
    figure(
      "tax",
      "Tax, sum",
      "money",
      "Tax of the quote",
      'RIG.ROUNDMONEY(review_taxed,2,"half away",review_rate_tax)',
    ),
    figure("total", "Total", "money", "Total of the quote", "review_net+review_tax"),
    {
      name: "review_slip",
      label: "Was the margin added as a markup?",
      // The commonest slip of all: cost · (1 + margin) is less than cost / (1 - margin).
      formula:
        'IF((review_price="")+(review_cost="")+(review_margin=0)>0,"not known",IF(ABS(review_price-review_cost*(1+review_margin))<=review_tolerance,"look","ok"))',
      verdict: true,
    },
  ],
};

const lines: Block = {
  kind: "block",
  name: "lines",
  heading: "Lines looked at: the dearest ones",
  prepared: 6,
  columns: [
    { key: "part", head: "Part", width: 46, input: { what: "A line of the quote", rule: { kind: "text" } } },
    {
      key: "quantity",
      head: "Quantity",
      width: 24,
      format: "general",
      input: {
        what: "How many, or how many metres or reels",
        rule: { kind: "number", min: 0, max: 1_000_000 },
      },
    },
    {
      key: "each",
      head: "Unit cost",
      unit: "money",
      width: 12,
      format: "money",
      input: { what: "Cost of one", rule: SUM },
    },
    {
      key: "again",
      head: "Worked again",
      unit: "money",
      width: 13,
      format: "money",
      formula: 'IF(lines_part="","",lines_quantity*lines_each)',
    },
    {
      key: "sum",
      head: "As quoted",
      unit: "money",
      width: 12,
      format: "money",
      input: { what: "Sum of the line", rule: SUM },
    },
    {
      key: "word",
      head: "Word",
      width: 10,
      formula:
        'IF(lines_part="","",IF((lines_quantity="")+(lines_each="")+(lines_sum="")>0,"missing",IF(IFERROR(ABS(lines_sum-lines_again)>review_tolerance,TRUE),"look","ok")))',
    },
  ],
};

const ranges: Block = {
  kind: "block",
  name: "ranges",
  heading: "Ratios against your own ranges",
  prepared: 8,
  columns: [
    {
      key: "ratio",
      head: "Ratio",
      width: 46,
      input: { what: "A ratio of the sheet Ratios", rule: { kind: "named", name: "ratio_names" } },
    },
    {
      key: "basis",
      head: "Where the range comes from",
      width: 24,
      input: {
        what: "Your own jobs, or what the trade does",
        example: "our last ten jobs",
        rule: { kind: "text" },
      },
    },
    {
      key: "low",
      head: "From",
      width: 12,
      format: "two",
      input: { what: "Least that is usual with you; blank for no range", rule: { kind: "number" } },
    },
    {
      key: "high",
      head: "To",
      width: 13,
      format: "two",
      input: { what: "Most that is usual with you; blank for no range", rule: { kind: "number" } },
    },
    {
      key: "value",
      head: "This quote",
      width: 12,
      format: "two",
      formula: 'IF(ranges_ratio="","",INDEX(ratio_values,MATCH(ranges_ratio,ratio_names,0)))',
    },
    {
      key: "word",
      head: "Word",
      width: 10,
      formula:
        'IF(ranges_ratio="","",IF((ranges_low="")+(ranges_high="")>0,"no range",IF(IFERROR((ranges_value<ranges_low)+(ranges_value>ranges_high),1)>0,"look","ok")))',
    },
  ],
};

const questions: Block = {
  kind: "block",
  name: "asked",
  heading: "Questions before it goes out",
  prepared: 10,
  columns: [
    {
      key: "question",
      head: "Question",
      width: 62,
      input: { what: "What must be settled", rule: { kind: "text" } },
    },
    {
      key: "answer",
      head: "Answer",
      width: 24,
      input: { what: "Whether it is settled", rule: { kind: "choice", choices: ["yes", "no", "not here"] } },
    },
    {
      key: "word",
      head: "Word",
      width: 12,
      formula: 'IF(asked_question="","",IF((asked_answer="yes")+(asked_answer="not here")>0,"ok","look"))',
    },
  ],
};

/** Figures with a word beside them; lines, ranges and questions are columns of words. */
const worked = figures.fields.flatMap(({ name, beside }) => (beside ? [`${name}_word`] : []));
export const SUMS_THAT_DIFFER = worked
  .map((name) => `(IFERROR(${name}="look",TRUE))`)
  .concat('(review_slip="look")')
  .join("+");
export const FIGURES_MISSING = worked.map((name) => `(IFERROR(${name}="missing",FALSE))`).join("+");

export const review: SheetDefinition = {
  name: "Review",
  kind: "print",
  intro: "Two minutes over somebody else's quote.",
  print: { orientation: "portrait", onePage: true },
  parts: [
    which,
    figures,
    lines,
    ranges,
    questions,
    {
      kind: "fields",
      heading: "Verdict",
      fields: [
        {
          name: "review_verdict",
          label: "May it go out?",
          formula:
            'IF(checks_failed=0,"ok: nothing left to look at","look: not before the above is settled")',
          strong: true,
        },
        {
          name: "review_remark",
          label: "Remark",
          input: { what: "What the maker of the quote should do", rule: { kind: "text" } },
        },
      ],
    },
  ],
};
