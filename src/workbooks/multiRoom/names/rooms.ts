import { anyText, nameIn, number, numberOr, whole } from "../../asks";
import { block, entry, result, results } from "../../names";
import { CORNERS } from "../corners";
import { keyed } from "../nameKeys";
import { kinds } from "./labour";
import { cables, plates } from "./parts";

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

export const rooms = block(
  "rooms",
  {
    floor: entry("Floor", { width: 10 }, anyText("Floor or part of the building", { example: "ground" })),
    room: entry("Room", { width: 20 }, anyText("The room", { example: "12" })),
    outlet: entry("Outlet", { width: 9 }, anyText("A name of its own for each outlet", { example: "12-1" })),
    receiver: entry(
      "Receiver",
      { width: 20 },
      anyText("What is connected: receiver, recorder, 2 tuners, or a kind of the Parts sheet", {
        example: "receiver",
        required: true,
      }),
    ),
    quantity: entry(
      "How many",
      { unit: "pieces", width: 10, format: "integer" },
      whole(0, 32, "How many of them at this outlet; blank is one", { example: "1", zero: "note" }),
    ),
    from: entry(
      "Fed from",
      { width: 10 },
      anyText("The branch or the head unit that feeds this outlet", { example: "B2", required: true }),
    ),
    cable: entry(
      "Cable",
      { width: 18 },
      nameIn(cables.name, "A cable of the Parts sheet", { required: true }),
    ),
    run: entry(
      "Run",
      { unit: "m or ft", width: 9, format: "one" },
      number(0.1, 2000, "Length of the cable from there to the outlet, in the unit that Site names", {
        example: "14.5",
        required: true,
      }),
    ),
    plate: entry(
      "Wall plate",
      { width: 16 },
      nameIn(plates.name, "A wall plate of the Parts sheet", { required: true }),
    ),
    verdict: result("Verdict", { width: 9 }),
    commands: result("Commands", { width: 12 }),
    margin: result("Margin above minimum", { unit: "dB", width: 9, format: "one" }),
    tuners: result("Tuners", { width: 8, format: "integer" }),
    head: result("Head unit", { width: 10 }),
    bands: result("User bands", { width: 10 }),
    weakest: result("Weakest level", { unit: "dBµV", width: 9, format: "one" }),
    strongest: result("Strongest level", { unit: "dBµV", width: 10, format: "one" }),
    note: entry("Note", { width: 26 }, anyText("Anything the crew should know")),
    shortest: entry(
      "Shortest run",
      { unit: "m or ft", width: 9, format: "one" },
      number(
        0,
        2000,
        "Shortest length that this run may turn out to have; blank takes the length tolerance on Site",
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
        "Longest length that this run may turn out to have; blank takes the length tolerance on Site",
        {
          example: "18",
        },
      ),
    ),
    kind: entry(
      "Price group",
      { width: 12 },
      nameIn(kinds.name, "A price group of the Parts sheet, for the price of each group; may be blank"),
    ),
    check: results(
      "Level verdict",
      { width: 10 },
      { low: { head: "at its weakest" }, high: { head: "at its strongest" } },
    ),
    slope: result("Slope, hot", { unit: "dB", width: 9, format: "one" }),
    slope_check: result("Slope verdict", { width: 9 }),
    least: result("Run at its shortest", { unit: "m or ft", width: 9, format: "one" }),
    most: result("Run at its longest", { unit: "m or ft", width: 9, format: "one" }),
    stretched: result("Weakest level at longest lengths", { unit: "dBµV", width: 13, format: "one" }),
    stretched_check: result("Verdict at longest lengths", { width: 9 }),
    parts_cost: result("Cost of its own parts", { unit: "money", width: 10, format: "money" }),
    expected_extra: result("Expected extra cost", { unit: "money", width: 13, format: "two" }),
    variance: result("Cost variance of its cable", { unit: "money²", width: 13, format: "two" }),
    loss: results("Run loss", { unit: "dB", width: 9, format: "one" }, CORNERS),
    level: results("Level", { unit: "dBµV", width: 9, format: "one" }, CORNERS),
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
    kind_key: keyed("Price group"),
  },
  { extremes: ["weakest", "strongest"], built: ["built_low", "built_high"] },
);
