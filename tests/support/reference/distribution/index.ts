/**
 * The distribution a second time, from the tables of a job to every column of its functions but the sentences. Written
 * from the examples of jobs as they are built, handbooks and standards; it shares no code with the product.
 *
 * What the examples leave open, and what is taken here:
 * - a port that is named goes before one that is handed out;
 * - level and slope are judged at the ends of the range and at the outlet's own bands, hot and cold;
 * - least in use counts "all off" only where the head unit then has volts;
 * - a splitter behind a plate counts in level, noise, volts and commands of its outlet.
 */
import { isFilled, type Row, type Value } from "../job";
import { allotted, bandsOf, howMany, receiverOf, tunersAt, type Allotted } from "./bands";
import { OURS, type Limits } from "./circuit";
import { commandsOf, type Commands } from "./commands";
import { neededOf, quantityOf, type Needed } from "./counts";
import { dishesOf, feedersOf, slotsAt, type SlotAt } from "./dishes";
import { leastIsolation } from "./isolation";
import { carrierToNoise, corners, hot, levelBehind } from "./levels";
import { decibelsOf, neededOf as neededCarrier } from "./sky";
import { openPorts, statesOf, systemsOf, type State, type States, type System } from "./supply";
import { numberIn, rowNamed, settingsOf, type Answer, type Tables } from "./tables";
import { kindAt, stepsTo, stepsToReceiver, treeOf, type HeadUnit, type Thing, type Tree } from "./tree";

/** A column of words or figures has a row for each row of its table; blanks are null. */
export interface Reference {
  readonly OUTLETPLACES: readonly (readonly Answer[])[];
  readonly OUTLETLEVELS: readonly (readonly Answer[])[];
  readonly OUTLETNOISE: readonly (readonly Answer[])[];
  readonly OUTLETVOLTS: readonly (readonly Answer[])[];
  readonly OUTLETCHECKS: readonly (readonly Answer[])[];
  readonly DEVICELEVELS: readonly (readonly Answer[])[];
  readonly DEVICECHECKS: readonly (readonly Answer[])[];
  readonly HEADVOLTS: readonly (readonly Answer[])[];
  readonly HEADCHECKS: readonly (readonly Answer[])[];
  readonly DISHCHECKS: readonly (readonly Answer[])[];
  readonly FEEDERCHECKS: readonly (readonly Answer[])[];
  readonly NEEDED: readonly Needed[];
}

/** What two solves, or two sums, of the same thing may differ by: a limit that is met exactly is met. */
const EXACT = 1e-6;
/** Intermodulation of n carriers: 7.5·log10(n − 1) dB less (practice with distribution amplifiers, from memory). */
const derating = (carriers: number): number => (carriers > 1 ? 7.5 * Math.log10(carriers - 1) : 0);

export interface Worked {
  readonly tables: Tables;
  readonly tree: Tree;
  readonly bands: ReadonlyMap<Thing, Allotted>;
  readonly slots: ReadonlyMap<HeadUnit, readonly SlotAt[]>;
  readonly systems: readonly { readonly system: System; readonly states: States }[];
}

export function workedOut(tables: Tables, limits: Limits = OURS): Worked {
  const tree = treeOf(tables);
  return {
    tables,
    tree,
    bands: allotted(tables, tree.outlets),
    slots: new Map(tree.heads.map((head) => [head, slotsAt(tables, head.row, head.kind)])),
    systems: systemsOf(tables, tree, limits).map((system) => ({ system, states: statesOf(tables, system) })),
  };
}

const statesAt = ({ systems }: Worked, head: HeadUnit): States =>
  systems.find(({ system }) => system.heads.includes(head))!.states;
const outletsOf = ({ tree }: Worked, head: HeadUnit): Thing[] =>
  tree.outlets.filter((outlet) => outlet.head === head);

/** Every state of a circuit. */
const everyState = ({ off, allOn, alone, commanding, standing }: States): State[] =>
  [off, allOn, ...alone.values(), ...commanding.values(), ...standing.values()].filter(
    (state): state is State => state !== undefined,
  );

