import { anyText, nameIn, number, numberOr, portOf, whole } from "../../asks";
import type { Format } from "../../definition";
import { block, entry, result, results } from "../../names";
import { CORNERS } from "../corners";
import { keyed } from "../nameKeys";
import { kinds, routes } from "./labour";
import { cables, passives, plates } from "./parts";
import { types } from "./roomTypes";

/** What the crew measures at the outlet; it stays beside the prediction. */
const measured = (end: "lowest" | "highest") =>
  entry(
    `Measured, ${end} frequency`,
    { unit: "dBµV", width: 11, format: "one" },
    // A meter that finds nothing was read: the diagnosis asks for just that.
    numberOr(["no signal"], 0, 140, "Level measured at the outlet; leave blank until it is measured", {
      example: "61.5",
    }),
  );

const LENGTH = { unit: "m or ft", format: "one" } as const;
/** What counts in the job: the row's own entry, else its type's. */
const used = (head: string, width: number, more: { readonly unit?: string; readonly format?: Format } = {}) =>
  result(`${head} used`, { width, ...more });

export const rooms = block(
  "rooms",
  {
    floor: entry("Floor", { width: 10 }, anyText("Floor or part of the building", { example: "ground" })),
    room: entry("Room", { width: 17 }, anyText("The room", { example: "12" })),
    outlet: entry("Outlet", { width: 9 }, anyText("A name of its own for each outlet", { example: "12-1" })),
    receiver: entry(
      "Receiver",
      { width: 16 },
      anyText(
        "What is connected: receiver, recorder, 2 tuners, or a kind of the Parts sheet; blank is its type's, or a spare outlet; none is a spare outlet of a type with a receiver",
        { example: "receiver" },
      ),
    ),
    quantity: entry(
      "How many",
      { unit: "pieces", width: 8, format: "integer" },
      whole(0, 32, "How many of them at this outlet; blank is its type's, or one", {
        example: "1",
        zero: "note",
      }),
    ),
    from: entry(
      "Fed from",
      { width: 9 },
      anyText("The device, head unit, or outlet with a through port, that feeds this outlet", {
        example: "S2",
        required: true,
      }),
    ),
    cable: entry(
      "Cable",
      { width: 13 },
      nameIn(cables.name, "A cable of the Parts sheet; blank is its type's, or the usual one of Site"),
    ),
    run: entry(
      "Run",
      { unit: "m or ft", width: 9, format: "one" },
      number(
        0.1,
        2000,
        "Length of the cable from there to the outlet, in the unit that Site names; blank is its type's",
        { example: "14.5" },
      ),
    ),
    plate: entry(
      "Wall plate",
      { width: 16 },
      nameIn(plates.name, "A wall plate of the Parts sheet; blank is its type's, or the usual one of Site"),
    ),
    type: entry(
      "Type",
      { width: 12 },
      nameIn(
        types.name,
        "A type of the sheet Room types: a blank to the left or further right in this row means what its type says; may be blank",
      ),
    ),
    verdict: result("Verdict", { width: 12 }),
    margin: result("Margin above minimum", { unit: "dB", width: 9, format: "one" }),
    place: results(
      "",
      { width: 10 },
      {
        head: { head: "Head unit" },
        output: { head: "Output", width: 8, format: "integer" },
        port: { head: "Port used", width: 9 },
        bands: { head: "User bands", width: 12 },
        centres: { head: "Their centres", unit: "MHz", width: 15 },
        tuners: { head: "Tuners", width: 8, format: "integer" },
      },
    ),
    weakest: result("Weakest level", { unit: "dBµV", width: 9, format: "one" }),
    strongest: result("Strongest level", { unit: "dBµV", width: 10, format: "one" }),
    note: entry("Note", { width: 26 }, anyText("Anything the crew should know")),
    route: entry(
      "Route",
      { width: 12 },
      nameIn(
        routes.name,
        "How the cable runs, a route of the Parts sheet; blank is its type's, or the usual one of Site",
      ),
    ),
    port: entry(
      "Port",
      { width: 9 },
      portOf("Port of what feeds it: a number, or through; blank is the next free one"),
    ),
    split: entry(
      "Split by",
      { width: 16 },
      nameIn(
        passives.name,
        "What splits several receivers at this outlet, a device of the Parts sheet; blank is its type's",
      ),
    ),
    kept: entry(
      "User bands kept",
      { width: 12 },
      anyText("Numbers of the user bands that an installed receiver keeps; blank is handed out anew", {
        example: "9 10",
      }),
    ),
    shortest: entry(
      "Shortest run",
      { unit: "m or ft", width: 9, format: "one" },
      number(
        0,
        2000,
        "Shortest length that this run may turn out to have; blank is its type's, or takes the length tolerance on Site",
        {
          example: "12",
        },
      ),
    ),
    longest: entry(
      "Longest run",
      { unit: "m or ft", width: 9, format: "one" },
      number(
        0,
        2000,
        "Longest length that this run may turn out to have; blank is its type's, or takes the length tolerance on Site",
        {
          example: "18",
        },
      ),
    ),
    kind: entry(
      "Price group",
      { width: 12 },
      nameIn(
        kinds.name,
        "A price group of the Parts sheet, for the price of each group; blank is its type's",
      ),
    ),
    level: results(
      "Level",
      { unit: "dBµV", width: 9, format: "one" },
      {
        ...CORNERS,
        own: { head: "weakest at its own bands, hot", width: 11 },
        stretched: { head: "weakest at longest lengths", width: 11 },
      },
    ),
    slope: result("Slope, hot", { unit: "dB", width: 9, format: "one" }),
    noise: results(
      "Carrier to noise",
      { unit: "dB", width: 11, format: "one" },
      {
        slot: { head: "slot nearest its limit", unit: "", width: 11, format: "text" },
        clear: { head: "clear sky" },
        rain: { head: "at the availability wanted" },
        needed: { head: "needed, with margin" },
      },
    ),
    volts: results(
      "",
      { unit: "V", width: 11, format: "two" },
      {
        alone: { head: "Head unit's volts, this receiver on alone" },
        command: { head: "Volts at the output while it commands" },
        applied: { head: "Most volts applied from elsewhere" },
        amps: { head: "Greatest current it gives", unit: "A" },
        supplies: { head: "Volts applied by supplies, receivers unplugged" },
      },
    ),
    check: results(
      "",
      { width: 10 },
      {
        row: { head: "Row verdict" },
        level: { head: "Level verdict" },
        slope: { head: "Slope verdict" },
        noise: { head: "Carrier to noise verdict" },
        commands: { head: "Can command", width: 12 },
        bands: { head: "User bands verdict" },
        connectors: { head: "Connectors verdict" },
        applied: { head: "Applied volts verdict" },
        port: { head: "Open port verdict" },
        trouble: { head: "What is wrong", width: 60 },
      },
    ),
    stretched_check: result("Verdict at longest lengths", { width: 9 }),
    own: result("Set in this row, not by its type", { width: 24 }),
    floor_used: used("Floor", 10),
    room_used: used("Room", 14),
    outlet_used: used("Outlet", 9),
    receiver_used: used("Receiver", 14),
    quantity_used: used("How many", 9, { unit: "pieces", format: "integer" }),
    from_used: used("Fed from", 9),
    cable_used: used("Cable", 14),
    run_used: used("Run", 9, LENGTH),
    plate_used: used("Wall plate", 14),
    route_used: used("Route", 12),
    port_used: result("Port asked for", { width: 9 }),
    split_used: used("Split by", 12),
    kept_used: used("User bands kept", 10),
    shortest_used: used("Shortest run", 9, LENGTH),
    longest_used: used("Longest run", 9, LENGTH),
    kind_used: used("Price group", 12),
    least: result("Run at its shortest", { unit: "m or ft", width: 9, format: "one" }),
    most: result("Run at its longest", { unit: "m or ft", width: 9, format: "one" }),
    parts_cost: result("Cost of its own parts", { unit: "money", width: 10, format: "money" }),
    expected_extra: result("Expected extra cost", { unit: "money", width: 13, format: "two" }),
    variance: result("Cost variance of its cable", { unit: "money²", width: 13, format: "two" }),
    difficulty: result("Difficulty of its place", { unit: "factor", width: 10, format: "two" }),
    harder: result("Added by its place", { unit: "m or ft", width: 10, format: "one" }),
    built_low: measured("lowest"),
    built_high: measured("highest"),
    built_volts: entry(
      "Measured volts",
      { unit: "V", width: 11, format: "one" },
      number(
        0,
        100,
        "Volts measured at the outlet, receivers unplugged and the supply on; blank until measured",
        { example: "23.8" },
      ),
    ),
    from_key: keyed("Fed from"),
    cable_key: keyed("Cable"),
    plate_key: keyed("Wall plate"),
    head_key: keyed("Head unit"),
    split_key: keyed("Split by"),
    kind_key: keyed("Price group"),
    type_key: keyed("Type"),
    own_key: result("Type, of rows with entries of their own", { width: 12 }),
    room_key: result("Room, as counted", { width: 12 }),
    type_row: result("Row of its type", { width: 9, format: "integer" }),
    route_key: keyed("Route"),
    where_key: result("Place of its difficulty, as counted", { width: 12 }),
  },
  {
    rows: ["floor_used", "plate_used"],
    details: ["route_used", "longest_used"],
    corners: ["level_low_cold", "level_high_hot"],
    built: ["built_low", "built_high"],
  },
);
