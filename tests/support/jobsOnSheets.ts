/** The jobs of tests/fixtures/distribution/jobs-as-built.json as someone would type them into the multi-room estimate. */
import type { JobInputs } from "../../src/workbooks/definition";
import { startingPoint } from "../../src/workbooks/multiRoom/startingPoint";
import fixture from "../fixtures/distribution/jobs-as-built.json";

type Cell = string | number;
type Row = Readonly<Record<string, string | number | boolean | undefined>>;
type Rows = readonly Readonly<Record<string, Cell>>[];
type Inputs = { readonly site: Row } & Readonly<
  Record<"slots" | "dishes" | "feeders" | "heads" | "devices" | "rooms", readonly Row[]>
>;

const parts = fixture.parts as unknown as Readonly<Record<string, Readonly<Record<string, Row>>>>;

/** What the fixture calls otherwise than the sheets. */
const WORDS: Readonly<Record<string, string>> = {
  carrier: "maker's own",
  steered: "towards head unit",
  all: "all ports",
};

/** @param columns by the sheet's column: the fixture's, or a value for every row */
const rowsOf = (
  rows: readonly Row[],
  columns: Readonly<Record<string, string | ((row: Row) => Row[string])>>,
): Rows =>
  rows.map((row) =>
    Object.fromEntries(
      Object.entries(columns).flatMap(([key, from]): [string, Cell][] => {
        const value = typeof from === "string" ? row[from] : from(row);
        if (value === undefined) return [];
        if (typeof value === "boolean") return [[key, value ? "yes" : "no"]];
        return [[key, WORDS[value] ?? value]];
      }),
    ),
  );

const named = (list: Readonly<Record<string, Row>>): Row[] =>
  Object.entries(list).map(([name, row]) => ({ name, ...row }));
const usual = (value: Cell) => (): Cell => value;
const PRICED = { price: usual(10), until: usual(60000) };

const partsOnSheet: Readonly<Record<string, Rows>> = {
  cables: rowsOf(named(parts.cables!), {
    name: "name",
    k1: "k1",
    k2: "k2",
    k0: "k0",
    loop: "loop",
    reel: usual(100),
    ...PRICED,
  }),
  passives: rowsOf(named(parts.devices!), {
    name: "name",
    kind: "kind",
    ways: ({ ways }) => ways ?? 1,
    port_low: "port_low",
    port_high: "port_high",
    through_low: "through_low",
    through_high: "through_high",
    power: "power",
    ...PRICED,
    isolation: "isolation",
    drop: "drop",
    ohms: "ohm",
    amps: "amps",
    gain_low: "gain_low",
    gain_high: "gain_high",
    noise: "nf",
    most_output: "max_out",
    load: "load_a",
    least: "least_v",
    commands: "commands",
  }),
  plates: rowsOf(named(parts.plates!), {
    name: "name",
    loss_low: "port_low",
    loss_high: "port_high",
    ...PRICED,
    through_low: "through_low",
    through_high: "through_high",
    power: "power",
    drop: "drop",
    ohms: "ohm",
    isolation: "isolation",
    connectors: "connectors",
  }),
  supplies: rowsOf(named(parts.supplies!), {
    name: "name",
    volts: "volts",
    amps: "amps",
    ...PRICED,
    stands: "stands",
    loss_low: "loss_low",
    loss_high: "loss_high",
    other_side: "receiver_side",
  }),
  units: rowsOf(named(parts.head_units!), {
    name: "name",
    bands: ({ band_plan }) => (parts.band_plans![String(band_plan)] as unknown as readonly Row[]).length,
    out_low: "out_low",
    out_high: "out_high",
    least: "least_v",
    load: "load",
    kind: "load_in",
    ...PRICED,
    sits: "sits",
    standard: "speaks",
    pass_block: ({ speaks }) => (speaks === "carrier" ? "yes" : undefined),
    outputs: "outputs",
    plan: "band_plan",
    noise: "nf",
    slots: "slots",
    feeders: "feeders_per_slot",
    in_low: "in_low",
    in_high: "in_high",
    onward_low: "onward_low",
    onward_high: "onward_high",
    drop: "output_drop",
    sense: "sense_a",
    powers_feed: "powers_feed",
  }),
  receivers: rowsOf(named(parts.receivers!), {
    kind: "name",
    tuners: "tuners",
    standard: "speaks",
    rest: "rest_v",
    command: "command_v",
    amps: "amps",
    bears: "bears_v",
    noise: "nf",
  }),
  feeds: rowsOf(named(parts.feeds!), {
    name: "name",
    outputs: "outputs",
    gain: "gain",
    noise: "nf",
    if_low: "if_low",
    if_high: "if_high",
    load: "load_a",
    least: "least_v",
    ...PRICED,
  }),
  plans: Object.entries(parts.band_plans!).flatMap(([plan, bands]) =>
    rowsOf(bands as unknown as readonly Row[], {
      plan: usual(plan),
      band: "band",
      centre: "mhz",
      width: "width",
      standard: "from_standard",
    }),
  ),
  resistors: rowsOf(named(parts.end_resistors!), { name: "name", ohms: "ohms", blocks: "blocks", ...PRICED }),
};

