import type { Named } from "../../../formula/build";
import { anyText, day, nameIn, number, oneOf, whole } from "../../asks";
import { block, entry, result } from "../../names";
import { pieceWords } from "./pieces";

/** A price with where it comes from and how long it holds. */
const priced = (per: string) => ({
  price: entry(
    `Price ${per}`,
    { unit: "money", width: 12, format: "money" },
    number(0, 1_000_000, `Price ${per}, without tax`, { example: "42.50", required: true, zero: "reason" }),
  ),
  supplier: entry("Supplier", { width: 14 }, anyText("Who quoted the price")),
  priced: entry(
    "Priced on",
    { width: 12, format: "date" },
    day("The day of the price", { example: "2026-10-01" }),
  ),
  until: entry(
    "Valid until",
    { width: 12, format: "date" },
    day("The last day on which the price holds", { example: "2026-12-31", required: true }),
  ),
});

/** In the last column, because the functions read the ones before it by their place, in workbooks of any version. */
const article = entry(
  "Article",
  { width: 16 },
  anyText("Its number in the supplier's price list", { example: "K-110" }),
);

/** Of a part that is priced by the piece; before the article, for the same reason. */
const pack = entry(
  "In a pack",
  { unit: "pieces", width: 12, format: "integer" },
  whole(
    1,
    100_000,
    "Pieces in the smallest pack that can be bought; blank is 1. The price stays that of a piece, and whole packs are bought",
    { example: "10" },
  ),
);

const yesOrNo = (head: string, what: string) => entry(head, { width: 12 }, oneOf(["yes", "no"], what));
/** Figures that most parts do not have: blank says so. */
const figure = (
  head: string,
  unit: string,
  [min, max]: readonly [number, number],
  what: string,
  format: "one" | "two" = "one",
) => entry(head, { unit, width: 12, format }, number(min, max, what));

export const POWER_PASSING = ["no", "one port", "all ports", "towards head unit"] as const;
export const CONTROL_STANDARDS = ["EN 50494", "EN 50607", "maker's own"] as const;

/** What a part with ports does to direct current. */
const passing = {
  drop: figure(
    "Drop of its diodes",
    "V",
    [0, 2],
    "Volts that a diode towards the head unit takes; blank is 0.7 V (from memory)",
    "two",
  ),
  ohms: figure("Pass resistance", "Ω", [0, 20], "Resistance of one port; blank is 0", "two"),
  amps: figure("Maximum current", "A", [0.01, 20], "Maximum current through it; blank is no limit", "two"),
};

/** One of the three of a cable's loss. */
const coefficient = (head: string, min = -1) =>
  entry(
    head,
    { unit: "dB per 100 m", width: 12, format: "general" },
    number(
      min,
      10,
      "Loss per 100 m at 20 °C = √f coefficient × √f + f coefficient × f + constant, f in MHz; leave all three blank to use the built-in type",
    ),
  );

export const cableTypes: Named = { name: "cable_types" };

export const cables = block(
  "cables",
  {
    name: entry(
      "Cable",
      { width: 34 },
      anyText("Your name for the cable, as used on the other sheets", { example: "outdoor trunk" }),
    ),
    like: entry(
      "Built-in type",
      { width: 26 },
      nameIn(cableTypes, "The built-in type whose figures fill the blanks here"),
    ),
    k1: coefficient("Loss coefficient, √f", 0.001),
    k2: coefficient("Loss coefficient, f"),
    k0: coefficient("Loss coefficient, constant"),
    loop: entry(
      "Loop resistance",
      { unit: "Ω per 100 m", width: 12, format: "two" },
      number(
        0.1,
        500,
        "Centre and screen together at 20 °C; blank uses the built-in type, which is from memory and ±40 % for the screen: measure or ask the maker",
      ),
    ),
    reel: entry(
      "Reel",
      { unit: "m or ft", width: 12, format: "integer" },
      number(10, 10_000, "Length of a whole reel, in the unit that Site names", {
        example: "100",
        required: true,
      }),
    ),
    ...priced("per reel"),
    each: result("Price per m or ft", { unit: "money", width: 12, format: "three" }),
    article,
  },
  { table: ["name", "loop"], terms: ["price", "until"] },
);

