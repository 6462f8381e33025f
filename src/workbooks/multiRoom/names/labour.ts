import { anyText, nameIn, number } from "../../asks";
import { block, entry, fields, result, told } from "../../names";
import { pieceWords } from "./pieces";

/** The shortest and the longest beside the likely minutes; both blank when the likely ones are sure enough. */
const doubtful = (head: string) =>
  entry(
    head,
    { unit: "min", width: 12, format: "integer" },
    number(0, 10_000, "Shortest and longest minutes; give both or neither"),
  );

/** How cables run, with what a metre or a foot takes. */
export const routes = block("routes", {
  name: entry(
    "Route",
    { width: 34 },
    anyText("How a cable runs: in a duct, clipped, above a ceiling, in a riser, outside", {
      example: "surface clips",
    }),
  ),
  minutes: entry(
    "Minutes for each m or ft",
    { unit: "min", width: 26, format: "two" },
    number(0, 600, "Crew minutes for one metre or foot, in the unit that Site names", {
      example: "4",
      required: true,
      zero: "reason",
    }),
  ),
  low: doubtful("Shortest minutes"),
  high: doubtful("Longest minutes"),
  difficulty: entry(
    "Difficulty",
    { unit: "factor", width: 12, format: "two" },
    number(
      0.5,
      10,
      "1 in normal conditions, which blank is; more for height, attic, masonry or occupied rooms",
      {
        example: "1.2",
      },
    ),
  ),
});

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
    number(0, 10_000, "Times per outlet", { example: "1" }),
  ),
  per_branch: entry(
    "Per device",
    { width: 12, format: "general" },
    number(0, 10_000, "Times per device of Distribution", { example: "1" }),
  ),
  per_head: entry(
    "Per head unit",
    { width: 12, format: "general" },
    number(0, 10_000, "Times per head unit", { example: "1" }),
  ),
  fixed: entry(
    "Per job",
    { width: 12, format: "general" },
    number(0, 10_000, "Times per job", { example: "1" }),
  ),
  per_floor: entry(
    "Per floor",
    { width: 12, format: "general" },
    number(0, 10_000, "Times per floor of the job", { example: "1" }),
  ),
  per_day: entry(
    "Per day on site",
    { width: 12, format: "general" },
    number(
      0,
      10_000,
      "Times per day on site: set-up, travel that is paid by the hour; the day is so much shorter for all else",
      {
        example: "1",
      },
    ),
  ),
  piece: entry(
    "For each",
    { width: 22 },
    nameIn(pieceWords, "What is counted in the distribution, once for each of it; blank for nothing"),
  ),
  low: doubtful("Shortest minutes"),
  high: doubtful("Longest minutes"),
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
    "Price group",
    { width: 34 },
    anyText("Rooms whose price is told together; Rooms may name the group", { example: "guest rooms" }),
  ),
});

export const work = block("work", {
  name: result("Work", { width: 34 }),
  quantity: result("Times", { width: 20, format: "general" }),
  minutes: result("Expected minutes", { unit: "min", width: 12, format: "one" }),
  hours: result("Hours", { unit: "h", width: 12, format: "two" }),
  sum: result("Sum", { unit: "money", width: 14, format: "money" }),
  variance: result("Cost variance", { unit: "money²", width: 12, format: "two" }),
  pieces: result("Counted in the distribution", { unit: "pieces", width: 14, format: "general" }),
  places: result("Times that harder places add", { width: 12, format: "general" }),
  beside: result("Times beside those of each day", { width: 12, format: "general" }),
  other: result("Hours beside those of each day", { unit: "h", width: 12, format: "two" }),
  each_day: result("Hours of each day", { unit: "h", width: 12, format: "two" }),
  settled: result("Hours that no difficulty stretches", { unit: "h", width: 12, format: "two" }),
});

export const routeWork = block("route_work", {
  name: result("Route", { width: 34 }),
  length: result("Length", { unit: "m or ft", width: 20, format: "one" }),
  minutes: result("Expected minutes for each", { unit: "min", width: 12, format: "two" }),
  hours: result("Hours", { unit: "h", width: 12, format: "two" }),
  sum: result("Sum", { unit: "money", width: 14, format: "money" }),
  variance: result("Cost variance", { unit: "money²", width: 12, format: "two" }),
  places: result("Length that harder places add", { unit: "m or ft", width: 14, format: "one" }),
});

/** The extra minutes of room types. */
export const typeWork = block("type_work", {
  name: result("Type", { width: 34 }),
  quantity: result("Times", { width: 20, format: "general" }),
  minutes: result("Extra minutes each", { unit: "min", width: 12, format: "one" }),
  hours: result("Hours", { unit: "h", width: 12, format: "two" }),
  sum: result("Sum", { unit: "money", width: 14, format: "money" }),
});

/** Travel, access and permits, as they are priced. */
export const sitesPriced = block("sites_priced", {
  name: result("Site cost", { width: 34 }),
  times: result("Times", { width: 20, format: "general" }),
  cost: result("Expected cost each", { unit: "money", width: 12, format: "money" }),
  sum: result("Sum", { unit: "money", width: 12, format: "money" }),
  variance: result("Cost variance", { unit: "money²", width: 14, format: "two" }),
});

export const workTogether = fields("work", {
  total_hours: told("Crew hours", { unit: "h", format: "two" }),
  person_hours: told("Person hours", { unit: "h", format: "two" }),
  together: told("Labour", { unit: "money", format: "money" }),
  sites: told("Travel, access and permits", { unit: "money", format: "money" }),
  deviation: told("Standard deviation of labour", {
    unit: "money",
    format: "money",
    note: "Errors of a line by itself, and those that all labour has in common.",
  }),
  other_hours: told("Hours beside those of each day", { unit: "h", format: "two" }),
  day_hours: told("Hours of each day for itself", {
    unit: "h",
    format: "two",
    note: "Work per day on site: a day is so much shorter for all else.",
  }),
  days_needed: told("Days that the hours need", { unit: "days", format: "integer" }),
  days: told("Days on site", { unit: "days", format: "general" }),
  speed_deviation: told("Crew speed", { unit: "money", format: "money" }),
  difficulty_deviation: told("Difficulty", {
    unit: "money",
    format: "money",
    note: "Not of work per floor, per day and per job.",
  }),
  harder_outlets: told("Outlets", { format: "two" }),
  harder_plates: told("Wall plates", { format: "two" }),
  harder_connectors: told("Connectors of their runs", { format: "two" }),
  harder_leads: told("Receiver leads", { format: "two" }),
});
