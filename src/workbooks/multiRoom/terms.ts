import type { SheetDefinition } from "../definition";

export const terms: SheetDefinition = {
  name: "Terms",
  kind: "input",
  intro: "Options, provisional sums, assumptions and exclusions: lists of their own that print on the quote.",
  print: { orientation: "portrait" },
  parts: [
    {
      kind: "block",
      name: "options",
      heading: "Options, at their selling price",
      prepared: 5,
      columns: [
        {
          key: "name",
          head: "Option",
          width: 60,
          input: { what: "What the customer may add", rule: { kind: "text" } },
        },
        {
          key: "quantity",
          head: "How many",
          width: 10,
          format: "general",
          input: { what: "How many of it", example: "2", rule: { kind: "number", min: 0, max: 100_000 } },
        },
        {
          key: "each",
          head: "Price each",
          unit: "money",
          width: 12,
          format: "money",
          input: {
            what: "Selling price of one, without tax",
            example: "35",
            rule: { kind: "number", min: 0, max: 10_000_000 },
          },
        },
        {
          key: "chosen",
          head: "Chosen",
          width: 10,
          input: { what: "Whether the customer takes it", rule: { kind: "choice", choices: ["yes", "no"] } },
        },
        {
          key: "sum",
          head: "Sum",
          unit: "money",
          width: 12,
          format: "money",
          formula: 'IF(options_name="","",options_quantity*options_each)',
        },
        {
          key: "chosen_sum",
          head: "In the price",
          unit: "money",
          width: 12,
          format: "money",
          formula: 'IF(options_name="","",options_sum*(options_chosen="yes"))',
        },
      ],
    },
    {
      kind: "block",
      name: "provisional",
      heading: "Provisional sums, at their selling price",
      prepared: 4,
      columns: [
        {
          key: "name",
          head: "For",
          width: 60,
          input: { what: "Work that cannot be priced yet", rule: { kind: "text" } },
        },
        {
          key: "sum",
          head: "Sum",
          unit: "money",
          width: 12,
          format: "money",
          input: {
            what: "The sum put in for it, without tax",
            example: "150",
            rule: { kind: "number", min: 0, max: 10_000_000 },
          },
        },
      ],
    },
    {
      kind: "block",
      name: "assumptions",
      heading: "Assumptions",
      prepared: 5,
      columns: [
        {
          key: "text",
          head: "Assumed",
          width: 60,
          input: { what: "What the price takes for granted", rule: { kind: "text" } },
        },
      ],
    },
    {
      kind: "block",
      name: "exclusions",
      heading: "Exclusions",
      prepared: 6,
      columns: [
        {
          key: "text",
          head: "Not included",
          width: 60,
          input: { what: "What the price leaves out", rule: { kind: "text" } },
        },
      ],
    },
  ],
};
