import { anyNumber, anyText, day } from "../../asks";
import { block, entry } from "../../names";

export const log = block("log", {
  date: entry("Date", { width: 14, format: "date" }, day("The day of the change", { example: "2026-11-03" })),
  who: entry("Who", { width: 18 }, anyText("Who made the change")),
  what: entry("What", { width: 44 }, anyText("What was changed")),
  why: entry("Why", { width: 44 }, anyText("Why it was changed")),
  before: entry(
    "Total before",
    { unit: "money", width: 14, format: "money" },
    anyNumber("The total before the change"),
  ),
  after: entry("Total after", { unit: "money", width: 14, format: "money" }, anyNumber("The total after it")),
});
