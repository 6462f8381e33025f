import { anyText, number } from "../../asks";
import { asked, block, entry, fields, result, told } from "../../names";

/** A low and a high figure beside the likely one; both blank when the likely one is sure enough. */
const doubtful = (head: string) =>
  entry(
    head,
    { unit: "min", width: 12, format: "integer" },
    number(
      0,
      10_000,
      "With the other figure: the least and the most that it may take; leave both blank if it is sure",
    ),
  );

export const labour = block("labour", {
  name: entry("Work", { width: 34 }, anyText("The kind of work", { example: "run and terminate a cable" })),
  minutes: entry(
    "Minutes each",
    { unit: "min", width: 26, format: "integer" },
    number(0, 10_000, "Crew minutes for one, in normal conditions", {
      example: "35",
      required: true,
      zero: "reason",
    }),
  ),
  per_outlet: entry(
    "Per outlet",
    { width: 12, format: "general" },
    number(0, 10_000, "How often for each outlet", { example: "1" }),
  ),
  per_branch: entry(
    "Per splitter or tap",
    { width: 12, format: "general" },
    number(0, 10_000, "How often for each splitter or tap", { example: "1" }),
  ),
  per_head: entry(
    "Per head unit",
    { width: 12, format: "general" },
    number(0, 10_000, "How often for each head unit", { example: "1" }),
  ),
  fixed: entry(
    "For the job",
    { width: 12, format: "general" },
    number(0, 10_000, "How often once for the job", { example: "1" }),
  ),
  low: doubtful("At least"),
  high: doubtful("At most"),
  difficulty: entry(
    "Difficulty",
    { unit: "factor", width: 12, format: "two" },
    number(0.5, 10, "1 in normal conditions; more for height, attic, masonry or occupied rooms", {
      example: "1.2",
      required: true,
    }),
  ),
});

export const kinds = block("kinds", {
  name: entry(
    "Room kind",
    { width: 34 },
    anyText("A kind of room that Rooms may name", { example: "guest room" }),
  ),
});

export const crew = fields("labour", {
  rate: asked(
    "Crew rate",
    { unit: "per hour", format: "money" },
    number(1, 10_000, "What an hour of the crew costs you", { example: "60", required: true }),
  ),
});

export const work = block("work", {
  name: result("Work", { width: 34 }),
  quantity: result("How often", { width: 20, format: "general" }),
  minutes: result("Expected minutes", { unit: "min", width: 12, format: "one" }),
  hours: result("Hours", { unit: "h", width: 12, format: "two" }),
  sum: result("Sum", { unit: "money", width: 14, format: "money" }),
  variance: result("Variance", { unit: "money²", width: 12, format: "two" }),
});

export const workTogether = fields("work", {
  total_hours: told("Crew hours", { unit: "h", format: "two" }),
});