export const DEVICE_KINDS = ["splitter", "tap", "amplifier", "equaliser", "attenuator", "filter"] as const;

export const passives = block(
  "passives",
  {
    name: entry("Device", { width: 34 }, anyText("Your name for the device", { example: "4-way splitter" })),
    kind: entry(
      "Kind",
      { width: 26 },
      oneOf(DEVICE_KINDS, "What it is; a tap sits in a line that goes on", { required: true }),
    ),
    ways: entry(
      "Ways",
      { unit: "ports", width: 12, format: "integer" },
      whole(1, 64, "Ports for outlets or devices; a tap's through port is not one of them", {
        example: "4",
        required: true,
      }),
    ),
    port_low: entry(
      "Loss to a port, lowest frequency",
      { unit: "dB", format: "one" },
      number(
        0,
        60,
        "Loss from input to a port at the lowest frequency; an amplifier's gain stands to the right",
        {
          example: "7.5",
        },
      ),
    ),
    port_high: entry(
      "Loss to a port, highest frequency",
      { unit: "dB", format: "one" },
      number(
        0,
        60,
        "Loss from input to a port at the highest frequency; an amplifier's gain stands to the right",
        {
          example: "9",
        },
      ),
    ),
    through_low: entry(
      "Loss through, lowest frequency",
      { unit: "dB", format: "one" },
      number(0.1, 60, "A tap's loss to the next device at the lowest frequency; blank for the others", {
        example: "1.2",
      }),
    ),
    through_high: entry(
      "Loss through, highest frequency",
      { unit: "dB", format: "one" },
      number(0.1, 60, "A tap's loss to the next device at the highest frequency; blank for the others", {
        example: "2",
      }),
    ),
    power: entry(
      "Power-passing ports",
      { width: 13 },
      oneOf(
        POWER_PASSING,
        "Through which of its ports it passes direct current: one is the first of a splitter and the through port of a tap; towards the head unit has a diode in each",
        { required: true },
      ),
    ),
    ...priced("each"),
    isolation: figure(
      "Isolation between ports",
      "dB",
      [0, 80],
      "Isolation between two of its ports; blank is not stated",
    ),
    ...passing,
    gain_low: figure(
      "Gain, lowest frequency",
      "dB",
      [-20, 60],
      "An amplifier's gain at the lowest frequency",
    ),
    gain_high: figure(
      "Gain, highest frequency",
      "dB",
      [-20, 60],
      "An amplifier's gain at the highest frequency",
    ),
    noise: figure("Noise figure", "dB", [0, 30], "An amplifier's noise figure"),
    most_output: figure(
      "Maximum output",
      "dBµV",
      [60, 140],
      "An amplifier's maximum output for two carriers; blank is not judged",
    ),
    load: figure("Load", "A", [0, 10], "What an amplifier draws, at the port away from the head unit", "two"),
    least: figure("Minimum volts", "V", [0, 60], "Minimum volts at which an amplifier works"),
    commands: yesOrNo("Passes commands", "Whether receivers' commands get past it; blank is yes"),
    pack,
    article,
  },
  { rows: ["name", "commands"], terms: ["price", "until"] },
);

export const planNames: Named = { name: "plans_plan" };