/** Volts of a state that has no operating point count as none. */
const voltsIn = (state: State | undefined, of: (state: State) => number): number => (state ? of(state) : 0);

const POWERED = 1;
/** All on, each of those outlets alone, and all off where the head unit then has volts. */
function statesInUse(worked: Worked, head: HeadUnit, outlets: readonly Thing[]): (State | undefined)[] {
  const { off, allOn, alone } = statesAt(worked, head);
  const isFedAnyway = voltsIn(off, (state) => state.headVolts(head)) >= POWERED;
  const mine = outlets.filter((outlet) => alone.has(outlet)).map((outlet) => alone.get(outlet));
  return [...(isFedAnyway ? [off] : []), ...mine, ...(mine.length > 0 ? [allOn] : [])];
}

/** The first of several whose figure is least. */
function leastOf<T>(list: readonly T[], of: (one: T) => number): T | undefined {
  return list.reduce<T | undefined>(
    (least, one) => (least === undefined || of(one) < of(least) - EXACT ? one : least),
    undefined,
  );
}

/** Nothing where nothing is asked. */
const leastIn = (values: readonly number[]): number | undefined =>
  values.length > 0 ? Math.min(...values) : undefined;

const below = (thing: Thing): Thing[] => [thing, ...thing.children.flatMap(below)];
const isAmplifier = (thing: Thing): boolean => thing.what === "device" && kindAt(thing) === "amplifier";

export interface HeadFigures {
  readonly off: number;
  readonly leastAlone: number | undefined;
  readonly leastIs: string | undefined;
  readonly allOn: number;
  readonly leastInUse: number | undefined;
  readonly ampsAtLeast: number | undefined;
  readonly supplyAmps: number | undefined;
  readonly ampsOff: number;
  readonly ampsAlone: number | undefined;
  readonly ampsAllOn: number;
}

export function headFigures(worked: Worked, head: HeadUnit): HeadFigures {
  const states = statesAt(worked, head);
  const volts = (state: State | undefined): number => voltsIn(state, (one) => one.headVolts(head));
  const amps = (state: State | undefined): number => voltsIn(state, (one) => one.headAmps(head));
  const outlets = outletsOf(worked, head).filter((outlet) => states.alone.has(outlet));
  const least = leastOf(outlets, (outlet) => volts(states.alone.get(outlet)));
  const inUse = statesInUse(worked, head, outlets);
  const leastState =
    inUse.length > 0
      ? leastOf(
          inUse.map((state) => ({ state })),
          ({ state }) => volts(state),
        )
      : undefined;
  const supply = rowNamed(worked.tables.supplies, "supply", head.row.supply);
  return {
    off: volts(states.off),
    leastAlone: least && volts(states.alone.get(least)),
    leastIs: least?.name,
    allOn: volts(states.allOn),
    leastInUse: leastState && volts(leastState.state),
    ampsAtLeast: leastState && amps(leastState.state),
    supplyAmps:
      supply && Math.max(...everyState(states).map((state) => state.supplyAmps(`output ${head.name}`))),
    ampsOff: amps(states.off),
    ampsAlone: least && amps(states.alone.get(least)),
    ampsAllOn: amps(states.allOn),
  };
}

/** Least volts at the feeds that a head unit powers, with their least, by dish. */
export function feedVolts(worked: Worked): { dish: string; slot: string; volts: number; least: number }[] {
  return worked.systems.flatMap(({ system, states }) => {
    const isFedAnyway = system.heads.some(
      (head) => voltsIn(states.off, (state) => state.headVolts(head)) >= POWERED,
    );
    const inUse = [...(isFedAnyway ? [states.off] : []), ...states.alone.values(), states.allOn];
    return system.feeds.map(({ dish, slot, node, least }) => ({
      dish,
      slot,
      volts: leastIn(inUse.map((state) => voltsIn(state, (one) => one.volts(node)))) ?? 0,
      least,
    }));
  });
}

export interface SlotNoise {
  readonly slot: string;
  readonly clear: number;
  readonly inRain: number | undefined;
  readonly needed: number;
}

