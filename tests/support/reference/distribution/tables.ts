/**
 * The tables of a job as they stand on the sheets: a list of rows for each, in every row plain values by column. What is
 * blank is absent or "". The columns stand in the order in which the functions of the distribution take them; one whose
 * name starts with "-" is carried along and read by nobody.
 */
import { isFilled, plain, type Row, type Value } from "../job";

const PRICED = ["-price", "-supplier", "-priced", "-until"] as const;

export const COLUMNS = {
  outlets: ["floor", "room", "outlet", "receiver", "how_many", "fed_from", "cable", "run", "plate"],
  outlet_details: ["route", "port", "split_by", "kept", "shortest", "longest"],
  devices: ["device", "fed_from", "part", "cable", "length", "port", "route"],
  head_units: ["head", "kind", "dish", "supply", "cable", "length", "route"],
  dishes: ["dish", "size", "slots", "feed", "off_focus"],
  feeders: ["from", "to", "slot", "how_many", "cable", "length", "route"],
  slots: ["slot", "-purpose", "-obstacle", "eirp", "symbol_rate", "modulation"],
  settings: [
    ...["latitude", "longitude", "height", "size", "unit", "low", "high", "cold", "hot", "level_least"],
    ...["level_most", "length_tolerance", "cable", "plate", "route", "resistor", "availability", "rain_rate"],
    ...["rain_height", "dish_losses", "margin", "slope_most"],
  ],
  cables: ["name", "like", "k1", "k2", "k0", "loop"],
  device_parts: [
    ...["part", "kind", "ways", "port_low", "port_high", "through_low", "through_high", "power", ...PRICED],
    ...["isolation", "drop", "ohms", "amps", "gain_low", "gain_high", "noise_figure", "output_most"],
    ...["load_amps", "least_volts", "commands"],
  ],
  plates: [
    ...["plate", "port_low", "port_high", ...PRICED, "through_low", "through_high", "power", "drop", "ohms"],
    ...["amps", "isolation", "connectors"],
  ],
  supplies: ["supply", "volts", "amps", ...PRICED, "stands", "loss_low", "loss_high", "other_side"],
  head_unit_kinds: [
    ...[
      "kind",
      "bands",
      "out_low",
      "out_high",
      "least_volts",
      "load",
      "load_unit",
      ...PRICED,
      "sits",
      "standard",
    ],
    ...[
      "pass_block",
      "hears_to",
      "outputs",
      "plan",
      "noise_figure",
      "slots",
      "per_slot",
      "in_least",
      "in_most",
    ],
    ...["onward_low", "onward_high", "output_drop", "output_amps", "powers_feed", "aiming"],
  ],
  receivers: [
    ...["kind", "tuners", "standard", "rest_volts", "command_volts", "amps", "applied_most", "noise_figure"],
  ],
  feeds: [
    ...[
      "feed",
      "outputs",
      "gain",
      "noise_figure",
      "if_low",
      "if_high",
      "load_amps",
      "least_volts",
      ...PRICED,
    ],
  ],
  band_plans: ["plan", "band", "mhz", "width", "standard"],
  end_resistors: ["resistor", "ohms", "blocks", ...PRICED],
} as const;

export type TableName = keyof typeof COLUMNS;
export const TABLE_NAMES = Object.keys(COLUMNS) as TableName[];
/** The settings are one row here, one column on the sheet. */
export type Tables = Readonly<Record<TableName, readonly Row[]>>;

/** What a cell of a column of results holds: null stands for a blank. */
export type Answer = Value | null;

export const settingsOf = (tables: Tables): Row => tables.settings[0]!;

/** @returns the number in a cell; `blank` where there is none */
export const numberIn = (row: Row, key: string, blank = NaN): number =>
  isFilled(row, key) ? Number(row[key]) : blank;
/** @returns the words in a cell, in small letters; `blank` where there are none */
export const wordIn = (row: Row, key: string, blank = ""): string =>
  isFilled(row, key) ? plain(row[key]) : blank;

/** @returns the first row of that name */
export const rowNamed = (rows: readonly Row[], key: string, name: Value | undefined): Row | undefined =>
  plain(name) === "" ? undefined : rows.find((row) => plain(row[key]) === plain(name));

/** "97W 113W", "9, 10": what is parted by blanks and commas. */
export const listIn = (row: Row, key: string): string[] =>
  String(row[key] ?? "")
    .split(/[\s,]+/)
    .filter((item) => item !== "");

const METRES_PER_FOOT = 0.3048;
export const metresOf = (tables: Tables, length: number): number =>
  wordIn(settingsOf(tables), "unit") === "ft" ? length * METRES_PER_FOOT : length;

/** A straight line through what is stated at the lowest and at the highest frequency of the settings. */
export function straight(tables: Tables, atLow: number, atHigh: number): (mhz: number) => number {
  const settings = settingsOf(tables);
  const [low, high] = [numberIn(settings, "low"), numberIn(settings, "high")];
  return (mhz) => atLow + ((atHigh - atLow) * (mhz - low)) / (high - low);
}
