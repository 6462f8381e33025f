/** The jobs of tests/fixtures/distribution/jobs-as-built.json as the tables of a job. */
import asBuilt from "../../../fixtures/distribution/jobs-as-built.json";
import type { Row, Value } from "../job";
import { COLUMNS, type TableName, type Tables } from "./tables";

type Plain = Readonly<Record<string, unknown>>;
type Rows = Plain[];

/** Names of the file's keys where the columns are called otherwise; keys of the same name need none. */
const NAMES: Partial<Record<TableName, Readonly<Record<string, string>>>> = {
  outlets: { quantity: "how_many", from: "fed_from" },
  outlet_details: { way: "route", split: "split_by", pin: "kept" },
  devices: { from: "fed_from", way: "route" },
  head_units: { on: "dish", way: "route" },
  feeders: { quantity: "how_many", way: "route" },
  settings: {
    ...{ level_low: "level_least", level_high: "level_most", usual_cable: "cable", usual_plate: "plate" },
    ...{ usual_way: "route", closes: "resistor", need_margin: "margin" },
  },
  device_parts: {
    nf: "noise_figure",
    max_out: "output_most",
    load_a: "load_amps",
    least_v: "least_volts",
    ohm: "ohms",
  },
  plates: { ohm: "ohms" },
  supplies: { receiver_side: "other_side" },
  head_unit_kinds: {
    ...{
      least_v: "least_volts",
      load_in: "load_unit",
      speaks: "standard",
      band_plan: "plan",
      nf: "noise_figure",
    },
    ...{ feeders_per_slot: "per_slot", in_low: "in_least", in_high: "in_most", sense_a: "output_amps" },
  },
  receivers: {
    ...{ speaks: "standard", rest_v: "rest_volts", command_v: "command_volts", bears_v: "applied_most" },
    nf: "noise_figure",
  },
  feeds: { nf: "noise_figure", load_a: "load_amps", least_v: "least_volts" },
  band_plans: { from_standard: "standard" },
};

const WORDS: Readonly<Record<string, string>> = {
  steered: "towards head unit",
  carrier: "maker's own",
  all: "all ports",
};
const valueOf = (value: unknown): Value => {
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return value;
  return WORDS[String(value)] ?? String(value);
};

function rowOf(table: TableName, row: Plain): Row {
  const columns: readonly string[] = COLUMNS[table];
  return Object.fromEntries(
    Object.entries(row).flatMap(([key, value]) => {
      const column = NAMES[table]?.[key] ?? key;
      return value === null || !columns.includes(column) ? [] : [[column, valueOf(value)]];
    }),
  );
}

const rowsOf = (table: TableName, rows: readonly Plain[]): Row[] => rows.map((row) => rowOf(table, row));
/** A family of parts is an object by name. */
const partsOf = (table: TableName, family: object): Row[] =>
  Object.entries(family).map(([name, row]) => ({
    [COLUMNS[table][0]!]: name,
    ...rowOf(table, row as Plain),
  }));

const { parts } = asBuilt;

export type Inputs = Readonly<
  Record<"slots" | "dishes" | "feeders" | "heads" | "devices" | "rooms", Rows>
> & {
  readonly site: Plain;
};

export function tablesOf(inputs: Inputs): Tables {
  return {
    outlets: rowsOf("outlets", inputs.rooms),
    outlet_details: rowsOf("outlet_details", inputs.rooms),
    devices: rowsOf("devices", inputs.devices),
    head_units: rowsOf("head_units", inputs.heads),
    dishes: rowsOf("dishes", inputs.dishes),
    feeders: rowsOf("feeders", inputs.feeders),
    slots: rowsOf("slots", inputs.slots),
    settings: [{ ...rowOf("settings", inputs.site), unit: "m" }],
    cables: partsOf("cables", parts.cables),
    device_parts: partsOf("device_parts", parts.devices),
    plates: partsOf("plates", parts.plates),
    supplies: partsOf("supplies", parts.supplies),
    head_unit_kinds: Object.entries(parts.head_units).map(([kind, figures]) => ({
      kind,
      bands: parts.band_plans[figures.band_plan as keyof typeof parts.band_plans].length,
      ...rowOf("head_unit_kinds", figures),
      // Of the carrier-commanded kind the file says that every element passes unless its commands column says no.
      ...(figures.speaks === "carrier" ? { pass_block: "yes" } : {}),
    })),
    receivers: partsOf("receivers", parts.receivers),
    feeds: partsOf("feeds", parts.feeds),
    band_plans: Object.entries(parts.band_plans).flatMap(([plan, bands]) =>
      bands.map((band) => ({ plan, ...rowOf("band_plans", band) })),
    ),
    end_resistors: partsOf("end_resistors", parts.end_resistors),
  };
}

type Change = readonly unknown[];
const KEY_OF = { heads: "head", devices: "device", rooms: "outlet", dishes: "dish", feeders: "to" } as const;

/** @returns the inputs with a variant's changes: `[table, row, column, value]`, `["site", column, value]` or a row put in first */
export function changed(inputs: Inputs, changes: readonly Change[]): Inputs {
  const copy = structuredClone(inputs) as unknown as Record<string, Record<string, unknown>[]> & {
    site: Record<string, unknown>;
  };
  for (const change of changes) {
    if (change[0] === "insert first") copy[String(change[1])]!.unshift(change[2] as Record<string, unknown>);
    else if (change[0] === "site") copy.site[String(change[1])] = change[2];
    else {
      const table = String(change[0]) as keyof typeof KEY_OF;
      const row = copy[table]!.find((one) => one[KEY_OF[table]] === change[1])!;
      row[String(change[2])] = change[3];
    }
  }
  return copy as unknown as Inputs;
}