/** Carrier to noise of every slot at an outlet, where it is asked. */
export function noiseAt({ tables, bands, slots }: Worked, outlet: Thing): SlotNoise[] {
  const settings = settingsOf(tables);
  const own = (bands.get(outlet)?.bands ?? []).flatMap(({ mhz }) => mhz ?? []);
  const frequencies = own.length > 0 ? own : [numberIn(settings, "low"), numberIn(settings, "high")];
  const figure = receiverOf(tables, outlet.row)?.noiseFigure ?? 10;
  return (slots.get(outlet.head) ?? []).flatMap((at) => {
    if (!at.sky || at.clear === undefined) return [];
    const worked = (ratio: number): number => carrierToNoise(tables, outlet, at, ratio, frequencies, figure);
    const modulation = String(rowNamed(tables.slots, "slot", at.slot)!.modulation);
    return [
      {
        slot: at.slot,
        clear: worked(at.clear),
        inRain: at.inRain === undefined ? undefined : worked(at.inRain),
        needed: neededCarrier(modulation) + numberIn(settings, "margin", 2),
      },
    ];
  });
}

export interface OutletLevels {
  /** Low cold, low hot, high cold, high hot. */
  readonly corners: readonly number[];
  /** Hot and cold at each of its own bands. */
  readonly ownHot: readonly number[];
  readonly ownCold: readonly number[];
  readonly longest: number;
}

export function levelsAt({ tables, bands }: Worked, outlet: Thing): OutletLevels {
  const steps = stepsToReceiver(outlet);
  const four = corners(tables);
  const own = (bands.get(outlet)?.bands ?? []).flatMap(({ mhz }) => mhz ?? []);
  const { celsius: cold } = four[0]!;
  const longest = four
    .filter(({ celsius }) => celsius !== cold)
    .map((at) => levelBehind(tables, outlet, steps, at, true));
  return {
    corners: four.map((at) => levelBehind(tables, outlet, steps, at)),
    ownHot: own.map((mhz) => levelBehind(tables, outlet, steps, hot(tables, mhz))),
    ownCold: own.map((mhz) => levelBehind(tables, outlet, steps, { mhz, celsius: cold })),
    longest: Math.min(...longest),
  };
}

const isHigher = (value: number, limit: number): boolean => value > limit + EXACT;
const isLower = (value: number, limit: number): boolean => value < limit - EXACT;

export function outletVolts(worked: Worked, outlet: Thing) {
  const states = statesAt(worked, outlet.head);
  const standing = states.standing.get(outlet);
  return {
    head: states.alone.has(outlet)
      ? voltsIn(states.alone.get(outlet), (state) => state.headVolts(outlet.head))
      : undefined,
    commanding: states.commanding.has(outlet)
      ? voltsIn(states.commanding.get(outlet), (state) => state.outputVolts(outlet))
      : undefined,
    fromSupplies: voltsIn(states.off, (state) => state.standing(outlet)),
    standing: Math.max(
      voltsIn(states.off, (state) => state.standing(outlet)),
      voltsIn(standing, (state) => state.standing(outlet)),
    ),
    gives: states.alone.has(outlet)
      ? voltsIn(states.alone.get(outlet), (state) => state.given(outlet))
      : undefined,
  };
}

/** An end resistor on which volts stand that it does not block. */
const isOnPower = (worked: Worked, thing: Thing): boolean =>
  everyState(statesAt(worked, thing.head)).some((state) => state.onResistor(thing) > POWERED);

