/** Parts and rows of small distributions, each with what a test does not say filled in. Invented. */
import type {
  DeviceRow,
  DishRow,
  DistributionJob,
  FeederRow,
  HeadUnitRow,
  OutletRow,
  Site,
} from "../../src/engine/distribution/job";
import type {
  DevicePart,
  FeedPart,
  HeadUnitKind,
  PlatePart,
  PowerPassing,
  ReceiverKind,
  Run,
  SupplyPart,
} from "../../src/engine/distribution/parts";

const NO_LOSS = { low: 0, high: 0 };
export const power = (passes: PowerPassing, drop = 0.5, ohms = 0) => ({
  passes,
  drop,
  ohms,
  mostAmperes: null,
});

export const SITE: Site = {
  low: 950,
  high: 2150,
  cold: -10,
  hot: 50,
  latitude: 45,
  longitude: 10,
  height: 0,
  dishLoss: 0.8,
  rain: null,
  endResistor: null,
};

export const splitter = (ways: number, more: Partial<DevicePart> = {}): DevicePart => ({
  kind: "splitter",
  name: `${ways}-way splitter`,
  ways,
  port: { low: 4, high: 5 },
  through: null,
  isolation: 20,
  power: power("towards head unit"),
  passesCommands: true,
  amplifier: null,
  supply: null,
  ...more,
});

export const tap = (ways: number, more: Partial<DevicePart> = {}): DevicePart =>
  splitter(ways, {
    kind: "tap",
    name: "tap",
    port: { low: 12, high: 13 },
    through: { low: 1, high: 2 },
    ...more,
  });

export const amplifier = (more: Partial<DevicePart> = {}): DevicePart =>
  splitter(1, {
    kind: "amplifier",
    name: "amplifier",
    port: { low: -20, high: -24 },
    isolation: null,
    power: power("all ports"),
    amplifier: { noiseFigure: 7, mostOutput: 110, load: 0.1, leastVolts: 12 },
    ...more,
  });

export const supply = (more: Partial<SupplyPart> = {}): SupplyPart => ({
  name: "inserter",
  stands: "in the line",
  volts: 24,
  mostAmperes: 1,
  loss: NO_LOSS,
  otherSide: "no",
  ...more,
});

export const inserter = (more: Partial<SupplyPart> = {}): DevicePart =>
  splitter(1, {
    kind: "inserter",
    name: "inserter",
    port: NO_LOSS,
    isolation: null,
    power: power("no"),
    supply: supply(more),
  });

export const plate = (more: Partial<PlatePart> = {}): PlatePart => ({
  name: "plate",
  port: { low: 1, high: 1 },
  through: null,
  isolation: null,
  power: power("all ports"),
  connectors: 1,
  ...more,
});

export const loopPlate = (more: Partial<PlatePart> = {}): PlatePart =>
  plate({
    name: "loop plate",
    port: { low: 10, high: 11 },
    through: { low: 2, high: 3 },
    isolation: 25,
    ...more,
  });

export const headUnitKind = (more: Partial<HeadUnitKind> = {}): HeadUnitKind => ({
  name: "head unit",
  sits: "on the dish",
  standard: "EN 50494",
  commandsPassBlock: null,
  deafAbove: null,
  outputs: 1,
  bands: [1, 2, 3, 4].map((number) => ({
    number,
    centre: 900 + 100 * number,
    width: 50,
    standard: "EN 50494" as const,
  })),
  output: { low: 85, high: 85 },
  noiseFigure: 0.7,
  slots: 1,
  feedersPerSlot: 1,
  input: null,
  onward: null,
  leastVolts: 10,
  load: 0.01,
  loadKind: "A",
  outputDrop: null,
  senseAmperes: null,
  powersFeed: false,
  ...more,
});

export const switchKind = (more: Partial<HeadUnitKind> = {}): HeadUnitKind =>
  headUnitKind({ name: "switch", sits: "fed", powersFeed: true, ...more });

export const FEED: FeedPart = {
  name: "feed",
  outputs: 2,
  gain: 54,
  noiseFigure: 0.6,
  lowIf: 950,
  highIf: 2150,
  load: 0.2,
  leastVolts: 11,
};

export const receiver = (more: Partial<ReceiverKind> = {}): ReceiverKind => ({
  name: "receiver",
  tuners: 1,
  standard: "EN 50494",
  restVolts: 13,
  commandVolts: 18,
  mostAmperes: 0.4,
  bearsVolts: 19,
  noiseFigure: 10,
  ...more,
});

export const run = (length: number, route = "clip"): Run => ({
  cable: { name: "drop", loss: { k1: 0.6, k2: 0, k0: 0 }, loop: 10 },
  length,
  route,
});

export const headUnit = (name: string, more: Partial<HeadUnitRow> = {}): HeadUnitRow => ({
  fault: null,
  name,
  kind: headUnitKind(),
  dish: null,
  supply: null,
  run: null,
  ...more,
});

export const device = (
  name: string,
  from: string | null,
  part: DevicePart,
  more: Partial<DeviceRow> = {},
): DeviceRow => ({
  fault: null,
  name,
  part,
  from,
  port: null,
  run: null,
  ...more,
});

export const outlet = (name: string, from: string | null, more: Partial<OutletRow> = {}): OutletRow => ({
  fault: null,
  name,
  from,
  port: null,
  run: null,
  plate: null,
  receiver: receiver(),
  quantity: 1,
  split: null,
  kept: [],
  ...more,
});

export const dish = (name: string, more: Partial<DishRow> = {}): DishRow => ({
  fault: null,
  isAssumed: false,
  name,
  size: 0.9,
  slots: ["13E"],
  feed: null,
  offFocus: 0,
  ...more,
});

export const feeder = (from: string, to: string, more: Partial<FeederRow> = {}): FeederRow => ({
  fault: null,
  from,
  to,
  slot: null,
  quantity: null,
  run: run(5),
  ...more,
});

/** One dish and one head unit of it, where nothing else is said. */
export const job = (more: Partial<DistributionJob> = {}): DistributionJob => ({
  site: SITE,
  slots: [{ name: "13E", east: 13, eirp: null, symbolRate: 27.5, needed: null }],
  dishes: [dish("D1")],
  feeders: [],
  headUnits: [headUnit("H1")],
  devices: [],
  outlets: [],
  ...more,
});
