/**
 * The smallest job of tests/fixtures/distribution/jobs-as-built.json filled from nothing: how many cells a person
 * types into the empty estimate once the firm's parts stand on Parts, and what it answers.
 */
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Block, JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { startingPoint } from "../../src/workbooks/multiRoom/startingPoint";
import { summarise } from "../../src/workbooks/multiRoom/summarise";
import { sheetDate } from "../../src/workbooks/sheetDate";
import { namedColumn } from "../../src/workbooks/named";
import fixture from "../fixtures/distribution/jobs-as-built.json";

type Row = Readonly<Record<string, number | string>>;

const [{ inputs, expected }] = fixture.jobs as unknown as readonly [
  {
    readonly inputs: {
      readonly site: Readonly<Record<string, number | string>>;
      readonly slots: readonly [Row];
      readonly dishes: readonly [Row];
      readonly heads: readonly [Row];
      readonly devices: readonly [Row];
      readonly rooms: readonly Row[];
    };
    readonly expected: {
      readonly head_units: readonly [Readonly<Record<string, number | string>>];
      readonly outlets: readonly {
        readonly outlet: string;
        readonly level: Readonly<Record<"low_cold" | "low_hot" | "high_cold" | "high_hot", number>>;
        readonly bands: readonly {
          readonly band: number;
          readonly mhz: number;
          readonly level_hot: number;
        }[];
        readonly carrier_to_noise: Readonly<
          Record<string, { readonly clear: number; readonly needs: number; readonly at_availability: number }>
        >;
        readonly commands: string;
        readonly amps_it_gives_most: number;
        readonly volts_at_output_while_it_commands: number;
      }[];
      readonly bill_pieces: Readonly<Record<string, number>>;
      readonly cable_metres: Readonly<Record<string, number>>;
      readonly labour_minutes_total: number;
    };
  },
];
const parts = fixture.parts;
const tolerance = fixture.tolerance;

/** The firm's side: what stands on Parts before the job. Prices are invented. */
const PRICED = { price: 1, until: sheetDate(2030, 12, 31) };
const drop = parts.cables.drop;
const unit = parts.head_units["feed head unit, 8 bands"];
const splitter = parts.devices["4-way splitter"];
const plate = parts.plates.plate;
const minutes = parts.labour;

const firm = {
  fields: {
    site_currency: "money",
    labour_rate: 60,
    site_margin: 0.2,
    site_overhead: 0.1,
    site_contingency: 0.03,
    site_tax: 0.2,
  },
  blocks: {
    cables: [{ name: "drop", ...drop, reel: 100, ...PRICED }],
    passives: [
      {
        name: "4-way splitter",
        kind: splitter.kind,
        ways: splitter.ways,
        port_low: splitter.port_low,
        port_high: splitter.port_high,
        power: "towards head unit",
        drop: splitter.drop,
        ohms: splitter.ohm,
        amps: splitter.amps,
        isolation: splitter.isolation,
        ...PRICED,
      },
    ],
    units: [
      {
        name: "feed head unit, 8 bands",
        bands: 8,
        out_low: unit.out_low,
        out_high: unit.out_high,
        least: unit.least_v,
        load: unit.load,
        kind: unit.load_in,
        sits: unit.sits,
        standard: unit.speaks,
        outputs: unit.outputs,
        plan: unit.band_plan,
        noise: unit.nf,
        slots: unit.slots,
        ...PRICED,
      },
    ],
    plates: [
      {
        name: "plate",
        loss_low: plate.port_low,
        loss_high: plate.port_high,
        power: plate.power,
        ohms: plate.ohm,
        connectors: plate.connectors,
        ...PRICED,
      },
    ],
    plans: parts.band_plans["8 bands"].map(({ band, mhz, width, from_standard }) => ({
      plan: "8 bands",
      band,
      centre: mhz,
      width,
      standard: from_standard,
    })),
    receivers: [{ kind: "recorder", tuners: 2, standard: parts.receivers.recorder.speaks }],
    resistors: [{ name: "end resistor", ohms: 75, blocks: "yes", ...PRICED }],
    fittings: [
      { name: "connector", piece: "connector", pack: 1, ...PRICED },
      { name: "grounding block", piece: "grounding block", pack: 1, ...PRICED },
      { name: "receiver lead", piece: "receiver lead", pack: 1, ...PRICED },
      { name: "dish with mount", piece: "dish", pack: 1, ...PRICED },
    ],
    routes: [{ name: "clip", minutes: minutes.ways_min_per_m.clip }],
    labour: (
      [
        ["terminate a cable", minutes.termination, "connector"],
        ["mount the dish", minutes.dish, "dish"],
        ["fit a head unit", minutes.on_dish_head_unit, "head unit on a dish"],
        ["fit a splitter", minutes.splitter, "splitter"],
        ["fit a wall plate", minutes.plate, "wall plate"],
        ["fit a grounding block", minutes.earth_block, "grounding block"],
        ["bond a dish", minutes.dish_bond, "dish bonding conductor"],
        ["measure an outlet", minutes.measure_outlet, "outlet to measure"],
        ["set up on a floor", minutes.floor, "floor"],
      ] as const
    )
      .map(([name, each, piece]): Row => ({ name, minutes: each, piece, difficulty: 1 }))
      .concat({ name: "set up the job", minutes: minutes.job, fixed: 1, difficulty: 1 }),
  },
} as const satisfies JobInputs;