/** Of the checks of an outlet, all but its own row's. */
export function outletChecks(worked: Worked, outlet: Thing) {
  const { tables } = worked;
  const settings = settingsOf(tables);
  const levels = levelsAt(worked, outlet);
  const receiver = receiverOf(tables, outlet.row);
  const [least, most] = [numberIn(settings, "level_least"), numberIn(settings, "level_most")];
  const [lowCold, lowHot, highCold, highHot] = levels.corners as [number, number, number, number];
  const weakest = Math.min(...levels.corners, ...levels.ownHot);
  const strongest = Math.max(...levels.corners, ...levels.ownCold);
  let level = "ok";
  if (isLower(weakest, least)) level = "low";
  else if (isHigher(strongest, most)) level = "high";
  const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  const slope = Math.max(
    spread([lowHot, highHot, ...levels.ownHot]),
    spread([lowCold, highCold, ...levels.ownCold]),
  );
  const noise = noiseAt(worked, outlet);
  const isNoisy = noise.some(
    ({ clear, inRain, needed }) => isLower(clear, needed) || isLower(inRain ?? Infinity, needed),
  );
  const details = tables.outlet_details[outlet.index] ?? {};
  const splitBy = rowNamed(tables.device_parts, "part", details.split_by);
  const connectors = splitBy
    ? numberIn(splitBy, "ways", 1)
    : outlet.part
      ? numberIn(outlet.part, "connectors", 1)
      : 1;
  const { through } = openPorts(outlet);
  const isOpen = through && !isFilled(settings, "resistor");
  const commands: Commands | undefined = commandsOf(tables, outlet, statesAt(worked, outlet.head));
  return {
    level,
    slope: isHigher(slope, numberIn(settings, "slope_most", 15)) ? "steep" : "ok",
    noise: noise.length === 0 ? null : isNoisy ? "low" : "ok",
    commands,
    bands: worked.bands.get(outlet)?.isBad ? "bad" : "ok",
    connectors: receiver && howMany(outlet.row) > connectors ? "too many" : "ok",
    applied: receiver && isHigher(outletVolts(worked, outlet).standing, receiver.appliedMost) ? "high" : "ok",
    openPort: isOpen || isOnPower(worked, outlet) ? "open" : "ok",
  };
}

function rowsFor(
  rows: readonly Row[],
  key: string,
  width: number,
  of: (row: Row, index: number) => readonly Answer[] | undefined,
): (readonly Answer[])[] {
  const blank = Array<Answer>(width).fill(null);
  return rows.map((row, index) => (isFilled(row, key) ? (of(row, index) ?? blank) : blank));
}

/** The head unit's kind, or the user bands of an output that a device carries. */
const carriersAt = ({ tables }: Worked, thing: Thing): number => bandsOf(tables, thing.head).length;

export function amplifierFigures(worked: Worked, thing: Thing) {
  const { tables } = worked;
  const steps = stepsTo(thing);
  const outlets = below(thing).filter(({ what }) => what === "outlet");
  return {
    output: Math.max(...corners(tables).map((at) => levelBehind(tables, thing, steps, at))),
    limit: numberIn(thing.part!, "output_most") - derating(carriersAt(worked, thing)),
    volts: leastIn(
      statesInUse(worked, thing.head, outlets).map((state) => voltsIn(state, (one) => one.at(thing))),
    ),
    leastVolts: numberIn(thing.part!, "least_volts"),
  };
}

function deviceLevels(worked: Worked, thing: Thing): Answer[] {
  const { tables } = worked;
  const kind = kindAt(thing);
  const ends = (mhz: number): number => {
    if (kind !== "splitter" && kind !== "tap") return 0;
    const settings = settingsOf(tables);
    const [low, high] = [numberIn(settings, "low"), numberIn(settings, "high")];
    const part = thing.part!;
    return (
      numberIn(part, "port_low") +
      ((numberIn(part, "port_high") - numberIn(part, "port_low")) * (mhz - low)) / (high - low)
    );
  };
  const steps = stepsTo(thing);
  const amplifier = isAmplifier(thing) ? amplifierFigures(worked, thing) : undefined;
  const isLimited = amplifier && isFilled(thing.part!, "output_most");
  return [
    thing.head.name,
    thing.output,
    thing.port,
    thing.children.length,
    ...corners(tables).map((at) => levelBehind(tables, thing, steps, at) - ends(at.mhz)),
    amplifier ? amplifier.output : null,
    isLimited ? amplifier.limit : null,
  ];
}

