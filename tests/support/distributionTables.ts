/**
 * The rows and parts of tests/fixtures/distribution/jobs-as-built.json as the tables that the functions of a
 * distribution take: columns in the order of the sheets, blanks where the file has no key.
 */
import type { Argument, Cell, Matrix } from "../../src/functions/core/cells";
import fixture from "../fixtures/distribution/jobs-as-built.json";
import { call } from "./functionGroup";
import type { Inputs } from "./jobsAsBuilt";

type Row = Readonly<Record<string, unknown>>;
export type PartRows = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

const cell = (value: unknown): Cell =>
  value === undefined || value === null
    ? null
    : typeof value === "boolean"
      ? value
        ? "yes"
        : "no"
      : (value as Cell);
const table = (rows: readonly Row[], keys: readonly (string | null)[]): Matrix =>
  rows.map((row) => keys.map((key) => (key === null ? null : cell(row[key]))));

const PRICE = [null, null, null, null];
/** Words of the file and words of the sheets. */
const WORDS: Readonly<Record<string, string>> = {
  steered: "towards head unit",
  carrier: "maker's own",
  all: "all ports",
};
const inSheetWords = (rows: readonly Row[]): Row[] =>
  rows.map((row) =>
    Object.fromEntries(
      Object.entries(row).map(([key, value]) => [
        key,
        ["power", "speaks", "receiver_side", "from_standard"].includes(key)
          ? (WORDS[String(value)] ?? value)
          : value,
      ]),
    ),
  );

/** The file's parts, with rows added or changed. */
function withChanges(family: string, changes: PartRows): Record<string, unknown> {
  const own = (fixture.parts as unknown as PartRows)[family]!;
  const changed = changes[family] ?? {};
  return Array.isArray(changed) || Object.values(own).some(Array.isArray)
    ? { ...own, ...changed }
    : Object.fromEntries(
        [...new Set([...Object.keys(own), ...Object.keys(changed)])].map((name) => [
          name,
          { ...(own[name] as Row | undefined), ...(changed[name] as Row | undefined) },
        ]),
      );
}

/** @returns the arguments that every function of the group takes, in order */
export function tablesOf(inputs: Inputs, changes: PartRows = {}): Matrix[] {
  const { site, slots, dishes, feeders, heads, devices, rooms } = inputs;
  const parts = (family: string): Row[] =>
    inSheetWords(
      Object.entries(withChanges(family, changes)).map(([name, row]) => ({ name, ...(row as Row) })),
    );
  const kinds = parts("head_units").map((row): Row => ({
    // The file says of no kind whether its commands pass a DC block; to it those of a maker's own do.
    block: row.commands_pass_block ?? (row.speaks === "maker's own" ? "yes" : undefined),
    ...row,
  }));
  const plans = Object.entries(withChanges("band_plans", changes)).flatMap(([plan, bands]) =>
    inSheetWords(bands as Row[]).map((band) => ({ plan, ...band })),
  );
  const settings = [
    "latitude",
    "longitude",
    "height",
    "dish_size",
    "unit",
    "low",
    "high",
    "cold",
    "hot",
    "level_low",
    "level_high",
    "length_tolerance",
    "usual_cable",
    "usual_plate",
    "usual_way",
    "closes",
    "availability",
    "rain_rate",
    "rain_height",
    "dish_loss",
    "need_margin",
    "slope_most",
  ];
  return [
    table(rooms, ["floor", "room", "outlet", "receiver", "quantity", "from", "cable", "run", "plate"]),
    table(rooms, ["way", "port", "split", "pin", "shortest", "longest"]),
    table(devices, ["device", "from", "part", "cable", "length", "port", "way"]),
    table(heads, ["head", "kind", "on", "supply", "cable", "length", "way"]),
    table(dishes, ["dish", "size", "slots", "feed", "off_focus"]),
    table(feeders, ["from", "to", "slot", "quantity", "cable", "length", "way"]),
    table(slots, ["slot", null, null, "eirp", "symbol_rate", "modulation"]),
    settings.map((key) => [cell(site[key])]),
    table(parts("cables"), ["name", "like", "k1", "k2", "k0", "loop"]),
    table(parts("devices"), [
      ...["name", "kind", "ways", "port_low", "port_high", "through_low", "through_high", "power", ...PRICE],
      ...[
        "isolation",
        "drop",
        "ohm",
        "amps",
        "gain_low",
        "gain_high",
        "nf",
        "max_out",
        "load_a",
        "least_v",
        "commands",
      ],
    ]),
    table(parts("plates"), [
      ...["name", "port_low", "port_high", ...PRICE],
      ...["through_low", "through_high", "power", "drop", "ohm", "amps", "isolation", "connectors"],
    ]),
    table(parts("supplies"), [
      ...["name", "volts", "amps", ...PRICE, "stands", "loss_low", "loss_high", "receiver_side"],
    ]),
    table(kinds, [
      ...["name", "bands", "out_low", "out_high", "least_v", "load", "load_in", ...PRICE],
      ...["sits", "speaks", "block", "hears_to_v", "outputs", "band_plan", "nf", "slots", "feeders_per_slot"],
      ...[
        "in_low",
        "in_high",
        "onward_low",
        "onward_high",
        "output_drop",
        "sense_a",
        "powers_feed",
        "aiming",
      ],
    ]),
    table(parts("receivers"), ["name", "tuners", "speaks", "rest_v", "command_v", "amps", "bears_v", "nf"]),
    table(parts("feeds"), [
      "name",
      "outputs",
      "gain",
      "nf",
      "if_low",
      "if_high",
      "load_a",
      "least_v",
      ...PRICE,
    ]),
    table(plans, ["plan", "band", "mhz", "width", "from_standard"]),
    table(parts("end_resistors"), ["name", "ohms", "blocks", ...PRICE]),
  ];
}

/** The places of the arguments that a test changes. */
export const PLACE = {
  outlets: 0,
  details: 1,
  devices: 2,
  heads: 3,
  dishes: 4,
  feeders: 5,
  slots: 6,
  settings: 7,
};

/** A function's answers as rows. */
export function answersOf(name: string, tables: readonly Argument[]): Matrix {
  const found = call(name, ...tables);
  return Array.isArray(found) ? (found as Matrix) : [[found as Cell]];
}
