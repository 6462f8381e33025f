import type { SheetDefinition } from "../definition";

export const quote: SheetDefinition = {
  name: "Quote",
  kind: "print",
  intro: "Planned, priced and checked row by row; the sums are rounded once, as printed here.",
  print: { orientation: "portrait" },
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
      ],
    },
    {
      kind: "fields",
      heading: "Scope",
      fields: [
        { name: "quote_outlets", label: "Outlets", format: "integer", formula: "count_outlets" },
        { name: "quote_tuners", label: "Tuners served", format: "integer", formula: "heads_wanted" },
        { name: "quote_heads", label: "Head units", format: "integer", formula: "count_heads" },
        {
          name: "quote_slots",
          label: "Orbital slots",
          format: "integer",
          formula: 'SUMPRODUCT(--(slots_slot<>""))',
        },
      ],
    },
    {
      kind: "fields",
      heading: "Price",
      name: "quote_price",
      fields: [
        {
          name: "quote_reception",
          label: "Head units and power supplies",
          format: "money",
          formula: "INDEX(price_lines,1)",
        },
        {
          name: "quote_cable",
          label: "Cable, splitters and taps",
          format: "money",
          formula: "price_line_cable",
        },
        {
          name: "quote_fittings",
          label: "Outlets, fittings and sundries",
          format: "money",
          formula: "price_line_outlets",
        },
        { name: "quote_labour", label: "Labour", format: "money", formula: "price_line_labour" },
        {
          name: "quote_net",
          label: "Price without tax",
          format: "money",
          strong: true,
          formula: "price_net",
        },
        { name: "quote_tax", label: "Tax", format: "money", formula: "price_tax" },
        { name: "quote_total", label: "Total", format: "money", strong: true, formula: "price_total" },
        { name: "quote_currency", label: "All sums in", formula: "site_currency" },
      ],
    },
    {
      kind: "text",
      heading: "Terms",
      lines: [
        "Each sum is rounded to two decimals once, and the total is the sum of what is printed.",
        "The price holds until the date above, for the outlets, lengths and parts counted here.",
      ],
    },
    {
      kind: "text",
      heading: "Not included",
      lines: [
        "Receivers and recorders, and their subscriptions.",
        "Work on the mains, on lightning protection and on the building's structure, and repair of finishes.",
        "Lifting gear, scaffolding, and permission from an owner, neighbour or authority.",
      ],
    },
    {
      kind: "text",
      heading: "Safety",
      lines: [
        "Roof and ladder work, overhead lines, lightning, mains and bonding are planned on site",
        "before work starts. Bonding and earthing follow the local code and are decided by",
        "licensed practice. This page certifies nothing.",
      ],
    },
  ],
};
