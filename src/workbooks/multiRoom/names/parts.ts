import type { Named } from "../../../formula/build";
import { anyText, day, nameIn, number, oneOf, whole } from "../../asks";
import { block, entry, result, results } from "../../names";

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
  },
  { table: ["name", "loop"] },
);

export const passives = block(
  "passives",
  {
    name: entry(
      "Device",
      { width: 34 },
      anyText("Your name for the splitter or tap", { example: "4-way splitter" }),
    ),
    kind: entry(
      "Kind",
      { width: 26 },
      oneOf(["splitter", "tap"], "A splitter, or a tap in a line that goes on", { required: true }),
    ),
    ways: entry(
      "Ways",
      { unit: "ports", width: 12, format: "integer" },
      whole(1, 64, "Ports for outlets or branches", { example: "4", required: true }),
    ),
    port_low: entry(
      "Loss to a port, lowest frequency",
      { unit: "dB", format: "one" },
      number(0.1, 60, "Loss from input to a port at the lowest frequency", {
        example: "7.5",
        required: true,
      }),
    ),
    port_high: entry(
      "Loss to a port, highest frequency",
      { unit: "dB", format: "one" },
      number(0.1, 60, "Loss from input to a port at the highest frequency", {
        example: "9",
        required: true,
      }),
    ),
    through_low: entry(
      "Loss through, lowest frequency",
      { unit: "dB", format: "one" },
      number(0.1, 60, "A tap's loss to the next branch at the lowest frequency; blank for a splitter", {
        example: "1.2",
      }),
    ),
    through_high: entry(
      "Loss through, highest frequency",
      { unit: "dB", format: "one" },
      number(0.1, 60, "A tap's loss to the next branch at the highest frequency; blank for a splitter", {
        example: "2",
      }),
    ),
    power: entry(
      "Power-passing ports",
      { width: 13 },
      oneOf(["no", "one port", "all ports"], "Through which of its ports it passes direct current", {
        required: true,
      }),
    ),
    ...priced("each"),
    pass: results(
      "Loss to the next branch",
      { unit: "dB", format: "one" },
      { low: { head: "lowest frequency" }, high: { head: "highest frequency" } },
    ),
  },
  { port: ["port_low", "port_high"], through: ["through_low", "through_high"] },
);

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
  },
  { out: ["out_low", "out_high"] },
);

export const supplies = block("supplies", {
  name: entry(
    "Supply",
    { width: 34 },
    anyText("Your name for the supply, the inserter, or the receiver that feeds", {
      example: "receiver, 13 V",
    }),
  ),
  volts: entry(
    "Volts",
    { unit: "V", width: 26, format: "one" },
    number(1, 60, "Volts at its output; a receiver gives 13 V at rest (EN 50494, EN 50607: from memory)", {
      example: "13",
      required: true,
    }),
  ),
  amps: entry(
    "Maximum current",
    { unit: "A", width: 12, format: "two" },
    number(0.01, 20, "The maximum current that it gives; receivers give 0.35 to 0.5 A (from memory)", {
      example: "0.4",
      required: true,
    }),
  ),
  by: entry(
    "Provided by",
    { width: 12 },
    oneOf(
      ["this job", "a receiver"],
      "A receiver is there already and is not bought; blank is bought with this job",
    ),
  ),
  ...priced("each"),
});

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
  },
  { loss: ["loss_low", "loss_high"] },
);

export const fittings = block("fittings", {
  name: entry("Part", { width: 34 }, anyText("The part", { example: "compression connector" })),
  per_outlet: entry(
    "Per outlet",
    { unit: "pieces", width: 26, format: "general" },
    number(0, 10_000, "Pieces per outlet", { example: "1" }),
  ),
  per_branch: entry(
    "Per splitter or tap",
    { unit: "pieces", width: 12, format: "general" },
    number(0, 10_000, "Pieces per splitter or tap", { example: "1" }),
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
  pack: entry(
    "In a pack",
    { unit: "pieces", width: 12, format: "integer" },
    number(1, 100_000, "Pieces in the smallest pack that can be bought", { example: "50", required: true }),
  ),
  ...priced("per pack"),
});

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
  },
  { table: ["kind", "tuners"] },
);