/** What every job has, whatever is built: it is not counted. */
const paper = {
  site_job: "Four outlets",
  site_customer: "invented",
  site_place: "invented",
  site_prepared_by: "invented",
  site_quote: "Q-4",
  site_date: sheetDate(2026, 11, 2),
  site_until: sheetDate(2026, 12, 31),
};

const { site, slots, dishes, heads, devices, rooms } = inputs;

/** What is typed for the job; a dish by itself has no row, its size stands on Site. */
const place = {
  site_latitude: site.latitude!,
  site_longitude: site.longitude!,
  site_height: site.height!,
  site_dish: dishes[0].size!,
  site_usual_cable: site.usual_cable!,
  site_usual_plate: site.usual_plate!,
  site_usual_route: site.usual_way!,
  site_closes: site.closes!,
};
const forNoise = {
  fields: {
    site_availability: site.availability!,
    site_rain_rate: site.rain_rate!,
    site_rain_height: site.rain_height!,
  },
  slot: {
    eirp: slots[0].eirp!,
    symbol_rate: slots[0].symbol_rate!,
    modulation: slots[0].modulation!,
  },
};

/** The rows of the job without carrier to noise. */
const rowsTyped = {
  slots: [{ slot: slots[0].slot!, obstacle: 12 }],
  heads: [{ id: heads[0].head!, type: heads[0].kind!, length: heads[0].length! }],
  branches: [{ id: devices[0].device!, device: devices[0].part!, from: devices[0].from! }],
  rooms: rooms.map(({ outlet, receiver, from, run }) => ({
    outlet: outlet!,
    receiver: receiver!,
    from: from!,
    run: run!,
  })),
} satisfies JobInputs["blocks"];

const typed: JobInputs = {
  fields: { ...place, ...forNoise.fields },
  blocks: { ...rowsTyped, slots: [{ ...rowsTyped.slots[0]!, ...forNoise.slot }] },
};
const typedWithoutNoise: JobInputs = { fields: place, blocks: rowsTyped };

const cells = ({ fields = {}, blocks = {} }: JobInputs): number =>
  Object.keys(fields).length +
  Object.values(blocks)
    .flat()
    .reduce((sum, row) => sum + Object.keys(row).length, 0);

/** The empty estimate with the firm's parts and what was typed. */
const filled = (job: JobInputs): JobInputs => ({
  fields: { ...startingPoint.fields, ...firm.fields, ...paper, ...job.fields },
  blocks: { ...startingPoint.blocks, ...firm.blocks, ...job.blocks },
});

const book = recalculate(layOut(multiRoom, filled(typed)));
/** Cells of a column at the rows whose first cell is filled: a block begins with a thin row. */
const filledRows = (first: string, name: string): unknown[] => {
  const cells = namedColumn(book, name);
  return namedColumn(book, first).flatMap((value, row) => ((value ?? "") === "" ? [] : [cells[row]]));
};
const column = (name: string): unknown[] => filledRows("rooms_outlet", name);
const near = (value: unknown, wanted: number | string | undefined, within: number): void => {
  expect(typeof value).toBe("number");
  expect(Math.abs(Number(value) - Number(wanted))).toBeLessThanOrEqual(within);
};

