/**
 * Invented distributions, drawn from a seed, in the tables of a job: dishes with one slot and with two, feeders and cascades,
 * head units on a dish and fed, splitters of every passage of power, taps, loop-through plates, amplifiers, equalisers,
 * attenuators, filters, inserters, kept bands, spare outlets, parts in no order and by other names, blanks in the middle,
 * both units. Most are sound as rows; what their checks say is drawn along. Nothing in them is a real part, price or place.
 */
import { drawn, withGaps, type Drawn, type Row } from "./drawn";
import { slipsIntoTables } from "./drawnDistributionSlips";
import { drawnParts, type DrawnParts, type HeadKind } from "./drawnDistributionParts";
import type { Tables, TableName } from "./reference/distribution/tables";

export interface DrawnDistribution {
  readonly tables: Tables;
  /** What was done wrong on purpose, by name. */
  readonly slips: readonly string[];
}
export type Writable = Record<TableName, Row[]>;

const M_PER_FT = 0.3048;
/** Two slots that one dish may see, and a third. */
const SKIES = [
  { slots: ["13E", "19E"], latitude: [44, 54], longitude: [2, 16] },
  { slots: ["97W", "113W"], latitude: [33, 47], longitude: [-106, -84] },
] as const;
const MODULATIONS = [
  "8PSK 2/3",
  "QPSK 3/4",
  "8PSK 3/4",
  "DVB-S QPSK 3/4",
  "QPSK 2/3",
  "8PSK 3/5",
  "DVB-S2 QPSK 5/6",
];
const ROUTES = ["clip", "riser", "duct", "ceiling void"];
const FLOORS = ["ground", "first", "second", "attic"];
const MOST_DEPTH = 3;

/** What hangs on one output: user bands left to hand out. */
interface Output {
  readonly head: HeadKind;
  bands: number;
}