export const units = block(
  "units",
  {
    name: entry(
      "Head unit",
      { width: 34 },
      anyText("Your name for this kind of head unit", { example: "head unit, 8 bands" }),
    ),
    bands: entry(
      "User bands",
      { unit: "per cable", width: 26, format: "integer" },
      whole(1, 32, "User bands on its cable: at most 8 (EN 50494) or 32 (EN 50607)", {
        example: "8",
        required: true,
      }),
    ),
    out_low: entry(
      "Output, lowest frequency",
      { unit: "dBµV", width: 12, format: "one" },
      number(40, 120, "Output level at the lowest frequency", { example: "84", required: true }),
    ),
    out_high: entry(
      "Output, highest frequency",
      { unit: "dBµV", width: 12, format: "one" },
      number(40, 120, "Output level at the highest frequency", { example: "82", required: true }),
    ),
    least: entry(
      "Minimum volts",
      { unit: "V", width: 12, format: "one" },
      number(
        5,
        60,
        "Minimum volts at its own connector, from its maker; near 10.5 V for kinds fed by receivers (EN 50494, EN 50607: from memory)",
        { example: "10.5", required: true },
      ),
    ),
    load: entry(
      "Load",
      { unit: "A or W", width: 12, format: "two" },
      number(0.01, 100, "What it draws: amperes or watts", { example: "0.35", required: true }),
    ),
    kind: entry(
      "Unit of the load",
      { width: 12 },
      oneOf(["A", "W"], "A for a constant current, W for a constant power", { required: true }),
    ),
    ...priced("each"),
    sits: entry(
      "Sits",
      { width: 12 },
      oneOf(["on the dish", "fed"], "On the dish as its feed, or fed by feeder cables; blank is on the dish"),
    ),
    standard: entry(
      "Control standard",
      { width: 12 },
      oneOf(CONTROL_STANDARDS, "How receivers command it; while it is blank, commands are not judged"),
    ),
    pass_block: yesOrNo(
      "Commands pass a DC block",
      "For a maker's own standard: whether its commands get past what blocks direct current",
    ),
    deaf_above: figure(
      "Not above",
      "V",
      [5, 60],
      "For a maker's own standard: above how many volts on its line it hears no command; blank is no such limit",
    ),
    outputs: entry(
      "Outputs",
      { unit: "pieces", width: 12, format: "integer" },
      whole(1, 16, "Its outputs, each with all user bands; blank is 1", { example: "2" }),
    ),
    plan: entry(
      "Band plan",
      { width: 14 },
      nameIn(planNames, "Its band plan, further down; blank has user bands without a frequency"),
    ),
    noise: figure(
      "Noise figure",
      "dB",
      [0, 30],
      "Its noise figure; while blank, carrier to noise is not asked",
    ),
    slots: entry(
      "Slots",
      { unit: "pieces", width: 12, format: "integer" },
      whole(1, 16, "How many orbital slots it takes; blank is 1", { example: "2" }),
    ),
    feeders: entry(
      "Feeders for each slot",
      { unit: "cables", width: 12, format: "integer" },
      whole(1, 8, "Cables that it takes for each slot; blank is 4 (common practice, no source)", {
        example: "4",
      }),
    ),
    in_low: figure("Minimum input", "dBµV", [20, 120], "Minimum level at its inputs; blank is not judged"),
    in_high: figure("Maximum input", "dBµV", [20, 120], "Maximum level at its inputs; blank is not judged"),
    onward_low: figure(
      "Loss to the next, lowest frequency",
      "dB",
      [-20, 60],
      "Loss from an input to the next switch; blank for one that hands nothing on",
    ),
    onward_high: figure(
      "Loss to the next, highest frequency",
      "dB",
      [-20, 60],
      "Loss from an input to the next switch; blank for one that hands nothing on",
    ),
    drop: figure(
      "Diode at each output",
      "V",
      [0, 2],
      "Volts that the diode at each output takes; blank is none",
      "two",
    ),
    sense: figure(
      "Current at each output",
      "A",
      [0, 2],
      "What it draws at each output where they do not power it; blank where they do",
      "two",
    ),
    powers_feed: yesOrNo(
      "Powers its feed",
      "Whether it feeds the feed on the dish through the feeders; blank is no",
    ),
    aiming: entry(
      "Aiming mode",
      { width: 22 },
      anyText("How it is read while the dish is pointed, from its maker; blank says to ask", {
        example: "passes the slot itself until a receiver commands",
      }),
    ),
    pack,
    article,
  },
  { out: ["out_low", "out_high"], rows: ["name", "aiming"], terms: ["price", "until"] },
);