test("a job of four outlets takes at most 39 cells, and 33 without carrier to noise", () => {
  expect(cells(typed)).toBe(38);
  expect(cells(typedWithoutNoise)).toBe(32);
});

test("Rooms shows at most ten columns to fill before its results", () => {
  const block = multiRoom.sheets
    .flatMap(({ parts }) => parts)
    .find((part): part is Block => part.kind === "block" && part.name === "rooms")!;
  const before = block.columns.findIndex(({ input }) => input === undefined);
  expect(before).toBeGreaterThan(0);
  expect(before).toBeLessThanOrEqual(10);
  // What this job fills stands there.
  const shown = block.columns.slice(0, before).map(({ key }) => key);
  for (const row of rowsTyped.rooms) expect(shown).toEqual(expect.arrayContaining(Object.keys(row)));
});

test("its levels and user bands are those of the specification", () => {
  expected.outlets.forEach(({ outlet, level, bands }, row) => {
    expect(String(column("rooms_outlet")[row])).toBe(outlet);
    for (const [corner, wanted] of Object.entries(level))
      near(column(`rooms_level_${corner}`)[row], wanted, tolerance.db);
    expect(column("rooms_place_bands")[row]).toBe(bands.map(({ band }) => band).join(", "));
    expect(column("rooms_place_centres")[row]).toBe(bands.map(({ mhz }) => mhz).join(", "));
    near(column("rooms_level_own")[row], Math.min(...bands.map(({ level_hot }) => level_hot)), tolerance.db);
  });
});

test("so are its carrier to noise, its commands and its supply", () => {
  expected.outlets.forEach(({ carrier_to_noise: noise, commands, ...outlet }, row) => {
    const [slot, { clear, at_availability: rain, needs }] = Object.entries(noise)[0]!;
    expect(column("rooms_noise_slot")[row]).toBe(slot);
    near(column("rooms_noise_clear")[row], clear, tolerance.db);
    near(column("rooms_noise_rain")[row], rain, tolerance.db);
    near(column("rooms_noise_needed")[row], needs, tolerance.db);
    expect(column("rooms_check_commands")[row]).toBe(commands === "yes" ? "ok" : commands);
    near(column("rooms_volts_command")[row], outlet.volts_at_output_while_it_commands, tolerance.volts);
    near(column("rooms_volts_amps")[row], outlet.amps_it_gives_most, tolerance.amps);
  });
  const [head] = expected.head_units;
  const ofHead = (name: string): unknown => filledRows("heads_id", `heads_fed_${name}`)[0];
  near(ofHead("off"), head.volts_all_off, tolerance.volts);
  near(ofHead("alone"), head.volts_least_with_one_on, tolerance.volts);
  near(ofHead("on"), head.volts_all_on, tolerance.volts);
  expect(String(ofHead("outlet"))).toBe(head.least_one_is);
});

test("what it takes, and how long it takes", () => {
  const pieces = expected.bill_pieces;
  const needed = new Map(
    ["units_bought", "passives_bought", "plates_bought", "fittings_bought"].flatMap((list) => {
      const quantities = namedColumn(book, `${list}_needed`);
      return namedColumn(book, `${list}_name`).map((name, row) => [String(name), quantities[row]] as const);
    }),
  );
  for (const part of [
    "feed head unit, 8 bands",
    "4-way splitter",
    "plate",
    "connector",
    "grounding block",
    "receiver lead",
  ])
    expect(needed.get(part)).toBe(pieces[part]);
  expect(needed.get("dish with mount")).toBe(pieces["dish 0.8 m"]);
  expect(filledRows("cables_bought_name", "cables_bought_needed")[0]).toBeCloseTo(
    expected.cable_metres.drop!,
    6,
  );
  const [hours] = namedColumn(book, "work_total_hours");
  expect(Number(hours) * 60).toBeCloseTo(expected.labour_minutes_total, 2);
});

test("all its checks pass", () => {
  expect(summarise(book).checks.filter(({ result }) => result === "look" || result === "error")).toEqual([]);
});
