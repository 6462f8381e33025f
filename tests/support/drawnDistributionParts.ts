/** The parts that drawn distributions are built of: invented names and figures, rows in no order. */
import type { Drawn, Row } from "./drawn";
import type { Writable } from "./drawnDistribution";

export interface HeadKind {
  readonly name: string;
  readonly bands: number;
  readonly outputs: number;
  /** Control standards of receivers that can use its bands. */
  readonly takes: readonly string[];
  /** Another switch may hang on it. */
  readonly leadsOn: boolean;
  /** Least volts, which tells which supply it wants. */
  readonly volts: number;
  readonly supplies: readonly string[];
}
interface Named {
  readonly name: string;
  readonly ways: number;
}
interface DrawnReceiver {
  readonly name: string;
  readonly tuners: number;
  readonly standard: string;
}

export type DrawnParts = ReturnType<typeof drawnParts>;
type PartTables = Pick<
  Writable,
  | "cables"
  | "device_parts"
  | "plates"
  | "supplies"
  | "head_unit_kinds"
  | "receivers"
  | "feeds"
  | "band_plans"
  | "end_resistors"
>;

const STANDARDS = ["EN 50494", "EN 50607", "maker's own"];

export function drawnParts(draw: Drawn) {
  const some = <T extends object>(share: number, cells: T): Partial<T> => (draw.chance(share) ? cells : {});
  let counted = 0;
  const name = (what: string): string =>
    `${what}${draw.pick([" ", ", ", " no. "])}${draw.whole(1, 99)}.${++counted}`;
  const priced = (): Row =>
    some(0.5, { "-price": draw.between(1, 90, 2), "-supplier": "demonstration" }) as Row;

  const cables: Row[] = [
    {
      name: name("drop"),
      k1: draw.between(0.55, 0.68, 3),
      k2: draw.between(0.0005, 0.0009, 5),
      k0: 0.446,
      loop: 12.8,
    },
    { name: name("drop copper"), like: "series 6, copper" },
    {
      name: name("trunk"),
      k1: 0.351,
      k2: 0.0026,
      k0: draw.between(0.3, 0.5, 3),
      loop: draw.between(1.8, 2.4, 2),
    },
    { name: name("thin"), like: "series 59", loop: draw.between(14, 18, 1) },
    { name: name("other"), like: "series 11", k1: 0.36, k2: 0.0024, k0: 0.4 },
  ];

  const power = (): Row => {
    const power = draw.pick([...Array<string>(7).fill("towards head unit"), "all ports", "one port", "no"]);
    return {
      ...(power === "no" && draw.chance(0.5) ? {} : { power }),
      ...some(0.6, { drop: draw.between(0.3, 0.9, 2) }),
      ...some(0.7, { ohms: draw.between(0.02, 0.3, 2) }),
      ...some(0.7, { amps: draw.pick([0.5, 1, 2]) }),
    };
  };
  const through = (least: number, most: number): Row => ({
    through_low: draw.between(least, most, 1),
    through_high: draw.between(most, most + 1, 1),
  });

  const deviceParts: Row[] = [];
  const part = (row: Row): string => {
    deviceParts.push({ ...priced(), ...some(0.8, { isolation: draw.whole(18, 32) }), ...row });
    return String(row.part);
  };
  const splitters: Named[] = [2, 2, 3, 4, 4, 6, 8].map((ways) => {
    const loss = 3.6 * Math.log2(ways);
    const row = {
      part: name(`${ways}-way splitter`),
      ...some(0.7, { kind: "splitter" }),
      ways,
      port_low: draw.between(loss, loss + 1, 1),
      port_high: draw.between(loss + 1, loss + 3, 1),
      ...power(),
    };
    return { name: part(row), ways };
  });
  const pairs = [
    part({
      part: name("pair splitter"),
      kind: "splitter",
      ways: 2,
      port_low: 4,
      port_high: draw.between(4.5, 6, 1),
      power: draw.pick(["towards head unit", "all ports"]),
      ohms: 0.1,
    }),
  ];
  const taps: Named[] = [8, 12, 16, 20].map((loss) => {
    const ways = draw.pick([1, 1, 2, 4]);
    const row = {
      part: name(`tap ${loss} dB`),
      kind: "tap",
      ways,
      port_low: loss,
      port_high: loss + draw.between(0, 1, 1),
      ...through(0.6, 2),
      ...power(),
    };
    return { name: part(row), ways };
  });
  const straight = (): Row => ({
    power: draw.pick(["all ports", "all ports", "towards head unit", "one port"]),
    ohms: draw.between(0.05, 0.4, 2),
    ...some(0.6, { amps: 1 }),
    ...some(0.2, { commands: draw.pick(["yes", "no"]) }),
  });
  const amplifiers = [1, 2].map(() =>
    part({
      part: name("amplifier"),
      kind: "amplifier",
      ...straight(),
      gain_low: draw.between(12, 20, 1),
      gain_high: draw.between(16, 24, 1),
      noise_figure: draw.between(4, 8, 1),
      ...some(0.8, { output_most: draw.whole(100, 116) }),
      load_amps: draw.between(0.05, 0.15, 2),
      least_volts: draw.pick([10, 12, 15]),
    }),
  );
  const singles = [
    ...amplifiers,
    part({
      part: name("equaliser"),
      kind: "equaliser",
      port_low: draw.between(5, 9, 1),
      port_high: 1.5,
      ...straight(),
    }),
    part({
      part: name("attenuator"),
      kind: "attenuator",
      port_low: 6,
      port_high: draw.between(5, 7, 1),
      ...straight(),
    }),
    part({
      part: name("filter"),
      kind: "filter",
      port_low: 1,
      port_high: draw.between(1, 2, 1),
      ...straight(),
    }),
  ];

  const plateRow = (row: Row): Row => ({ ...priced(), ...some(0.3, { connectors: 1 }), ...row });
  const plain: Row[] = [
    plateRow({ plate: name("plate"), port_low: 0.7, port_high: draw.between(1, 2, 1) }),
    plateRow({ plate: name("plate B"), port_low: 0.5, port_high: 0.9, power: "all ports", ohms: 0.05 }),
    plateRow({ plate: name("twin plate"), port_low: 1, port_high: 1.5, connectors: 2, ohms: 0.02 }),
    plateRow({
      plate: name("diode plate"),
      port_low: 1,
      port_high: 1.5,
      power: draw.pick(["towards head unit", "no"]),
    }),
  ];
  const loops: Row[] = [18, 14, 10].map((loss) =>
    plateRow({
      plate: name(`loop plate ${loss} dB`),
      port_low: loss,
      port_high: loss + draw.between(0.2, 1, 1),
      ...through(0.8, 2),
      power: draw.pick(["towards head unit", "towards head unit", "all ports"]),
      ...some(0.6, { drop: draw.between(0.3, 0.8, 2) }),
      ...some(0.7, { ohms: 0.05 }),
      ...some(0.7, { isolation: draw.whole(24, 32) }),
    }),
  );

  const supply = (row: Row): string => {
    supplies.push({ ...priced(), ...row });
    return String(row.supply);
  };
  const supplies: Row[] = [];
  const inserters = [
    supply({
      supply: name("inserter"),
      volts: 24,
      amps: 1,
      loss_low: 0.6,
      loss_high: 1.2,
      ...some(0.5, { other_side: "no" }),
    }),
    supply({ supply: name("inserter B"), volts: 24, amps: 0.6, stands: "in the line" }),
  ];
  if (draw.chance(0.3))
    inserters.push(supply({ supply: name("inserter, open"), volts: 24, amps: 1, other_side: "all ports" }));
  const packs = [
    supply({
      supply: name("pack"),
      volts: 18,
      amps: draw.pick([0.5, 1, 1.5, 2]),
      stands: "at the head unit",
    }),
    supply({
      supply: name("pack B"),
      volts: draw.pick([18, 20]),
      ...some(0.5, { amps: 3 }),
      stands: "at the head unit",
    }),
  ];

  const plans: Row[] = [];
  const plan = (count: number, standard: (band: number) => string | undefined): string => {
    const own = name(`${count} bands`);
    const rows = Array.from({ length: count }, (_, index) => ({
      plan: own,
      band: index + 1,
      mhz: Math.round(980 + ((2100 - 980) * index) / (count - 1)),
      width: 50,
      ...(standard(index + 1) === undefined ? {} : { standard: standard(index + 1)! }),
    }));
    plans.push(...(draw.chance(0.3) ? draw.shuffled(rows) : rows));
    return own;
  };
  const kindRows: Row[] = [];
  const kind = (row: Row, more: Pick<HeadKind, "takes" | "supplies">): HeadKind => {
    kindRows.push({ ...priced(), ...row });
    return {
      name: String(row.kind),
      bands: Number(row.bands),
      outputs: Number(row.outputs ?? 1),
      leadsOn: row.onward_low !== undefined,
      volts: Number(row.least_volts),
      ...more,
    };
  };
  const out = (): Row => ({ out_low: draw.between(86, 92, 1), out_high: draw.between(84, 90, 1) });
  const watts = (watts: number): Row => ({ load: watts, load_unit: "W" });
  const figure = (): Row => some(0.85, { noise_figure: draw.between(0.5, 1.1, 1) }) as Row;
  const BASIC = ["EN 50494", "EN 50607"];

  const onDish = [
    kind(
      {
        ...{
          kind: name("feed unit"),
          bands: 8,
          ...out(),
          least_volts: 10.5,
          ...watts(draw.between(2, 3, 1)),
        },
        ...some(0.7, { sits: "on the dish" }),
        ...{ standard: "EN 50494", plan: plan(8, () => draw.pick(["EN 50494", undefined])), ...figure() },
        aiming: draw.pick(["the meter commands it", "passes the slot until the first receiver speaks"]),
      },
      { takes: BASIC, supplies: [] },
    ),
    kind(
      {
        ...{
          kind: name("feed unit, own way"),
          bands: 12,
          ...out(),
          least_volts: 21,
          ...watts(6.5),
          sits: "on the dish",
        },
        ...{ standard: "maker's own", outputs: 2, output_drop: draw.between(0.3, 0.5, 1) },
        ...some(0.9, { pass_block: draw.pick(["yes", "yes", "no"]) }),
        ...some(0.3, { hears_to: draw.pick([20, 30]) }),
        ...{ plan: plan(12, () => "maker's own"), ...figure() },
      },
      { takes: ["maker's own"], supplies: inserters },
    ),
    kind(
      // Not said how it is commanded, and bands without megahertz.
      { kind: name("feed unit, unsaid"), bands: 6, ...out(), least_volts: 11, load: 0.2, load_unit: "A" },
      { takes: ["EN 50494"], supplies: [] },
    ),
    kind(
      {
        ...{
          kind: name("feed unit, many"),
          bands: 24,
          ...out(),
          least_volts: 10.5,
          ...watts(3),
          standard: "EN 50607",
        },
        ...{ plan: plan(24, () => undefined), ...figure() },
      },
      { takes: BASIC, supplies: [] },
    ),
  ];
  const cascaded = kind(
    {
      ...{
        kind: name("switch"),
        bands: 8,
        ...out(),
        least_volts: 12,
        load: 0.25,
        load_unit: "A",
        sits: "fed",
      },
      ...{
        standard: "EN 50494",
        outputs: 2,
        plan: plan(8, () => "EN 50494"),
        noise_figure: draw.between(6, 9, 1),
      },
      ...{
        slots: 1,
        ...some(0.6, { per_slot: 4 }),
        in_least: 55,
        in_most: 95,
        output_amps: 0.015,
        powers_feed: "yes",
      },
      ...{ onward_low: draw.between(1, 3, 1), onward_high: draw.between(2, 5, 1) },
    },
    { takes: BASIC, supplies: packs },
  );
  const wide = kind(
    {
      ...{ kind: name("switch, wide"), bands: 16, ...out(), least_volts: 15, ...watts(9), sits: "fed" },
      ...{
        standard: "EN 50607",
        outputs: draw.pick([2, 3]),
        plan: plan(16, () => undefined),
        noise_figure: 8,
      },
      ...{ slots: 3, per_slot: 2, in_least: draw.pick([55, 60]), in_most: 95, powers_feed: "yes" },
      ...some(0.4, { onward_low: 2, onward_high: draw.between(3, 4, 1) }),
      output_amps: 0.015,
    },
    { takes: BASIC, supplies: packs },
  );

  const receiverRows: Row[] = [];
  const receiver = (tuners: number, standard: string, more: Row = {}): DrawnReceiver => {
    const own = name(tuners > 1 ? "recorder" : "set");
    receiverRows.push({
      kind: own,
      tuners,
      ...(standard === "EN 50494" && draw.chance(0.5) ? {} : { standard }),
      ...more,
    });
    return { name: own, tuners, standard };
  };
  const receivers: DrawnReceiver[] = [
    { name: "receiver", tuners: 1, standard: "EN 50494" },
    { name: "recorder, 2 tuners", tuners: 2, standard: "EN 50494" },
    ...STANDARDS.slice(0, 2).flatMap((standard) => [
      receiver(1, standard, { noise_figure: draw.between(8, 12, 1) }),
      receiver(2, standard, { rest_volts: 13, command_volts: 18.5, amps: 0.35 }),
    ]),
    receiver(1, "maker's own", { rest_volts: 18, command_volts: 18, applied_most: draw.pick([19, 22]) }),
    receiver(2, "maker's own", { rest_volts: 18, command_volts: 18 }),
  ];

  const [feed, wideband] = [name("feed"), name("wideband feed")];
  const feeds: Row[] = [
    { feed, outputs: 4, gain: draw.between(50, 56, 1), noise_figure: 0.6, load_amps: 0.2, least_volts: 11 },
    {
      ...{
        feed: wideband,
        outputs: 2,
        gain: draw.between(48, 54, 1),
        noise_figure: 0.9,
        if_low: 290,
        if_high: 2340,
      },
      ...{ load_amps: 0.16, least_volts: 11 },
    },
  ];
  const endResistors: Row[] = [
    { resistor: name("end resistor"), ohms: 75, blocks: "yes" },
    { resistor: name("end resistor, plain") },
  ];
  const blocking = String(endResistors[0]!.resistor);

  return {
    cables: cables.map((row) => String(row.name)),
    splitters,
    pairs,
    taps,
    singles,
    amplifiers,
    plates: plain.map((row) => String(row.plate)),
    loopPlates: loops.map((row) => String(row.plate)),
    inserters,
    kinds: [...onDish, cascaded, wide],
    /** The one that wants an inserter twice as often. */
    onDish: [...onDish, onDish[1]!],
    cascaded,
    wide,
    receivers,
    feed,
    wideband,
    /** Five in six block direct current. */
    resistors: [...Array<string>(5).fill(blocking), String(endResistors[1]!.resistor)],
    tables: (order: Drawn): PartTables => ({
      cables: order.shuffled(cables),
      device_parts: order.shuffled(deviceParts),
      plates: order.shuffled([...plain, ...loops]),
      supplies: order.shuffled(supplies),
      head_unit_kinds: order.shuffled(kindRows),
      receivers: order.shuffled(receiverRows),
      feeds: order.shuffled(feeds),
      band_plans: plans,
      end_resistors: order.shuffled(endResistors),
    }),
  };
}
