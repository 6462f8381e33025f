import type { SheetDefinition } from "../definition";

export const site: SheetDefinition = {
  name: "Site",
  kind: "input",
  intro: "The job, the place, the orbital slots, and the figures that every other sheet goes by.",
  print: { orientation: "portrait" },
  parts: [
    {
      kind: "fields",
      heading: "Job",
      fields: [
        {
          name: "site_job",
          label: "Job",
          input: { what: "A short name for the job", example: "Harbour guest house", rule: { kind: "text" } },
        },
        {
          name: "site_customer",
          label: "Customer",
          input: { what: "Who the quote is for", rule: { kind: "text" } },
        },
        {
          name: "site_place",
          label: "Address",
          input: { what: "Where the work is done", rule: { kind: "text" } },
        },
        {
          name: "site_prepared_by",
          label: "Prepared by",
          input: { what: "Who made the estimate", rule: { kind: "text" } },
        },
        {
          name: "site_quote",
          label: "Quote number",
          input: { what: "Your number for the quote", example: "Q-104", rule: { kind: "text" } },
        },
        {
          name: "site_revision",
          label: "Revision",
          format: "integer",
          input: {
            what: "The revision of the quote",
            example: "1",
            rule: { kind: "number", min: 0, max: 999, integer: true },
          },
        },
        {
          name: "site_date",
          label: "Date of the quote",
          format: "date",
          note: "Also the date for the compass bearing.",
          input: { what: "The date of the quote", example: "2026-11-02", rule: { kind: "date" } },
        },
        {
          name: "site_until",
          label: "Quote valid until",
          format: "date",
          input: {
            what: "The last day on which the quote holds",
            example: "2026-12-31",
            rule: { kind: "date" },
          },
        },
      ],
    },
    {
      kind: "fields",
      heading: "Place",
      fields: [
        {
          name: "site_latitude",
          label: "Latitude",
          unit: "deg north",
          format: "three",
          note: "South is negative.",
          input: {
            what: "Latitude of the dish",
            example: "51.5",
            rule: { kind: "number", min: -90, max: 90 },
          },
        },
        {
          name: "site_longitude",
          label: "Longitude",
          unit: "deg east",
          format: "three",
          note: "West is negative.",
          input: {
            what: "Longitude of the dish",
            example: "-0.12",
            rule: { kind: "number", min: -180, max: 180 },
          },
        },
        {
          name: "site_height",
          label: "Height above sea level",
          unit: "m",
          format: "integer",
          input: {
            what: "Height of the site above sea level",
            example: "35",
            rule: { kind: "number", min: -500, max: 9000 },
          },
        },
        {
          name: "site_clearance",
          label: "Clearance wanted over obstacles",
          unit: "deg",
          format: "one",
          note: "Common practice, no source: 2 to 5 deg, more where trees grow.",
          input: {
            what: "How far the beam should pass above the highest obstacle",
            example: "3",
            rule: { kind: "number", min: 0, max: 20 },
          },
        },
      ],
    },
    {
      kind: "fields",
      heading: "Dish",
      fields: [
        {
          name: "site_dish",
          label: "Diameter of the dish",
          unit: "m",
          format: "two",
          note: "For the sun check.",
          input: {
            what: "Diameter of the dish",
            example: "0.9",
            rule: { kind: "number", min: 0.3, max: 15 },
          },
        },
      ],
    },
    {
      kind: "block",
      name: "slots",
      heading: "Orbital slots wanted",
      prepared: 4,
      columns: [
        {
          key: "slot",
          head: "Orbital slot",
          unit: "deg E, or 97W",
          width: 34,
          input: {
            what: "Orbital slot in degrees east, or text with E or W",
            example: "97W",
            rule: { kind: "slot" },
          },
        },
        {
          key: "service",
          head: "What it is for",
          width: 20,
          input: { what: "What the customer wants from this slot", rule: { kind: "text" } },
        },
        {
          key: "obstacle",
          head: "Highest obstacle",
          unit: "deg",
          width: 12,
          format: "one",
          input: {
            what: "Elevation of the highest obstacle on that bearing, seen from the dish",
            example: "12",
            rule: { kind: "number", min: 0, max: 90 },
          },
        },
      ],
    },
    {
      kind: "fields",
      heading: "Cables and levels",
      fields: [
        {
          name: "site_unit",
          label: "Lengths on all sheets are in",
          note: "Also the reel lengths on Parts.",
          input: { what: "The unit of every length", rule: { kind: "choice", choices: ["m", "ft"] } },
        },
        {
          name: "site_slack",
          label: "Slack added to each run",
          unit: "m or ft",
          format: "one",
          note: "Common practice, no source: 5 to 10 ft at each end.",
          input: {
            what: "Length added to every run for slack and termination, in the unit above",
            example: "2",
            rule: { kind: "number", min: 0, max: 100 },
          },
        },
        {
          name: "site_waste",
          label: "Waste added to each run",
          unit: "share",
          format: "percent",
          note: "Common practice, no source: 5 to 15 % for cable.",
          input: {
            what: "Share added to every run for waste",
            example: "5%",
            rule: { kind: "number", min: 0, max: 1 },
          },
        },
        {
          name: "site_run_tolerance",
          label: "Runs may be longer by",
          unit: "share",
          format: "percent",
          note: "Where Rooms gives no longest run; Checks shows the outlets that would then fail.",
          input: {
            what: "Share by which a run may turn out longer than surveyed",
            example: "10%",
            rule: { kind: "number", min: 0, max: 1 },
          },
        },
        {
          name: "site_low",
          label: "Lowest frequency on the cable",
          unit: "MHz",
          format: "integer",
          input: {
            what: "Lowest frequency that an outlet must get",
            example: "950",
            rule: { kind: "number", min: 5, max: 3000 },
          },
        },
        {
          name: "site_high",
          label: "Highest frequency on the cable",
          unit: "MHz",
          format: "integer",
          input: {
            what: "Highest frequency that an outlet must get",
            example: "2150",
            rule: { kind: "number", min: 5, max: 3000 },
          },
        },
        {
          name: "site_cold",
          label: "Coldest cable",
          unit: "°C",
          format: "integer",
          input: {
            what: "Temperature of the coldest cable in the year",
            example: "-15",
            rule: { kind: "number", min: -60, max: 90 },
          },
        },
        {
          name: "site_hot",
          label: "Hottest cable",
          unit: "°C",
          format: "integer",
          note: "A cable under a roof in summer is far hotter than the air.",
          input: {
            what: "Temperature of the hottest cable in the year",
            example: "55",
            rule: { kind: "number", min: -60, max: 90 },
          },
        },
        {
          name: "site_level_low",
          label: "Least level at an outlet",
          unit: "dBµV",
          format: "one",
          note: "EN 60728-1: 47 dBµV for satellite IF with QPSK, 8PSK or APSK.",
          input: {
            what: "Least level at an outlet",
            example: "47",
            rule: { kind: "number", min: 20, max: 120 },
          },
        },
        {
          name: "site_level_high",
          label: "Greatest level at an outlet",
          unit: "dBµV",
          format: "one",
          note: "EN 60728-1: 77 dBµV.",
          input: {
            what: "Greatest level at an outlet",
            example: "77",
            rule: { kind: "number", min: 20, max: 120 },
          },
        },
        {
          name: "site_level_design",
          label: "Design floor",
          unit: "dBµV",
          format: "one",
          note: "A margin over the least level; 53 dBµV is a usual floor for satellite IF.",
          input: {
            what: "Level below which an outlet is worth a second look",
            example: "53",
            rule: { kind: "number", min: 20, max: 120 },
          },
        },
      ],
    },
    {
      kind: "grid",
      heading: "The four corners of every prediction",
      heads: ["low end, cold", "low end, hot", "high end, cold", "high end, hot"],
      rows: [
        {
          name: "corner_frequency",
          label: "Frequency",
          unit: "MHz",
          format: "integer",
          formulas: ["site_low", "site_low", "site_high", "site_high"],
        },
        {
          name: "corner_temperature",
          label: "Cable temperature",
          unit: "°C",
          format: "integer",
          formulas: ["site_cold", "site_hot", "site_cold", "site_hot"],
        },
      ],
    },
    {
      kind: "fields",
      heading: "Money",
      fields: [
        {
          name: "site_currency",
          label: "Currency",
          note: "Shown on the quote; all prices on Parts are in it.",
          input: { what: "The currency of all prices", example: "EUR", rule: { kind: "text" } },
        },
        {
          name: "site_contingency",
          label: "Contingency",
          unit: "share of direct cost",
          format: "percent",
          note: "An allowance that is expected to be spent; added before overhead.",
          input: {
            what: "Contingency as a share of the direct cost",
            example: "3%",
            rule: { kind: "number", min: 0, max: 1 },
          },
        },
        {
          name: "site_overhead",
          label: "Overhead",
          unit: "share of cost",
          format: "percent",
          input: {
            what: "Overhead as a share of direct cost with contingency",
            example: "10%",
            rule: { kind: "number", min: 0, max: 2 },
          },
        },
        {
          name: "site_margin",
          label: "Margin",
          unit: "share of price",
          format: "percent",
          note: "Price = cost / (1 - margin): 20 % margin is 25 % markup.",
          input: {
            what: "Margin as a share of the selling price",
            example: "20%",
            rule: { kind: "number", min: 0, max: 0.95 },
          },
        },
        {
          name: "site_tax",
          label: "Tax",
          unit: "share",
          format: "percent",
          input: {
            what: "Tax rate on the taxable part",
            example: "20%",
            rule: { kind: "number", min: 0, max: 1 },
          },
        },
        {
          name: "site_tax_on",
          label: "Tax is on",
          note: "The taxable part by your rules.",
          input: {
            what: "What the tax is charged on",
            rule: { kind: "choice", choices: ["materials and labour", "materials only", "labour only"] },
          },
        },
        {
          name: "site_rounding",
          label: "Rounding of a tie",
          note: "Money is rounded once, where it is printed.",
          input: {
            what: "How a tie is rounded",
            rule: { kind: "choice", choices: ["half away", "half even"] },
          },
        },
      ],
    },
  ],
};
