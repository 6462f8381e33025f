/** The rows and parts of tests/fixtures/distribution/jobs-as-built.json as the engine wants them. */
import type {
  DeviceRow,
  DistributionJob,
  FeederRow,
  HeadUnitRow,
  OutletRow,
  PortWanted,
} from "../../src/engine/distribution/job";
import type { LabourRates } from "../../src/engine/distribution/labourMinutes";
import type {
  AtEnds,
  ControlStandard,
  DeviceKind,
  DevicePart,
  EndResistor,
  FeedPart,
  HeadUnitKind,
  PlatePart,
  PowerPassing,
  PowerPath,
  ReceiverKind,
  Run,
  SupplyPart,
  UserBand,
} from "../../src/engine/distribution/parts";
import fixture from "../fixtures/distribution/jobs-as-built.json";

type Row = Readonly<Record<string, string | number | boolean | undefined>>;
type Sheet = "slots" | "dishes" | "feeders" | "heads" | "devices" | "rooms";
export type Inputs = { readonly site: Row } & Readonly<Record<Sheet, readonly Row[]>>;
export type Change = readonly (string | number | null | Row)[];

const parts = fixture.parts as unknown as Readonly<Record<string, Readonly<Record<string, Row>>>>;

const text = (value: Row[string]): string | null => (value === undefined ? null : String(value));
const number = (value: Row[string]): number | null => (value === undefined ? null : Number(value));
const ends = (row: Row, what: string): AtEnds => ({
  low: Number(row[`${what}_low`] ?? 0),
  high: Number(row[`${what}_high`] ?? 0),
});
const endsIfAny = (row: Row, what: string): AtEnds | null =>
  row[`${what}_low`] === undefined ? null : ends(row, what);
const standard = (speaks: Row[string]): ControlStandard =>
  speaks === "carrier" ? "maker's own" : (String(speaks) as ControlStandard);
const powerOf = (row: Row): PowerPath => ({
  passes: row.power === "steered" ? "towards head unit" : ((row.power ?? "no") as PowerPassing),
  drop: Number(row.drop ?? 0.7),
  ohms: Number(row.ohm ?? 0),
  mostAmperes: number(row.amps),
});

function supplyPart(name: string): SupplyPart {
  const row = parts.supplies![name]!;
  return {
    name,
    stands: row.stands as SupplyPart["stands"],
    volts: Number(row.volts),
    mostAmperes: number(row.amps),
    loss: ends(row, "loss"),
    otherSide: row.receiver_side === "all" ? "all ports" : "no",
  };
}

function devicePart(name: string): DevicePart {
  const nothing = { name, through: null, isolation: null, amplifier: null, passesCommands: true };
  if (parts.supplies![name]) {
    const supply = supplyPart(name);
    return {
      ...nothing,
      kind: "inserter",
      ways: 1,
      port: supply.loss,
      power: { passes: "no", drop: 0, ohms: 0, mostAmperes: null },
      supply,
    };
  }
  const row = parts.devices![name]!;
  const gain = ends(row, "gain");
  return {
    ...nothing,
    kind: row.kind as DeviceKind,
    ways: Number(row.ways ?? 1),
    port: row.kind === "amplifier" ? { low: -gain.low, high: -gain.high } : ends(row, "port"),
    through: endsIfAny(row, "through"),
    isolation: number(row.isolation),
    power: powerOf(row),
    passesCommands: row.commands !== "no",
    amplifier:
      row.kind === "amplifier"
        ? {
            noiseFigure: Number(row.nf),
            mostOutput: number(row.max_out),
            load: Number(row.load_a),
            leastVolts: Number(row.least_v),
          }
        : null,
    supply: null,
  };
}

function platePart(name: string): PlatePart {
  const row = parts.plates![name]!;
  return {
    name,
    port: ends(row, "port"),
    through: endsIfAny(row, "through"),
    isolation: number(row.isolation),
    power: powerOf(row),
    connectors: Number(row.connectors),
  };
}