function deviceChecks(worked: Worked, thing: Thing): Answer[] {
  const { tables } = worked;
  const amplifier = isAmplifier(thing) ? amplifierFigures(worked, thing) : undefined;
  const amps = Math.max(
    ...everyState(statesAt(worked, thing.head)).map((state) =>
      Math.max(state.through(thing.name), thing.source ? state.supplyAmps(`device ${thing.name}`) : 0),
    ),
  );
  const isLimited = amplifier && isFilled(thing.part!, "output_most");
  const kind = kindAt(thing);
  const { through } = openPorts(thing);
  const isOpen = (through && !isFilled(settingsOf(tables), "resistor")) || isOnPower(worked, thing);
  return [
    amplifier?.volts ?? null,
    amps,
    "ok",
    amplifier ? (isLower(amplifier.volts ?? Infinity, amplifier.leastVolts) ? "low" : "ok") : null,
    isHigher(amps, numberIn(thing.part!, "amps", Infinity)) ? "high" : "ok",
    isLimited ? (isHigher(amplifier.output, amplifier.limit) ? "high" : "ok") : null,
    kind === "splitter" || kind === "tap" ? (isOpen ? "open" : "ok") : null,
  ];
}

function headChecks(worked: Worked, head: HeadUnit): Answer[] {
  const { tables, slots } = worked;
  const { kind, row } = head;
  const figures = headFigures(worked, head);
  const supply = rowNamed(tables.supplies, "supply", row.supply);
  const inputs = (slots.get(head) ?? [])
    .flatMap(({ input }) => input ?? [])
    .filter(({ least }) => !Number.isNaN(least));
  let input: Answer = null;
  if (inputs.length > 0 && (isFilled(kind, "in_least") || isFilled(kind, "in_most"))) {
    input = "ok";
    if (isLower(Math.min(...inputs.map(({ least }) => least)), numberIn(kind, "in_least", -Infinity)))
      input = "low";
    else if (isHigher(Math.max(...inputs.map(({ most }) => most)), numberIn(kind, "in_most", Infinity)))
      input = "high";
  }
  const dishes = feedersOf(tables)
    .filter(({ to, dish }) => to === row && dish)
    .map(({ dish }) => dish!.name);
  const feeds = feedVolts(worked).filter(({ dish }) => dishes.includes(dish));
  return [
    "ok",
    figures.leastInUse !== undefined && isLower(figures.leastInUse, numberIn(kind, "least_volts"))
      ? "low"
      : "ok",
    isHigher(figures.supplyAmps ?? 0, numberIn(supply ?? {}, "amps", Infinity)) ? "high" : "ok",
    input,
    feeds.length === 0 ? null : feeds.some(({ volts, least }) => isLower(volts, least)) ? "low" : "ok",
    figures.supplyAmps === undefined ? null : figures.supplyAmps > 1e-4 ? "ok" : "unused",
  ];
}