export function drawnDistribution(seed: number, isSlipped = seed % 2 === 1): DrawnDistribution {
  const draw = drawn(seed);
  const isFeet = draw.chance(0.35);
  const length = (least: number, most: number): number => {
    const metres = draw.between(least, most, 1);
    return isFeet ? Number((metres / M_PER_FT).toFixed(1)) : metres;
  };
  const parts = drawnParts(draw);
  const sky = draw.pick(SKIES);
  const some = <T extends object>(share: number, cells: T): Partial<T> => (draw.chance(share) ? cells : {});
  const cable = (): Row => some(0.4, { cable: draw.pick(parts.cables) });
  const route = (): Row => some(0.4, { route: draw.pick(ROUTES) });
  let named = 0;
  const name = (what: string): string => `${what}${draw.pick(["", "-", " "])}${++named}`;

  const outlets: { row: Row; details: Row }[] = [];
  const devices: Row[] = [];
  const heads: Row[] = [];
  const dishes: Row[] = [];
  const feeders: Row[] = [];

  const settings: Row = {
    latitude: draw.between(sky.latitude[0], sky.latitude[1], 2),
    longitude: draw.between(sky.longitude[0], sky.longitude[1], 2),
    ...some(0.8, { height: draw.whole(0, 1500) }),
    size: draw.between(0.6, 1.2, 2),
    unit: isFeet ? "ft" : "m",
    low: 950,
    high: 2150,
    cold: draw.whole(-25, 0),
    hot: draw.whole(40, 60),
    level_least: draw.pick([47, 47, 50, 53]),
    level_most: draw.pick([77, 77, 80]),
    ...some(0.6, { length_tolerance: draw.pick([0.05, 0.1, 0.2]) }),
    cable: draw.pick(parts.cables),
    ...some(0.9, { plate: draw.pick(parts.plates) }),
    route: draw.pick(ROUTES),
    ...some(0.8, { resistor: draw.pick(parts.resistors) }),
    ...some(0.75, { availability: draw.pick([99.5, 99.8, 99.9]) }),
    rain_rate: draw.whole(20, 60),
    rain_height: draw.between(2.5, 4.5, 1),
    ...some(0.3, { dish_losses: draw.between(0.3, 1.5, 1) }),
    ...some(0.5, { margin: draw.between(1, 3, 1) }),
    ...some(0.5, { slope_most: draw.pick([8, 12, 15]) }),
  };

  /** An outlet with its cable; nothing where no bands are left for a receiver, but a spare one now and then. */
  function outlet(output: Output, from: string, plate: Row, port: Row): string {
    const kinds = parts.receivers.filter(({ standard }) => output.head.takes.includes(standard));
    const kind = kinds.length > 0 ? draw.pick(kinds) : undefined;
    const isSpare = !kind || kind.tuners > output.bands || draw.chance(0.06);
    const isPair = !isSpare && 2 * kind.tuners <= output.bands && draw.chance(0.08);
    if (!isSpare) output.bands -= kind.tuners * (isPair ? 2 : 1);
    const own = name(draw.pick(["", "R", "room "]));
    // Now and then so long that a head unit gets too little over it, or nothing at all.
    const run = draw.chance(0.02) ? length(90, 200) : length(2, draw.pick([12, 25, 40]));
    outlets.push({
      row: {
        ...some(0.7, { floor: draw.pick(FLOORS) }),
        ...some(0.6, { room: `room ${draw.whole(1, 9)}` }),
        outlet: own,
        ...(isSpare ? {} : { receiver: kind.name }),
        ...(isPair ? { how_many: 2 } : some(0.2, { how_many: 1 })),
        fed_from: from,
        ...cable(),
        run,
        ...plate,
      },
      details: {
        ...route(),
        ...port,
        ...(isPair ? some(0.8, { split_by: draw.pick(parts.pairs) }) : {}),
        ...some(0.15, { shortest: Number((run * 0.8).toFixed(1)), longest: Number((run * 1.3).toFixed(1)) }),
      },
    });
    return own;
  }

  /** Outlets one behind the other on loop-through plates. */
  function loop(output: Output, from: string, port: Row): void {
    let before = from;
    for (let left = draw.whole(2, 5); left > 0; left--)
      before = outlet(output, before, { plate: draw.pick(parts.loopPlates) }, before === from ? port : {});
  }

  const device = (row: Row): string => {
    const own = name(draw.pick(["S", "dev ", "K"]));
    const isHere = draw.chance(0.4);
    devices.push({
      device: own,
      ...(isHere ? {} : { ...cable(), length: length(1, draw.pick([6, 20])) }),
      ...route(),
      ...row,
    });
    return own;
  };

  /** At each of so many ports something or nothing; the ports named now and then. */
  function fill(output: Output, from: string, ports: readonly number[], depth: number): void {
    const isNamed = draw.chance(0.3);
    for (const port of ports) if (!draw.chance(0.2)) grow(output, from, isNamed ? { port } : {}, depth);
  }

  const upTo = (count: number): number[] => Array.from({ length: count }, (_, index) => index + 1);

  function grow(output: Output, from: string, port: Row, depth: number): void {
    const what = depth >= MOST_DEPTH || output.bands <= 1 ? 0 : draw.next();
    if (what < 0.5) outlet(output, from, some(0.3, { plate: draw.pick(parts.plates) }), port);
    else if (what < 0.6) loop(output, from, port);
    else if (what < 0.72) {
      const single = device({ fed_from: from, part: draw.pick(parts.singles), ...port });
      grow(output, single, {}, depth + 1);
    } else if (what < 0.85) {
      const { name: part, ways } = draw.pick(parts.taps);
      const tap = device({ fed_from: from, part, ...port });
      for (const one of upTo(ways))
        if (!draw.chance(0.15)) outlet(output, tap, {}, draw.chance(0.3) ? { port: one } : {});
      if (draw.chance(0.7)) {
        const { name: behind, ways: more } = draw.pick(parts.splitters);
        fill(
          output,
          device({ fed_from: tap, part: behind, ...some(0.5, { port: "through" }) }),
          upTo(more),
          depth + 1,
        );
      }
    } else {
      const { name: part, ways } = draw.pick(parts.splitters);
      fill(output, device({ fed_from: from, part, ...port }), upTo(ways), depth + 1);
    }
  }

  /** A splitter at the output, or whatever grows there. */
  function output(head: HeadKind, from: string, port: Row): void {
    const own: Output = { head, bands: head.bands };
    if (head.volts > 20 && draw.chance(0.25)) {
      const amplifier = draw.chance(0.5)
        ? device({ fed_from: from, part: draw.pick(parts.amplifiers), ...port })
        : from;
      const inserter = device({
        fed_from: amplifier,
        part: draw.pick(parts.inserters),
        ...(amplifier === from ? port : {}),
      });
      const { name: part, ways } = draw.pick(parts.splitters);
      fill(own, device({ fed_from: inserter, part }), upTo(ways), 1);
    } else if (draw.chance(0.75)) {
      const { name: part, ways } = draw.pick(parts.splitters);
      fill(own, device({ fed_from: from, part, ...port }), upTo(ways), 1);
    } else grow(own, from, port, 1);
  }

  function head(kind: HeadKind, more: Row): string {
    const own = name("H");
    heads.push({
      head: own,
      kind: kind.name,
      ...(draw.chance(0.7) ? { ...cable(), length: length(2, 25), ...route() } : {}),
      ...more,
    });
    const used = upTo(kind.outputs).filter((port) => port === 1 || draw.chance(0.7));
    const isNamed = draw.chance(0.5) || used.length < kind.outputs;
    for (const port of used) output(kind, own, isNamed ? { port } : {});
    return own;
  }

  const count = draw.pick([1, 1, 1, 2]);
  const isPlain = count === 1 && draw.chance(0.25);
  const used = new Set<string>();
  const dish = (slots: readonly string[], feed: Row): string => {
    slots.forEach((slot) => used.add(slot));
    const own = name("dish ");
    dishes.push({
      dish: own,
      ...some(0.8, { size: draw.between(0.6, 1.2, 2) }),
      slots: slots.join(draw.pick([" ", ", "])),
      ...feed,
      ...(slots.length > 1 ? { off_focus: draw.between(0.8, 2, 1) } : {}),
    });
    return own;
  };
  const feeder = (from: string, to: string, more: Row = {}): void =>
    void feeders.push({ from, to, ...cable(), ...some(0.9, { length: length(3, 25) }), ...route(), ...more });
  const powered = (kind: HeadKind): Row => (draw.chance(0.9) ? { supply: draw.pick(kind.supplies) } : {});

  if (isPlain) {
    // No row of dishes: the settings' own size, all of its slots.
    used.add(sky.slots[0]);
    const kind = draw.pick(parts.onDish);
    head(kind, kind.supplies.length > 0 ? powered(kind) : {});
  } else
    for (let one = 0; one < count; one++) {
      const sort = draw.next();
      const asFeed = (on: string): void => {
        const kind = draw.pick(parts.onDish);
        head(kind, { dish: on, ...(kind.supplies.length > 0 ? powered(kind) : {}) });
      };
      if (sort < 0.4) asFeed(dish([draw.pick(sky.slots)], {}));
      else if (sort < 0.5) {
        // A feed for each of two slots.
        const both = dish(sky.slots, {});
        asFeed(both);
        if (draw.chance(0.7)) asFeed(both);
      } else if (sort < 0.75) {
        const on = dish([draw.pick(sky.slots)], { feed: parts.feed });
        const length = draw.whole(1, 3);
        let before = on;
        for (let unit = 1; unit <= length; unit++) {
          const own = head(parts.cascaded, unit === length ? powered(parts.cascaded) : {});
          feeder(before, own, some(0.2, { how_many: 4 }));
          before = own;
        }
      } else {
        const isOneDish = draw.chance(0.6);
        const from = isOneDish
          ? [dish(sky.slots, { feed: parts.wideband })]
          : sky.slots.map((slot) => dish([slot], { feed: parts.wideband }));
        const first = head(parts.wide, isOneDish && parts.wide.leadsOn ? {} : powered(parts.wide));
        if (isOneDish && draw.chance(0.3)) for (const slot of sky.slots) feeder(from[0]!, first, { slot });
        else for (const on of from) feeder(on, first);
        if (isOneDish && parts.wide.leadsOn) feeder(first, head(parts.wide, powered(parts.wide)));
      }
    }

  /** Names are the same in capitals. */
  for (const row of [...devices, ...outlets.map((one) => one.row)])
    if (draw.chance(0.05)) row.fed_from = String(row.fed_from).toUpperCase();

  const slotRows: Row[] = sky.slots
    .filter((slot) => used.has(slot))
    .map((slot) => ({
      slot,
      ...some(0.3, { "-purpose": "news" }),
      ...some(0.85, { eirp: draw.between(47, 54, 1), symbol_rate: draw.between(20, 30, 1) }),
      modulation: draw.pick(MODULATIONS),
    }));

  keepBands(draw, outlets, parts, heads, devices);

  const shuffledOutlets = draw.chance(0.3) ? draw.shuffled(outlets) : outlets;
  const gapped = shuffledOutlets.flatMap((one, index) =>
    index > 0 && draw.chance(0.1) ? [{ row: {}, details: {} }, one] : [one],
  );
  const tables: Writable = {
    ...parts.tables(draw),
    outlets: gapped.map(({ row }) => row),
    outlet_details: gapped.map(({ details }) => details),
    devices: withGaps(draw, draw.chance(0.5) ? draw.shuffled(devices) : devices),
    head_units: withGaps(draw, draw.chance(0.3) ? draw.shuffled(heads) : heads),
    dishes: withGaps(draw, dishes),
    feeders: withGaps(draw, draw.chance(0.3) ? draw.shuffled(feeders) : feeders),
    slots: slotRows,
    settings: [settings],
  };
  return { tables, slips: isSlipped ? slipsIntoTables(draw, tables) : [] };
}