function headUnitKind(name: string): HeadUnitKind {
  const row = parts.head_units![name]!;
  const bands = parts.band_plans![String(row.band_plan)] as unknown as readonly Row[];
  return {
    name,
    sits: row.sits as HeadUnitKind["sits"],
    standard: standard(row.speaks),
    commandsPassBlock: row.speaks === "carrier" ? true : null,
    deafAbove: null,
    outputs: Number(row.outputs),
    bands: bands.map((band): UserBand => ({
      number: Number(band.band),
      centre: Number(band.mhz),
      width: Number(band.width),
      standard: standard(band.from_standard),
    })),
    output: ends(row, "out"),
    noiseFigure: number(row.nf),
    slots: Number(row.slots),
    feedersPerSlot: Number(row.feeders_per_slot ?? 4),
    input: row.in_low === undefined ? null : { least: Number(row.in_low), most: Number(row.in_high) },
    onward: endsIfAny(row, "onward"),
    leastVolts: Number(row.least_v),
    load: Number(row.load),
    loadKind: row.load_in as "A" | "W",
    outputDrop: number(row.output_drop),
    senseAmperes: number(row.sense_a),
    powersFeed: row.powers_feed === true,
  };
}

function feedPart(name: string): FeedPart {
  const row = parts.feeds![name]!;
  return {
    name,
    outputs: Number(row.outputs),
    gain: Number(row.gain),
    noiseFigure: Number(row.nf),
    lowIf: Number(row.if_low),
    highIf: Number(row.if_high),
    load: Number(row.load_a),
    leastVolts: Number(row.least_v),
  };
}

function receiverKind(name: string): ReceiverKind {
  const row = parts.receivers![name]!;
  return {
    name,
    tuners: Number(row.tuners),
    standard: standard(row.speaks),
    restVolts: Number(row.rest_v),
    commandVolts: Number(row.command_v),
    mostAmperes: Number(row.amps),
    bearsVolts: Number(row.bears_v),
    noiseFigure: Number(row.nf),
  };
}

function endResistor(name: string): EndResistor {
  const row = parts.end_resistors![name]!;
  return { name, ohms: Number(row.ohms), blocksPower: row.blocks === true };
}

/** 13E is 13, 97W is -97. */
const east = (slot: string): number => Number.parseFloat(slot) * (slot.endsWith("W") ? -1 : 1);

