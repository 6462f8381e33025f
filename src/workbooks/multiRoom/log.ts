import type { SheetDefinition } from "../definition";

export const log: SheetDefinition = {
  name: "Log",
  kind: "input",
  intro: "What was changed, by whom and why, and what it did to the total.",
  print: { orientation: "landscape" },
  parts: [
    {
      kind: "block",
      name: "log",
      heading: "Changes",
      prepared: 20,
      columns: [
        {
          key: "date",
          head: "Date",
          width: 14,
          format: "date",
          input: { what: "The day of the change", example: "2026-11-03", rule: { kind: "date" } },
        },
        {
          key: "who",
          head: "Who",
          width: 18,
          input: { what: "Who made the change", rule: { kind: "text" } },
        },
        { key: "what", head: "What", width: 44, input: { what: "What was changed", rule: { kind: "text" } } },
        { key: "why", head: "Why", width: 44, input: { what: "Why it was changed", rule: { kind: "text" } } },
        {
          key: "before",
          head: "Total before",
          unit: "money",
          width: 14,
          format: "money",
          input: { what: "The total before the change", rule: { kind: "number" } },
        },
        {
          key: "after",
          head: "Total after",
          unit: "money",
          width: 14,
          format: "money",
          input: { what: "The total after it", rule: { kind: "number" } },
        },
      ],
    },
  ],
};