/** A few outlets that hang right on their head unit's only output keep a band that no other wants: the highest ones. */
function keepBands(
  draw: Drawn,
  outlets: readonly { row: Row; details: Row }[],
  parts: DrawnParts,
  heads: readonly Row[],
  devices: readonly Row[],
): void {
  const isSame = (name: unknown, other: unknown): boolean =>
    String(name).toUpperCase() === String(other).toUpperCase();
  const above = (from: unknown): Row | undefined => {
    const head = heads.find((row) => isSame(row.head, from));
    if (head) return head;
    const next =
      devices.find((row) => isSame(row.device, from)) ??
      outlets.find(({ row }) => isSame(row.outlet, from))?.row;
    return next && above(next.fed_from);
  };
  const kept = new Map<Row, number>();
  for (const { row, details } of draw.shuffled(outlets)) {
    const head = above(row.fed_from);
    const kind = parts.kinds.find(({ name }) => name === head?.kind);
    const receiver = parts.receivers.find(({ name }) => name === row.receiver);
    if (!head || !kind || !receiver || row.how_many === 2 || !draw.chance(0.15)) continue;
    const highest = receiver.standard === "EN 50494" ? Math.min(8, kind.bands) : kind.bands;
    const next = kept.get(head) ?? highest;
    if (next > highest || next - receiver.tuners < 1) continue;
    const bands = Array.from({ length: receiver.tuners }, (_, index) => next - receiver.tuners + 1 + index);
    kept.set(head, next - receiver.tuners);
    details.kept = bands.length === 1 && draw.chance(0.5) ? bands[0]! : bands.join(draw.pick([" ", ", "]));
  }
}