export const supplies = block(
  "supplies",
  {
    name: entry(
      "Supply",
      { width: 34 },
      anyText("Your name for the supply or the inserter", { example: "inserter 24 V" }),
    ),
    volts: entry(
      "Volts",
      { unit: "V", width: 26, format: "one" },
      number(1, 60, "Volts at its output", { example: "24", required: true }),
    ),
    amps: entry(
      "Maximum current",
      { unit: "A", width: 12, format: "two" },
      number(0.01, 20, "The maximum current that it gives", { example: "1", required: true }),
    ),
    ...priced("each"),
    stands: entry(
      "Stands",
      { width: 14 },
      oneOf(
        ["in the line", "at the head unit"],
        "In the line to the receivers, or at the head unit itself; blank is in the line",
      ),
    ),
    loss_low: figure("Loss, lowest frequency", "dB", [0, 20], "Loss in the line; blank is 0"),
    loss_high: figure("Loss, highest frequency", "dB", [0, 20], "Loss in the line; blank is 0"),
    other_side: entry(
      "Other side passes",
      { width: 12 },
      oneOf(["no", "all ports"], "What its side towards the receivers passes of direct current; blank is no"),
    ),
    pack,
    article,
  },
  { rows: ["name", "other_side"], terms: ["price", "until"] },
);

export const plates = block(
  "plates",
  {
    name: entry(
      "Wall plate",
      { width: 34 },
      anyText("Your name for the outlet's plate", { example: "single outlet" }),
    ),
    loss_low: entry(
      "Loss, lowest frequency",
      { unit: "dB", width: 26, format: "one" },
      number(0, 60, "Loss of the plate at the lowest frequency", {
        example: "0.8",
        required: true,
        zero: "note",
      }),
    ),
    loss_high: entry(
      "Loss, highest frequency",
      { unit: "dB", width: 12, format: "one" },
      number(0, 60, "Loss of the plate at the highest frequency", {
        example: "1.5",
        required: true,
        zero: "note",
      }),
    ),
    ...priced("each"),
    through_low: figure(
      "Loss through, lowest frequency",
      "dB",
      [0, 60],
      "A loop-through plate's loss to the next outlet; blank for a plain one",
    ),
    through_high: figure(
      "Loss through, highest frequency",
      "dB",
      [0, 60],
      "A loop-through plate's loss to the next outlet; blank for a plain one",
    ),
    power: entry(
      "Power-passing ports",
      { width: 13 },
      oneOf(POWER_PASSING, "What it passes of direct current; blank is all ports"),
    ),
    ...passing,
    isolation: figure(
      "Isolation between ports",
      "dB",
      [0, 80],
      "Isolation between its connector and the through port; blank is not stated",
    ),
    connectors: entry(
      "Connectors",
      { unit: "pieces", width: 12, format: "integer" },
      whole(1, 8, "How many receivers it can be connected to; blank is 1", { example: "1" }),
    ),
    pack,
    article,
  },
  { rows: ["name", "connectors"], terms: ["price", "until"] },
);

export const fittings = block(
  "fittings",
  {
    name: entry("Part", { width: 34 }, anyText("The part", { example: "compression connector" })),
    per_outlet: entry(
      "Per outlet",
      { unit: "pieces", width: 26, format: "general" },
      number(0, 10_000, "Pieces per outlet", { example: "1" }),
    ),
    per_branch: entry(
      "Per device",
      { unit: "pieces", width: 12, format: "general" },
      number(0, 10_000, "Pieces per device of Distribution", { example: "1" }),
    ),
    per_head: entry(
      "Per head unit",
      { unit: "pieces", width: 12, format: "general" },
      number(0, 10_000, "Pieces per head unit", { example: "1" }),
    ),
    fixed: entry(
      "Per job",
      { unit: "pieces", width: 12, format: "general" },
      number(0, 10_000, "Pieces per job", { example: "1" }),
    ),
    piece: entry(
      "For each",
      { width: 22 },
      nameIn(pieceWords, "What is counted in the distribution, one for each of it; blank for nothing"),
    ),
    pack: entry(
      "In a pack",
      { unit: "pieces", width: 12, format: "integer" },
      number(1, 100_000, "Pieces in the smallest pack that can be bought", { example: "50", required: true }),
    ),
    ...priced("per pack"),
    article,
  },
  { terms: ["price", "until"] },
);