/** Every column of every function. */
export function referenceOf(tables: Tables, limits: Limits = OURS): Reference {
  const worked = workedOut(tables, limits);
  const { tree, bands } = worked;
  const outletAt = (row: Row): Thing | undefined => tree.outlets.find((thing) => thing.row === row);
  const deviceAt = (row: Row): Thing | undefined => tree.devices.find((thing) => thing.row === row);
  const headAt = (row: Row): HeadUnit | undefined => tree.heads.find((head) => head.row === row);
  const orBlank = (value: number | undefined): Answer => value ?? null;
  const joined = (values: readonly Value[]): Answer => (values.length === 0 ? null : values.join(", "));

  const onOutlets = (width: number, of: (outlet: Thing) => Answer[]): (readonly Answer[])[] =>
    rowsFor(tables.outlets, "outlet", width, (row) => {
      const outlet = outletAt(row);
      return outlet && of(outlet);
    });
  const feeds = feedVolts(worked);
  return {
    OUTLETPLACES: onOutlets(5, (outlet) => {
      const own = bands.get(outlet)?.bands ?? [];
      return [
        outlet.head.name,
        outlet.output,
        outlet.port,
        receiverOf(tables, outlet.row) ? joined(own.map(({ band }) => band)) : "none",
        joined(own.flatMap(({ mhz }) => mhz ?? [])),
      ];
    }),
    OUTLETLEVELS: onOutlets(6, (outlet) => {
      const { corners: four, ownHot, longest } = levelsAt(worked, outlet);
      return [...four, ownHot.length > 0 ? Math.min(...ownHot) : null, longest];
    }),
    OUTLETNOISE: onOutlets(4, (outlet) => {
      const over = ({ clear, inRain, needed }: SlotNoise): number =>
        Math.min(clear, inRain ?? Infinity) - needed;
      const worst = leastOf(noiseAt(worked, outlet), over);
      return worst
        ? [worst.slot, worst.clear, orBlank(worst.inRain), worst.needed]
        : [null, null, null, null];
    }),
    OUTLETVOLTS: onOutlets(4, (outlet) => {
      const { head, commanding, standing, gives } = outletVolts(worked, outlet);
      return [orBlank(head), orBlank(commanding), standing, orBlank(gives)];
    }),
    OUTLETCHECKS: rowsFor(tables.outlets, "outlet", 9, (row) => {
      const outlet = outletAt(row);
      if (!outlet) return ["bad", null, null, null, null, null, null, null, null];
      const said = outletChecks(worked, outlet);
      return [
        "ok",
        said.level,
        said.slope,
        said.noise,
        said.commands?.word ?? null,
        said.bands,
        said.connectors,
        said.applied,
        said.openPort,
      ];
    }),
    DEVICELEVELS: rowsFor(tables.devices, "device", 10, (row) => {
      const device = deviceAt(row);
      return device && deviceLevels(worked, device);
    }),
    DEVICECHECKS: rowsFor(tables.devices, "device", 7, (row) => {
      const device = deviceAt(row);
      return device ? deviceChecks(worked, device) : [null, null, "bad", null, null, null, null];
    }),
    HEADVOLTS: rowsFor(tables.head_units, "head", 9, (row) => {
      const head = headAt(row);
      if (!head) return undefined;
      const figures = headFigures(worked, head);
      return [
        figures.off,
        orBlank(figures.leastAlone),
        figures.leastIs ?? null,
        figures.allOn,
        orBlank(figures.leastInUse),
        orBlank(figures.ampsAtLeast),
        orBlank(figures.supplyAmps),
        outletsOf(worked, head).reduce((sum, outlet) => sum + tunersAt(tables, outlet.row), 0),
        bandsOf(tables, head).length * head.outputs.length,
      ];
    }),
    HEADCHECKS: rowsFor(tables.head_units, "head", 6, (row) => {
      const head = headAt(row);
      return head ? headChecks(worked, head) : ["bad", null, null, null, null, null];
    }),
    DISHCHECKS: isNoDish(tables)
      ? [[null, null, null, null]]
      : rowsFor(tables.dishes, "dish", 4, (row) => {
          const dish = dishesOf(tables).find((one) => one.row === row)!;
          const clear = [...worked.slots].flatMap(([, slots]) =>
            slots
              .filter(({ slot }) => dish.slots.includes(slot))
              .flatMap(({ sky }) => (sky ? [-decibelsOf(sky.clear)] : [])),
          );
          const volts = feeds.filter((feed) => feed.dish === dish.name).map((feed) => feed.volts);
          return [
            dish.slots.join(" "),
            clear.length > 0 ? Math.min(...clear) : null,
            volts.length > 0 ? Math.min(...volts) : null,
            "ok",
          ];
        }),
    FEEDERCHECKS: rowsFor(tables.feeders, "to", 2, (row) => {
      const feeder = feedersOf(tables).find((one) => one.row === row);
      return feeder ? [feeder.cables, "ok"] : [null, "bad"];
    }),
    NEEDED: neededOf(tables, tree),
  };
}

const isNoDish = (tables: Tables): boolean => tables.dishes.every((row) => !isFilled(row, "dish"));
export { leastIsolation, quantityOf };
