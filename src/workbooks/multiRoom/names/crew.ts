import { anyText, number, oneOf, whole } from "../../asks";
import { asked, block, entry, fields, result } from "../../names";
import { keyed } from "../nameKeys";

/** Half of the range that a common doubt may take, as the shortest and the longest of all lines at once. */
const common = (label: string, what: string, note: string) =>
  asked(label, { unit: "share", format: "percent", note }, number(0, 0.9, what, { example: "15%" }));

export const crew = {
  ...fields("labour", {
    rate: asked(
      "Crew rate",
      { unit: "per hour", format: "money" },
      number(1, 10_000, "What an hour of the crew costs you", { example: "60", required: true }),
    ),
  }),
  ...fields("crew", {
    size: asked(
      "People in the crew",
      { format: "integer", note: "For person hours; the crew rate and all minutes are of the whole crew." },
      whole(1, 100, "How many people the crew is; blank tells no person hours", { example: "2" }),
    ),
    hours: asked(
      "Hours worked a day",
      { unit: "h", format: "two", note: "On site, with what each day takes for itself." },
      number(0.1, 24, "Hours that the crew works on site in a day; blank counts no days", { example: "8" }),
    ),
    days: asked(
      "Days on site, if not counted",
      { unit: "days", format: "general", note: "Blank is counted from the hours, whole days up." },
      number(0.25, 5000, "Days that the crew is on site; blank is counted from the hours", { example: "3" }),
    ),
    speed: common(
      "Crew speed ±",
      "Share by which this crew may be slower or faster in all that it does; blank is none",
      "Of all labour at once, from shortest to longest: a third of it is one standard deviation.",
    ),
    difficulty: common(
      "Difficulty ±",
      "Share by which all places may be harder or easier than was thought; blank is none",
      "So too, but for work per floor, per day and per job.",
    ),
  }),
};

export const SITE_KINDS = ["travel", "access hire", "attendance", "permit", "other"] as const;
export const SITE_UNITS = ["job", "day on site", "person and day", "floor"] as const;

const costOf = (head: string) =>
  entry(
    head,
    { unit: "money", width: 12, format: "money" },
    number(0, 1_000_000, "Lowest and highest cost of one; give both or neither"),
  );

/** What being on site costs beside labour and materials. */
export const sites = block("sites", {
  name: entry("Site cost", { width: 34 }, anyText("What it is", { example: "mobile tower, hire" })),
  kind: entry("Kind", { width: 14 }, oneOf(SITE_KINDS, "What kind of cost it is; may be blank")),
  quantity: entry(
    "How many",
    { width: 12, format: "general" },
    number(0, 100_000, "How many of it for each of what stands to the right; blank is 1", {
      example: "2",
      zero: "note",
    }),
  ),
  per: entry("For each", { width: 15 }, oneOf(SITE_UNITS, "Of what there are so many; blank is the job")),
  days: entry(
    "Days of its own",
    { unit: "days", width: 12, format: "general" },
    number(0, 5000, "Days for which it is paid, where they are not the crew's days on site", {
      example: "5",
      zero: "note",
    }),
  ),
  cost: entry(
    "Cost each",
    { unit: "money", width: 12, format: "money" },
    number(0, 1_000_000, "What one costs you, or one for a day, without tax", {
      example: "35",
      required: true,
      zero: "reason",
    }),
  ),
  low: costOf("Lowest cost"),
  high: costOf("Highest cost"),
});

/** Where work takes longer than elsewhere. */
export const places = block("places", {
  floor: entry(
    "Floor",
    { width: 34 },
    anyText("A floor as Rooms names it; blank is that room on any floor", { example: "ground" }),
  ),
  room: entry(
    "Room",
    { width: 14 },
    anyText("A room as Rooms names it; blank is the whole floor. Where both have one, the room's counts", {
      example: "12",
    }),
  ),
  factor: entry(
    "Difficulty",
    { unit: "factor", width: 12, format: "two" },
    number(
      0.5,
      10,
      "1 in normal conditions; it stretches the cable runs of the outlets there, work per outlet, and their wall plates, connectors, receiver leads and measuring",
      { example: "1.3", required: true },
    ),
  ),
  outlets: result("Outlets that go by it", { unit: "pieces", width: 15, format: "integer" }),
  place: result("Place", { width: 14 }),
  key: keyed("Place"),
});