export const receivers = block(
  "receivers",
  {
    kind: entry(
      "Kind",
      { width: 34 },
      anyText("A kind of receiver; plain receivers and recorders are known already", {
        example: "recorder, 4 tuners",
      }),
    ),
    tuners: entry(
      "Tuners",
      { width: 26, format: "integer" },
      whole(0, 32, "Tuners that it uses at once: a user band each", { example: "4", required: true }),
    ),
    standard: entry(
      "Control standard",
      { width: 12 },
      oneOf(CONTROL_STANDARDS, "How it commands a head unit; blank is EN 50494"),
    ),
    rest: figure("Volts at rest", "V", [0, 60], "Volts that it puts on its cable at rest; blank is 13"),
    command: figure("Volts while commanding", "V", [0, 60], "Volts while it commands; blank is 18"),
    amps: figure(
      "Maximum current",
      "A",
      [0.01, 5],
      "Maximum current that it gives; blank is 0.4 (from memory)",
      "two",
    ),
    bears: figure(
      "Maximum applied volts",
      "V",
      [0, 60],
      "Volts from elsewhere that it bears at its connector; blank is 19 (common practice, no source)",
    ),
    noise: figure("Noise figure", "dB", [0, 30], "Its noise figure; blank is 10 (from memory)"),
  },
  { table: ["kind", "tuners"], rows: ["kind", "noise"] },
);

export const feeds = block(
  "feeds",
  {
    name: entry(
      "Feed",
      { width: 34 },
      anyText("Your name for the feed of a dish", { example: "four-output feed" }),
    ),
    outputs: entry(
      "Outputs",
      { unit: "for each slot", width: 26, format: "integer" },
      whole(1, 16, "Its outputs", { example: "4", required: true }),
    ),
    gain: entry(
      "Gain",
      { unit: "dB", width: 12, format: "one" },
      number(30, 80, "Conversion gain", { example: "54", required: true }),
    ),
    noise: entry(
      "Noise figure",
      { unit: "dB", width: 12, format: "one" },
      number(0, 10, "Noise figure", { example: "0.6", required: true }),
    ),
    if_low: figure("Lowest frequency", "MHz", [100, 3500], "Of what it gives; blank is that of Site"),
    if_high: figure("Highest frequency", "MHz", [100, 3500], "Of what it gives; blank is that of Site"),
    load: entry(
      "Load",
      { unit: "A", width: 12, format: "two" },
      number(0.01, 5, "What it draws", { example: "0.2", required: true }),
    ),
    least: entry(
      "Minimum volts",
      { unit: "V", width: 12, format: "one" },
      number(1, 60, "Minimum volts at its own connector", { example: "11", required: true }),
    ),
    ...priced("each"),
    pack,
    article,
  },
  { rows: ["name", "least"], terms: ["price", "until"] },
);

export const plans = block(
  "plans",
  {
    plan: entry("Band plan", { width: 34 }, anyText("Your name for the plan", { example: "8 bands" })),
    band: entry(
      "User band",
      { width: 26, format: "integer" },
      whole(1, 32, "Number of the user band", { example: "1", required: true }),
    ),
    centre: entry(
      "Centre",
      { unit: "MHz", width: 12, format: "integer" },
      number(100, 3500, "Centre of the user band", { example: "1210", required: true }),
    ),
    width: entry(
      "Width",
      { unit: "MHz", width: 12, format: "integer" },
      number(5, 500, "Width of the user band", { example: "40", required: true }),
    ),
    standard: entry(
      "From standard",
      { width: 12 },
      oneOf(
        CONTROL_STANDARDS,
        "Which receivers can use it; blank is EN 50494 up to user band 8 and EN 50607 above",
      ),
    ),
  },
  { rows: ["plan", "standard"] },
);

export const resistors = block(
  "resistors",
  {
    name: entry(
      "End resistor",
      { width: 34 },
      anyText("Your name for what closes an open port", { example: "end resistor" }),
    ),
    ohms: entry(
      "Resistance",
      { unit: "Ω", width: 26, format: "integer" },
      number(10, 1000, "Its resistance; blank is 75", { example: "75" }),
    ),
    blocks: yesOrNo(
      "Blocks power",
      "Whether it keeps direct current out: 75 Ω on 24 V is 7.7 W; blank is no",
    ),
    ...priced("each"),
    pack,
    article,
  },
  { rows: ["name", "blocks"], terms: ["price", "until"] },
);
