/** What stands under the sky: the dishes, and the cables from them to the switches. */
import { anyText, nameIn, number, whole } from "../../asks";
import { block, entry, result, results } from "../../names";
import { keyed } from "../nameKeys";
import { routes } from "./labour";
import { cables, feeds, fittings } from "./parts";

export const dishes = block(
  "dishes",
  {
    name: entry("Dish", { width: 12 }, anyText("A short name for this dish", { example: "D1" })),
    size: entry(
      "Size",
      { unit: "m", width: 9, format: "two" },
      number(0.3, 15, "Diameter of the dish; blank is that of Site", { example: "0.9" }),
    ),
    slots: entry(
      "Slots",
      { width: 16 },
      anyText("The orbital slots that it receives; blank is all of Site", { example: "97W 113W" }),
    ),
    feed: entry(
      "Feed",
      { width: 22 },
      nameIn(feeds.name, "A feed of the Parts sheet; blank where the head unit on this dish is its feed"),
    ),
    off_focus: entry(
      "Loss off the focus",
      { unit: "dB", width: 10, format: "one" },
      number(
        0,
        10,
        "What a slot beside the focus loses; 1 to 2 dB for two slots on one dish (common practice, no source); blank is 0 with one slot",
        { example: "1.5" },
      ),
    ),
    part: entry(
      "Bought as",
      { width: 20 },
      nameIn(fittings.name, "The dish with its mount among the fittings of the Parts sheet; blank buys none"),
    ),
    location: entry(
      "Location",
      { width: 24 },
      anyText("Where on the building it stands", { example: "flat roof, north-east corner" }),
    ),
    mounting: entry("Mounting", { width: 19 }, anyText("Mast or bracket", { example: "mast 48 mm" })),
    height: entry(
      "Height above ground",
      { unit: "m", width: 10, format: "one" },
      number(0, 400, "Height of the dish above the ground", { example: "7.5" }),
    ),
    obstacle: entry(
      "Highest obstacle",
      { unit: "deg", width: 10, format: "one" },
      number(
        0,
        90,
        "Elevation of the highest obstacle toward its slots, seen from this dish; blank is that of Site",
        { example: "12" },
      ),
    ),
    verdict: result("Verdict", { width: 12 }),
    feed_key: keyed("Feed"),
    part_key: keyed("Bought as"),
    seen: results(
      "",
      { width: 12, format: "one" },
      {
        slots: { head: "Slots received", width: 14, format: "text" },
        count: { head: "How many", unit: "slots", width: 9, format: "integer" },
        clear: { head: "Carrier to noise at its feed, clear sky", unit: "dB" },
        volts: { head: "Least volts at its feed", unit: "V" },
        row: { head: "Row verdict", format: "text" },
        trouble: { head: "What is wrong", width: 14, format: "text" },
      },
    ),
  },
  { rows: ["name", "off_focus"] },
);

export const feeders = block(
  "feeders",
  {
    from: entry(
      "From",
      { width: 12 },
      anyText("The dish, or the switch before, that these cables come from", { example: "D1" }),
    ),
    to: entry(
      "To",
      { width: 12 },
      anyText("The head unit that they go to", { example: "H1", required: true }),
    ),
    slot: entry(
      "Slot",
      { width: 10 },
      anyText("The orbital slot that they carry; blank is all of the dish", { example: "97W" }),
    ),
    quantity: entry(
      "How many",
      { unit: "cables", width: 10, format: "integer" },
      whole(1, 64, "Cables of this bundle; blank is what the kind of head unit asks", { example: "4" }),
    ),
    cable: entry(
      "Cable",
      { width: 18 },
      nameIn(cables.name, "A cable of the Parts sheet; blank is the usual one of Site"),
    ),
    length: entry(
      "Length",
      { unit: "m or ft", width: 10, format: "one" },
      number(0, 2000, "Length of each of them, in the unit that Site names", {
        example: "18",
        required: true,
      }),
    ),
    route: entry(
      "Route",
      { width: 12 },
      nameIn(routes.name, "How they run, a route of the Parts sheet; blank is the usual one of Site"),
    ),
    verdict: result("Verdict", { width: 12 }),
    cable_used: result("Cable used", { width: 14 }),
    together: result("Length of all of them", { unit: "m or ft", width: 10, format: "one" }),
    variance: result("Cost variance of their cable", { unit: "money²", width: 10, format: "two" }),
    cable_key: keyed("Cable"),
    check: results(
      "",
      { width: 12 },
      {
        cables: { head: "Cables", unit: "pieces", format: "integer" },
        row: { head: "Row verdict" },
        trouble: { head: "What is wrong" },
      },
    ),
  },
  { rows: ["from", "route"] },
);
