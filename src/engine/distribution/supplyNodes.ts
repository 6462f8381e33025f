/**
 * The supply circuit of a whole distribution: head units, feeds, devices and
 * receivers' connectors as nodes, and what the ways between them let through.
 * Parts that nothing joins for the supply are circuits of their own.
 */
import { isFault, type Fault } from "../faults";
import { loopOhms } from "../power/loopOhms";
import type { Amperes, Ohms, Volts } from "../quantity";
import { nameKey } from "../signal/nameKey";
import type { PowerPath, Run } from "./parts";
import { THROUGH } from "./ports";
import type { Passes, SupplyNode } from "./supplyCircuit";
import type { NetworkLoad } from "./supplyNetwork";
import { deviceAt, DEVICE, LEAD, OUTLET, OUTPUT, runTo, type Tree } from "./tree";
import type { Inlet, Trunks } from "./trunks";

/** A way of the supply from a node to the one nearer to the dish. */
export interface Way {
  readonly passes: Passes;
  readonly ohms: Ohms;
  readonly drop: Volts;
}

const OPEN: Way = { passes: "both ways", ohms: 0, drop: 0 };
const BLOCKED: Way = { passes: "nothing", ohms: 0, drop: 0 };

/** @returns two ways one after the other */
export function inSeries(one: Way, other: Way): Way {
  const passes =
    one.passes === "both ways" || one.passes === other.passes
      ? other.passes
      : other.passes === "both ways"
        ? one.passes
        : "nothing";
  return { passes, ohms: one.ohms + other.ohms, drop: one.drop + other.drop };
}

/** @returns what a port lets through: port 0 is the through port, of a tap or a loop-through plate */
export function throughPort({ passes, drop, ohms }: PowerPath, port: number, hasThrough: boolean): Way {
  const both: Way = { passes: "both ways", ohms, drop: 0 };
  if (passes === "all ports") return both;
  if (passes === "no") return BLOCKED;
  if (passes === "one port") return port === (hasThrough ? THROUGH : 1) ? both : BLOCKED;
  return port === THROUGH ? both : { passes: "to the parent", ohms, drop };
}

/** Whether a part of one port passes the supply with the part itself, so that what it takes is taken behind it. */
const passesItself = (kind: string): boolean => kind !== "splitter" && kind !== "tap" && kind !== "inserter";

/** @returns what the supply finds between a port of a point and the point itself */
export function portWay(tree: Tree, point: number, port: number): Way {
  const { job, kind, row } = tree;
  const at = row[point]!;
  if (kind[point] === LEAD) {
    const { supply } = job.headUnits[at]!;
    return supply?.stands === "in the line" && supply.otherSide === "no" ? BLOCKED : OPEN;
  }
  if (kind[point] === OUTLET) return throughPort(job.outlets[at]!.plate!.power, port, true);
  const part = deviceAt(tree, point);
  if (!part || passesItself(part.kind)) return OPEN;
  if (part.supply) return part.supply.otherSide === "no" ? BLOCKED : OPEN;
  return throughPort(part.power, port, part.through !== null);
}

/** @returns what the supply finds in a point's own part before its ports: that of parts of one port */
export function ownWay(tree: Tree, point: number): Way {
  const part = deviceAt(tree, point);
  return part && passesItself(part.kind) ? throughPort(part.power, 1, false) : OPEN;
}

export interface SupplySourceOf {
  readonly node: number;
  readonly volts: Volts;
  readonly mostAmperes: Amperes | null;
  /** The head unit whose supply it is, or -1. */
  readonly head: number;
  /** The row of the inserter among the devices, or -1. */
  readonly device: number;
}

export interface ReceiverOf {
  readonly node: number;
  readonly outlet: number;
}

export interface FeedOf {
  readonly node: number;
  readonly dish: number;
  readonly slot: string;
  /** The switch that powers it. */
  readonly head: number;
}

