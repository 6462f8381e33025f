import type { Block, Field, SheetDefinition } from "../definition";

const sum = (name: string, label: string, formula: string, strong = false): Field => ({
  name,
  label,
  format: "money",
  formula,
  strong,
});

/** A list of Terms as it prints. */
const listed = (name: string, of: string, heading: string, head: string): Block => ({
  kind: "block",
  name,
  heading,
  prepared: 4,
  mirrors: of,
  columns: [{ key: "text", head, width: 40, formula: `IF(${of}_text="","",${of}_text)` }],
});

export const quote: SheetDefinition = {
  name: "Quote",
  kind: "print",
  intro: "Planned, priced and checked row by row; the sums are rounded once, as printed here.",
  print: { orientation: "portrait", onePage: true },
  parts: [
    {
      kind: "fields",
      heading: "Quotation",
      fields: [
        { name: "quote_job", label: "Job", formula: "site_job" },
        { name: "quote_customer", label: "For", formula: "site_customer" },
        { name: "quote_place", label: "At", formula: "site_place" },
        {
          name: "quote_number",
          label: "Number and revision",
          formula: 'site_quote&", revision "&site_revision',
        },
        { name: "quote_date", label: "Date", format: "date", formula: "site_date" },
        { name: "quote_until", label: "Valid until", format: "date", formula: "site_until" },
        { name: "quote_by", label: "Prepared by", formula: "site_prepared_by" },
        {
          name: "quote_scope",
          label: "Scope",
          formula:
            '"outlets: "&count_outlets&", tuners: "&heads_wanted&", head units: "&count_heads&", orbital slots: "&SUMPRODUCT(--(slots_slot<>""))',
        },
      ],
    },
    {
      kind: "fields",
      heading: "Price",
      fields: [
        sum("quote_reception", "Head units and power supplies", "INDEX(price_lines,1)"),
        sum("quote_cable", "Cable, splitters and taps", "price_line_cable"),
        sum("quote_fittings", "Outlets, fittings and sundries", "price_line_outlets"),
        sum("quote_labour", "Labour", "price_line_labour"),
        sum("quote_provisional", "Provisional sums", "price_line_provisional"),
        sum("quote_options", "Options chosen", "price_line_options"),
        sum("quote_net", "Price without tax", "price_net", true),
        sum("quote_tax", "Tax", "price_tax"),
        sum("quote_total", "Total", "price_total", true),
        { name: "quote_currency", label: "All sums in", formula: "site_currency" },
        sum("quote_expected", "Expected total, as lengths and hours may turn out", "ROUND(price_expected,2)"),
        {
          name: "quote_range",
          label: "Its range, about 19 in 20",
          format: "text",
          formula: 'ROUND(price_low,0)&" to "&ROUND(price_high,0)',
        },
      ],
    },
    {
      kind: "block",
      name: "quoteoptions",
      heading: "Options",
      prepared: 4,
      mirrors: "options",
      columns: [
        { key: "name", head: "Option", width: 40, formula: 'IF(options_name="","",options_name)' },
        {
          key: "sum",
          head: "Price without tax",
          width: 38,
          format: "money",
          formula: 'IF(options_name="","",options_sum)',
        },
        {
          key: "word",
          head: "In the total",
          width: 14,
          formula: 'IF(options_name="","",IF(options_chosen="yes","yes","no"))',
        },
      ],
    },
    listed("quoteassumptions", "assumptions", "Assumptions", "Assumed"),
    listed("quoteexclusions", "exclusions", "Exclusions", "Not included"),
    {
      kind: "text",
      heading: "Terms and safety",
      lines: [
        "Each sum is rounded to two decimals once, and the total is the sum of what is printed.",
        "The price holds until the date above, for the outlets, lengths and parts counted here.",
        "Roof and ladder work, overhead lines, lightning, mains and bonding are planned on site",
        "before work starts. Bonding and earthing follow the local code and are decided by",
        "licensed practice. This page certifies nothing.",
      ],
    },
  ],
};
