import type { SheetDefinition } from "../definition";
import { roundedNatively } from "./roundedNatively";

export const terms: SheetDefinition = {
  name: "Terms",
  kind: "input",
  intro: "Options, provisional sums, assumptions and exclusions: lists of their own that print on the quote.",
  print: { orientation: "landscape" },
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
          input: {
            what: "How many of it",
            example: "2",
            required: true,
            rule: { kind: "number", min: 0.01, max: 100_000 },
          },
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
            required: true,
            zero: "reason",
            rule: { kind: "number", min: 0, max: 10_000_000 },
          },
        },
        {
          key: "chosen",
          head: "Chosen",
          width: 10,
          input: {
            what: "Whether the customer takes it",
            required: true,
            rule: { kind: "choice", choices: ["yes", "no"] },
          },
        },
        {
          key: "sum",
          head: "Sum",
          unit: "money",
          width: 12,
          format: "money",
          // As it prints on the quote.
          formula: `IF(options_name="","",${roundedNatively("options_quantity*options_each")})`,
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
            required: true,
            zero: "reason",
            rule: { kind: "number", min: 0, max: 10_000_000 },
          },
        },
      ],
    },
    {
      kind: "fields",
      heading: "Discount on the price without tax: a sum or a share",
      fields: [
        {
          name: "discount_sum",
          label: "Discount as a sum",
          unit: "money",
          format: "money",
          input: {
            what: "The sum taken off the price without tax; blank for none",
            example: "250",
            rule: { kind: "number", min: 0.01, max: 10_000_000 },
          },
        },
        {
          name: "discount_share",
          label: "Discount as a share",
          unit: "share of price",
          format: "percent",
          input: {
            what: "The share taken off the price without tax; blank for none",
            example: "5%",
            rule: { kind: "number", min: 0.0001, max: 0.9 },
          },
        },
        {
          name: "discount_reason",
          label: "Reason for the discount",
          input: {
            what: "Why there is a discount",
            example: "three houses ordered together",
            required: '((discount_sum<>"")+(discount_share<>"")>0)',
            rule: { kind: "text" },
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
    {
      kind: "block",
      name: "onpurpose",
      heading: "Free, or 0 on purpose: for the office",
      prepared: 4,
      columns: [
        {
          key: "what",
          head: "What is 0",
          width: 60,
          input: {
            what: "The part, work, option or figure that is meant to be 0, by its name on its own sheet",
            example: "weather cabinet",
            rule: { kind: "text" },
          },
        },
        {
          key: "why",
          head: "Why",
          width: 30,
          input: {
            what: "Who supplies it, or why it is 0",
            example: "supplied by the customer",
            required: true,
            rule: { kind: "text" },
          },
        },
      ],
    },
  ],
};