/** @param id of a job, such as 1-smallest */
export function jobOnSheets(id: string): JobInputs {
  const job = fixture.jobs.find((one) => one.id === id);
  if (!job) throw new Error(`no job ${id}`);
  const { site, slots, dishes, feeders, heads, devices, rooms } = job.inputs as unknown as Inputs;
  const field = (key: string): Readonly<Record<string, Cell>> =>
    site[key] === undefined ? {} : { [`site_${WAYS[key] ?? key}`]: site[key] as Cell };
  return {
    fields: {
      ...startingPoint.fields,
      site_job: job.title,
      site_date: 46_328,
      ...Object.assign(
        {},
        ...Object.keys(site)
          .filter((key) => !NOT_OF_SITE.has(key))
          .map(field),
      ),
    },
    blocks: {
      ...startingPoint.blocks,
      ...partsOnSheet,
      routes: [
        ...new Set([...[...feeders, ...heads, ...devices, ...rooms].map(({ way }) => way), site.usual_way]),
      ].flatMap((name) => (name === undefined ? [] : [{ name: String(name) }])),
      slots: rowsOf(slots, {
        slot: "slot",
        obstacle: usual(10),
        eirp: "eirp",
        symbol_rate: "symbol_rate",
        modulation: "modulation",
      }),
      dishes: rowsOf(dishes, {
        name: "dish",
        size: "size",
        slots: "slots",
        feed: "feed",
        off_focus: "off_focus",
      }),
      feeders: rowsOf(feeders, {
        from: "from",
        to: "to",
        slot: "slot",
        quantity: "quantity",
        cable: "cable",
        length: "length",
        route: "way",
      }),
      heads: rowsOf(heads, {
        id: "head",
        type: "kind",
        dish: "on",
        supply: "supply",
        cable: "cable",
        length: "length",
        route: "way",
      }),
      branches: rowsOf(devices, {
        id: "device",
        device: "part",
        from: "from",
        port: "port",
        cable: "cable",
        length: "length",
        route: "way",
      }),
      rooms: rowsOf(rooms, {
        floor: ({ floor }) => floor ?? "ground",
        room: ({ outlet }) => `room ${String(outlet)}`,
        outlet: "outlet",
        receiver: "receiver",
        quantity: "quantity",
        from: "from",
        cable: "cable",
        run: "run",
        plate: "plate",
        port: "port",
        split: "split",
        kept: "pin",
        route: "way",
      }),
    },
  };
}

/** Of the fixture's site: what the sheet calls otherwise, and what it does not ask. */
const WAYS: Readonly<Record<string, string>> = { usual_way: "usual_route", need_margin: "noise_margin" };
const NOT_OF_SITE = new Set(["slope_most", "difficulty"]);