export interface SupplyNodes {
  readonly nodes: readonly SupplyNode[];
  /** By node: the circuit that it belongs to. */
  readonly circuit: Int32Array;
  readonly circuits: number;
  readonly loads: readonly NetworkLoad[];
  readonly sources: readonly SupplySourceOf[];
  readonly receivers: readonly ReceiverOf[];
  /** End resistors that do not block it. */
  readonly resistors: readonly { readonly node: number; readonly ohms: Ohms; readonly point: number }[];
  readonly feeds: readonly FeedOf[];
  /** By head unit: where its load is. */
  readonly common: Int32Array;
  /** By head unit: its load; -1 where it takes nothing there. */
  readonly commonLoad: Int32Array;
  /** By point: the node of an output, a lead or a device; of an outlet its input. */
  readonly ofPoint: Int32Array;
  /** By row of the outlets: its connector, before what splits receivers; -1 where the row is bad. */
  readonly connector: Int32Array;
  /** By circuit: a cable whose loop resistance is at fault. */
  readonly faults: ReadonlyMap<number, Fault>;
}

export function supplyNodes(tree: Tree, trunks: Trunks): SupplyNodes {
  const { job, count, kind, row, parent, port } = tree;
  const { site, headUnits, devices, outlets, dishes, feeders } = job;
  const nodes: SupplyNode[] = [];
  const loads: NetworkLoad[] = [];
  const sources: SupplySourceOf[] = [];
  const receivers: ReceiverOf[] = [];
  const resistors: { node: number; ohms: Ohms; point: number }[] = [];
  const feeds: FeedOf[] = [];
  const common = new Int32Array(headUnits.length);
  const commonLoad = new Int32Array(headUnits.length);
  const ofPoint = new Int32Array(count).fill(-1);
  const connector = new Int32Array(outlets.length).fill(-1);
  const broken: { node: number; fault: Fault }[] = [];

  const enter = (above: number, { passes, ohms, drop }: Way): number =>
    nodes.push({ parent: above, passes, ohms, drop }) - 1;
  const enterBeyond = (above: number, way: Way, run: Run | null): number => {
    const ohms = run && run.length > 0 ? cableOhms(run) : 0;
    const node = enter(above, isFault(ohms) ? way : inSeries(way, { ...OPEN, ohms }));
    if (isFault(ohms)) broken.push({ node, fault: ohms });
    return node;
  };
  const cableOhms = ({ cable, length }: Run): Ohms | Fault =>
    isFault(cable) ? cable : loopOhms(cable, length, site.hot);
  const supplyAt = (
    node: number,
    supply: { volts: Volts; mostAmperes: Amperes | null },
    head: number,
    device = -1,
  ) => sources.push({ node, volts: supply.volts, mostAmperes: supply.mostAmperes, head, device });

  const isFromDish = ({ feeder, above }: Inlet): boolean => feeder >= 0 && above < 0;
  const feedKey = ({ dish, slot }: Inlet): string => `${dish} ${nameKey(slot)}`;
  /** Feeds that a switch powers. */
  const powered = new Set(
    headUnits.flatMap(({ kind: { powersFeed } }, head) =>
      powersFeed ? trunks.inlets[head]!.filter(isFromDish).map(feedKey) : [],
    ),
  );
  const toldUnpowered = new Set<string>();
  const entered = new Set<number>();
  for (const head of [...trunks.order, ...headUnits.keys()]) {
    if (entered.has(head)) continue;
    entered.add(head);
    const { kind: unit, supply } = headUnits[head]!;
    const inlets = trunks.inlets[head]!;
    const cascade = inlets.find(({ above }) => above >= 0);
    // A switch carries what stands before it through its feeders, one cable of a bundle for each feed.
    const way: Way = unit.powersFeed ? { ...OPEN, passes: "to the parent" } : BLOCKED;
    const node = cascade
      ? enterBeyond(common[cascade.above]!, way, feeders[cascade.feeder]!.run)
      : enter(-1, BLOCKED);
    common[head] = node;
    commonLoad[head] = loads.push({ node, kind: unit.loadKind, amount: unit.load }) - 1;
    if (supply?.stands === "at the head unit") supplyAt(node, supply, head);
    const told = unit.powersFeed ? new Set<string>() : toldUnpowered;
    for (const inlet of inlets.filter(isFromDish)) {
      const { slot, dish, feeder } = inlet;
      const { feed } = dishes[dish]!;
      const key = feedKey(inlet);
      // Of several switches that power a feed each has to carry it when the others are without mains.
      if (!feed || told.has(key) || (!unit.powersFeed && powered.has(key))) continue;
      told.add(key);
      const at = enterBeyond(node, unit.powersFeed ? OPEN : BLOCKED, feeders[feeder]!.run);
      loads.push({ node: at, kind: "A", amount: feed.load });
      feeds.push({ node: at, dish, slot, head });
    }
  }

  for (let point = 0; point < count; point++) {
    const at = row[point]!;
    if (kind[point] === OUTPUT) {
      const { senseAmperes, outputDrop } = headUnits[at]!.kind;
      const way: Way =
        senseAmperes !== null
          ? BLOCKED
          : outputDrop === null
            ? OPEN
            : { passes: "to the parent", ohms: 0, drop: outputDrop };
      const node = (ofPoint[point] = enter(common[at]!, way));
      if (senseAmperes) loads.push({ node, kind: "A", amount: senseAmperes });
      continue;
    }
    const above = parent[point]!;
    const fed = inSeries(portWay(tree, above, port[point]!), ownWay(tree, point));
    const run = runTo(tree, point);
    if (kind[point] !== OUTLET) {
      const node = (ofPoint[point] = enterBeyond(ofPoint[above]!, fed, run));
      const { supply } = kind[point] === LEAD ? headUnits[at]! : { supply: devices[at]!.part.supply };
      if (kind[point] === DEVICE) {
        const { amplifier } = devices[at]!.part;
        if (amplifier) loads.push({ node, kind: "A", amount: amplifier.load });
        if (supply) supplyAt(node, supply, -1, at);
      } else if (supply?.stands === "in the line") supplyAt(node, supply, at);
      continue;
    }
    const { plate, receiver, split, quantity } = outlets[at]!;
    const loops = (plate?.through ?? null) !== null;
    const toConnector = plate ? throughPort(plate.power, 1, loops) : OPEN;
    // A plain plate's connector is its input; behind a loop-through plate both stand apart.
    const input = enterBeyond(ofPoint[above]!, loops ? fed : inSeries(fed, toConnector), run);
    ofPoint[point] = input;
    const end = (connector[at] = loops ? enter(input, toConnector) : input);
    if (!receiver) {
      // What a receiver would find there comes through what is to split several.
      if (split) connector[at] = enter(end, throughPort(split.power, 1, split.through !== null));
      continue;
    }
    if (!split) receivers.push({ node: end, outlet: at });
    else
      for (let one = 1; one <= Math.min(quantity, split.ways); one++)
        receivers.push({
          node: enter(end, throughPort(split.power, one, split.through !== null)),
          outlet: at,
        });
  }

  const { endResistor } = site;
  if (endResistor && !isFault(endResistor) && !endResistor.blocksPower)
    for (const { point, port: open } of tree.openPorts) {
      const node = enter(ofPoint[point]!, portWay(tree, point, open));
      resistors.push({ node, ohms: endResistor.ohms, point });
    }

  const circuit = new Int32Array(nodes.length);
  let circuits = 0;
  nodes.forEach(({ parent: above, passes }, node) => {
    circuit[node] = above >= 0 && passes !== "nothing" ? circuit[above]! : circuits++;
  });
  return {
    nodes,
    circuit,
    circuits,
    loads,
    sources,
    receivers,
    resistors,
    feeds,
    common,
    commonLoad,
    ofPoint,
    connector,
    faults: new Map(broken.map(({ node, fault }) => [circuit[node]!, fault])),
  };
}
