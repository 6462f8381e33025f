/** The tables of the distribution, as they stand on the sheets of a job; what a sheet leaves to a default is filled in. */
import { isFilled, rowsOf, type Job, type Row, type Value } from "./job";
import { referenceOf, type Reference } from "./distribution";
import { workedOut, type Worked } from "./distribution/worked";
import { slotName } from "./slotName";
import { COLUMNS, type TableName, type Tables } from "./distribution/tables";

const PRICED = ["price", "supplier", "priced", "until"] as const;

/** Where each table stands: the block, and its columns in the order of {@link COLUMNS}. */
const SHEETS: Readonly<Record<Exclude<TableName, "settings">, readonly [string, readonly string[]]>> = {
  outlets: ["rooms", ["floor", "room", "outlet", "receiver", "quantity", "from", "cable", "run", "plate"]],
  outlet_details: ["rooms", ["route", "port", "split", "kept", "shortest", "longest"]],
  devices: ["branches", ["id", "from", "device", "cable", "length", "port", "route"]],
  head_units: ["heads", ["id", "type", "dish", "supply", "cable", "length", "route"]],
  dishes: ["dishes", ["name", "size", "slots", "feed", "off_focus"]],
  feeders: ["feeders", ["from", "to", "slot", "quantity", "cable", "length", "route"]],
  slots: ["slots", ["slot", "service", "obstacle", "eirp", "symbol_rate", "modulation"]],
  cables: ["cables", ["name", "like", "k1", "k2", "k0", "loop"]],
  device_parts: [
    "passives",
    [
      ...["name", "kind", "ways", "port_low", "port_high", "through_low", "through_high", "power", ...PRICED],
      ...["isolation", "drop", "ohms", "amps", "gain_low", "gain_high", "noise", "most_output"],
      ...["load", "least", "commands"],
    ],
  ],
  plates: [
    "plates",
    [
      ...["name", "loss_low", "loss_high", ...PRICED, "through_low", "through_high", "power", "drop", "ohms"],
      ...["amps", "isolation", "connectors"],
    ],
  ],
  supplies: [
    "supplies",
    ["name", "volts", "amps", ...PRICED, "stands", "loss_low", "loss_high", "other_side"],
  ],
  head_unit_kinds: [
    "units",
    [
      ...["name", "bands", "out_low", "out_high", "least", "load", "kind", ...PRICED, "sits", "standard"],
      ...["pass_block", "deaf_above", "outputs", "plan", "noise", "slots", "feeders", "in_low", "in_high"],
      ...["onward_low", "onward_high", "drop", "sense", "powers_feed", "aiming"],
    ],
  ],
  receivers: ["receivers", ["kind", "tuners", "standard", "rest", "command", "amps", "bears", "noise"]],
  feeds: ["feeds", ["name", "outputs", "gain", "noise", "if_low", "if_high", "load", "least", ...PRICED]],
  band_plans: ["plans", ["plan", "band", "centre", "width", "standard"]],
  end_resistors: ["resistors", ["name", "ohms", "blocks", ...PRICED]],
};

/** What Site has for each setting; blank losses are 0.8 dB, a blank margin 2 dB, the greatest slope 15 dB. */
const SETTINGS: readonly (readonly [string, Value | undefined])[] = [
  ["site_latitude", undefined],
  ["site_longitude", undefined],
  ["site_height", undefined],
  ["site_dish", undefined],
  ["site_unit", undefined],
  ["site_low", undefined],
  ["site_high", undefined],
  ["site_cold", undefined],
  ["site_hot", undefined],
  ["site_level_low", undefined],
  ["site_level_high", undefined],
  ["site_run_tolerance", undefined],
  ["site_usual_cable", undefined],
  ["site_usual_plate", undefined],
  ["site_usual_route", undefined],
  ["site_closes", undefined],
  ["site_availability", undefined],
  ["site_rain_rate", undefined],
  ["site_rain_height", undefined],
  ["site_dish_loss", 0.8],
  ["site_noise_margin", 2],
  ["", 15],
];

export const settingsIn = (job: Job): Value[] =>
  SETTINGS.map(([name, blank]) => (isFilled(job.fields, name) ? job.fields[name]! : (blank ?? "")));

const made = new WeakMap<Job, Tables>();
/** @returns the tables of a job, made once */
export function tablesOf(job: Job): Tables {
  let one = made.get(job);
  if (!one) made.set(job, (one = makeTables(job)));
  return one;
}

function makeTables(job: Job): Tables {
  const settings = Object.fromEntries(COLUMNS.settings.map((key, at) => [key, settingsIn(job)[at]!]));
  const sheets = Object.entries(SHEETS).map(([table, [block, keys]]) => {
    const columns = COLUMNS[table as TableName];
    return [
      table,
      rowsOf(job, block).map((row): Row =>
        Object.fromEntries(
          keys.flatMap((key, at) =>
            isFilled(row, key)
              ? [
                  [
                    columns[at]!,
                    block === "slots" && key === "slot" ? slotName(row[key]) : row[key]!,
                  ] as const,
                ]
              : [],
          ),
        ),
      ),
    ];
  });
  return { ...Object.fromEntries(sheets), settings: [settings] } as Tables;
}

const worked = new WeakMap<Job, Worked>();
/** @returns the job's distribution, worked out once */
export function workedOf(job: Job): Worked {
  let one = worked.get(job);
  if (!one) worked.set(job, (one = workedOut(tablesOf(job))));
  return one;
}

const answered = new WeakMap<Job, Reference>();
/** @returns every column of the functions for the job, worked out once */
export function answersOf(job: Job): Reference {
  let one = answered.get(job);
  if (!one) answered.set(job, (one = referenceOf(tablesOf(job))));
  return one;
}