export function jobAsBuilt({ site, slots, dishes, feeders, heads, devices, rooms }: Inputs): DistributionJob {
  const run = (row: Row, length: Row[string]): Run | null => {
    if (length === undefined) return null;
    const name = String(row.cable ?? site.usual_cable);
    const { k1, k2, k0, loop } = parts.cables![name]! as Readonly<Record<string, number>>;
    return {
      cable: { name, loss: { k1: k1!, k2: k2!, k0: k0! }, loop: loop! },
      length: Number(length),
      route: String(row.way ?? site.usual_way),
    };
  };
  const port = (row: Row): PortWanted => (row.port === undefined ? null : (row.port as number | "through"));
  const all = slots.map(({ slot }) => String(slot));
  return {
    site: {
      low: Number(site.low),
      high: Number(site.high),
      cold: Number(site.cold),
      hot: Number(site.hot),
      latitude: Number(site.latitude),
      longitude: Number(site.longitude),
      height: Number(site.height),
      dishLoss: 0.8,
      rain:
        site.availability === undefined
          ? null
          : {
              availability: Number(site.availability),
              rate: Number(site.rain_rate),
              height: Number(site.rain_height),
            },
      endResistor: site.closes === undefined ? null : endResistor(String(site.closes)),
    },
    slots: slots.map((row) => ({
      name: String(row.slot),
      east: east(String(row.slot)),
      eirp: number(row.eirp),
      symbolRate: Number(row.symbol_rate),
      needed:
        (fixture.needed_es_n0_db as Readonly<Record<string, number>>)[String(row.modulation)]! +
        Number(site.need_margin),
    })),
    dishes: dishes.map((row) => ({
      fault: null,
      isAssumed: false,
      name: String(row.dish),
      size: Number(row.size),
      slots: row.slots === undefined ? all : String(row.slots).split(" "),
      feed: row.feed === undefined ? null : feedPart(String(row.feed)),
      offFocus: Number(row.off_focus ?? 0),
    })),
    feeders: feeders.map((row): FeederRow => ({
      fault: null,
      from: String(row.from),
      to: String(row.to),
      slot: text(row.slot),
      quantity: number(row.quantity),
      run: run(row, row.length ?? 0)!,
    })),
    headUnits: heads.map((row): HeadUnitRow => ({
      fault: null,
      name: String(row.head),
      kind: headUnitKind(String(row.kind)),
      dish: text(row.on),
      supply: row.supply === undefined ? null : supplyPart(String(row.supply)),
      run: run(row, row.length),
    })),
    devices: devices.map((row): DeviceRow => ({
      fault: null,
      name: text(row.device),
      part: devicePart(String(row.part)),
      from: text(row.from),
      port: port(row),
      run: run(row, row.length),
    })),
    outlets: rooms.map((row): OutletRow => {
      const plate = row.plate ?? site.usual_plate;
      return {
        fault: null,
        name: text(row.outlet),
        from: text(row.from),
        port: port(row),
        run: run({ ...row, cable: row.cable, way: row.way }, row.run),
        plate: plate === undefined ? null : platePart(String(plate)),
        receiver: row.receiver === undefined ? null : receiverKind(String(row.receiver)),
        quantity: Number(row.quantity ?? 1),
        split: row.split === undefined ? null : devicePart(String(row.split)),
        kept: row.pin === undefined ? [] : String(row.pin).split(" ").map(Number),
      };
    }),
  };
}

/** A job with the changes of one of its variants. */
export function changed(inputs: Inputs, changes: readonly Change[]): Inputs {
  const copy = structuredClone(inputs) as unknown as Record<string, Record<string, unknown>[]> & {
    site: Record<string, unknown>;
  };
  const put = (row: Record<string, unknown>, key: string, value: unknown): void => {
    if (value === null) delete row[key];
    else row[key] = value;
  };
  for (const [sheet, name, key, value] of changes as readonly [string, string, string, unknown][]) {
    if (sheet === "insert first")
      copy[name]!.unshift(structuredClone(key) as unknown as Record<string, unknown>);
    else if (sheet === "site") put(copy.site, name, key);
    else {
      const id = { dishes: "dish", heads: "head", devices: "device", rooms: "outlet" }[sheet]!;
      const row = copy[sheet]!.find((one) => one[id] === name);
      if (!row) throw new Error(`${sheet} has no ${name}`);
      put(row, key, value);
    }
  }
  return copy as unknown as Inputs;
}

/** Different floors, one where none is named; how hard the house is. */
export const amountsOf = ({ site, rooms }: Inputs) => ({
  floors: new Set(rooms.map(({ floor }) => floor)).size,
  throughWalls: 0,
  difficulty: Number(site.difficulty ?? 1),
});

const labour = fixture.parts.labour;
export const LABOUR_RATES: LabourRates = {
  route: new Map(Object.entries(labour.ways_min_per_m)),
  throughWall: labour.through_wall,
  termination: labour.termination,
  dish: labour.dish,
  furtherSlot: labour.further_slot,
  feed: labour.feed,
  headUnitOnDish: labour.on_dish_head_unit,
  switch: labour.switch,
  device: {
    splitter: labour.splitter,
    tap: labour.tap,
    equaliser: labour.equaliser,
    amplifier: labour.amplifier,
    // The fixture has neither of these parts.
    attenuator: NaN,
    filter: NaN,
  },
  supply: labour.supply,
  plate: labour.plate,
  endResistor: labour.end_resistor,
  groundingBlock: labour.earth_block,
  dishBond: labour.dish_bond,
  measuredOutlet: labour.measure_outlet,
  floor: labour.floor,
  job: labour.job,
};
