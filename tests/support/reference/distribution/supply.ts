/**
 * Direct current of a job: its circuit from the tree, one circuit for the head units that feeders join, in the states that
 * are asked: all receivers off, each one on alone at rest, all on at rest, each commanding while the others rest, and each
 * off while all others command, for what then stands on it.
 *
 * Of a feeder the current goes through one cable for each feed, through one to the switch before.
 */
import { isFilled, type Row } from "../job";
import { howMany, receiverOf, type Receiver } from "./bands";
import { operatingPoint, OURS, type Branch, type Limits, type Load, type Point } from "./circuit";
import { feedersOf } from "./dishes";
import { numberIn, rowNamed, settingsOf, wordIn, type Tables } from "./tables";
import {
  isLoop,
  kindAt,
  kindOf,
  waysOf,
  type HeadUnit,
  type Passage,
  type Step,
  type Thing,
  type Tree,
} from "./tree";

/** One after the other. */
const inRow = (passages: readonly Passage[]): Passage => ({
  way: passages.some(({ way }) => way === "none")
    ? "none"
    : passages.some(({ way }) => way === "up")
      ? "up"
      : "both",
  ohms: passages.reduce((sum, { ohms }) => sum + ohms, 0),
  drop: passages.reduce((sum, { drop }) => sum + drop, 0),
});

interface Wire extends Branch {
  /** Devices whose ports or ends it goes through. */
  readonly of: readonly string[];
}

export interface Feed {
  readonly dish: string;
  readonly slot: string;
  readonly node: number;
  readonly least: number;
}

/** A receiver of an outlet, of several the one at that port of what splits them. */
export interface Unit {
  readonly outlet: Thing;
  readonly port: number;
  /** Not there at a spare outlet. */
  readonly receiver: Receiver | undefined;
}

/** A circuit with everything in it but the receivers. */
export interface System {
  readonly heads: readonly HeadUnit[];
  readonly outlets: readonly Thing[];
  readonly feeds: readonly Feed[];
  /** The receivers of its outlets, and one for each spare outlet, where none is. */
  readonly units: readonly Unit[];
  /** Its point where those receivers give those volts; nothing where there is none. */
  readonly at: (on: ReadonlyMap<Unit, number>, isDrawing?: boolean) => State | undefined;
}

export interface State {
  readonly volts: (node: number) => number;
  readonly headVolts: (head: HeadUnit) => number;
  readonly headAmps: (head: HeadUnit) => number;
  /** At the connector of the output that a thing hangs on. */
  readonly outputVolts: (thing: Thing) => number;
  readonly supplyAmps: (of: string) => number;
  readonly given: (unit: Unit) => number;
  /** On a receiver that is off. */
  readonly standing: (unit: Unit) => number;
  /** The greatest current at an end or port of a device; an amplifier takes its own at its foot. */
  readonly through: (device: Thing) => number;
  /** At an amplifier. */
  readonly at: (thing: Thing) => number;
  /** Volts on an end resistor that does not block direct current, at the device or outlet that bears it. */
  readonly onResistor: (of: Thing) => number;
}

export function systemsOf(tables: Tables, tree: Tree, limits: Limits = OURS): System[] {
  const feeders = feedersOf(tables);
  const together = new Map<HeadUnit, HeadUnit>(tree.heads.map((head) => [head, head]));
  const rootOf = (head: HeadUnit): HeadUnit =>
    together.get(head) === head ? head : rootOf(together.get(head)!);
  const headOf = (row: Row | undefined): HeadUnit | undefined => tree.heads.find((head) => head.row === row);
  for (const { from, to } of feeders) {
    const [a, b] = [headOf(from), headOf(to)];
    if (a && b) together.set(rootOf(b), rootOf(a));
  }
  const roots = tree.heads.filter((head) => rootOf(head) === head);
  return roots.map((root) =>
    systemOf(
      tables,
      tree,
      tree.heads.filter((head) => rootOf(head) === root),
      limits,
    ),
  );
}

/** Whether the site names a part with which open ports are closed. */
export const closesPorts = (tables: Tables): boolean =>
  rowNamed(tables.end_resistors, "resistor", settingsOf(tables).resistor) !== undefined;

/** The resistor with which open ports are closed, where it lets direct current pass: its ohms. */
function leakingOhms(tables: Tables): number | undefined {
  const row = rowNamed(tables.end_resistors, "resistor", settingsOf(tables).resistor);
  return row && wordIn(row, "blocks", "no") !== "yes" ? numberIn(row, "ohms", 75) : undefined;
}

/** The ports of a thing at which nothing hangs. */
export function openPorts(thing: Thing): { numbered: number[]; through: boolean } {
  const used = thing.taken;
  if (thing.what === "outlet") return { numbered: [], through: isLoop(thing.part) && !used.has("through") };
  const kind = kindAt(thing);
  if (kind !== "splitter" && kind !== "tap") return { numbered: [], through: false };
  const ports = Array.from({ length: waysOf(thing.part!) }, (_, index) => index + 1);
  return {
    numbered: ports.filter((port) => !used.has(port)),
    through: kind === "tap" && !used.has("through"),
  };
}

function systemOf(tables: Tables, tree: Tree, heads: readonly HeadUnit[], limits: Limits): System {
  let nodes = 0;
  const node = (): number => nodes++;
  const held = new Map<number, number>();
  const wires: Wire[] = [];
  const loads: Load[] = [];
  const foot = new Map<Thing, number>();
  const inside = new Map<HeadUnit, number>();
  const connector = new Map<Thing, number>();
  const sourceNodes = new Map<string, number>();
  const headLoads = new Map<HeadUnit, number>();
  const ownLoads = new Map<Thing, number>();
  const ground = node();
  held.set(ground, 0);

  /** From the lower node up to the upper one. */
  const wire = (lower: number, upper: number, steps: readonly Step[], into: string): void => {
    const { way, ohms, drop } = inRow(steps.map(({ passage }) => passage));
    if (way === "none") return;
    const of = [into, ...steps.filter(({ isCable }) => !isCable).map((step) => step.of)];
    wires.push({ a: lower, b: upper, ohms, drop: way === "up" ? drop : undefined, of });
  };

  /** A node of its own for a supply, so that its current can be told. */
  function feedIn(name: string, volts: number, at: number): void {
    const source = node();
    held.set(source, volts);
    wires.push({ a: source, b: at, ohms: limits.contactOhms, drop: undefined, of: [] });
    sourceNodes.set(name, source);
  }

  const leaking = leakingOhms(tables);
  const resistors = new Map<Thing, number>();
  /** An end resistor that passes direct current, where volts can come out at the port that it closes. */
  function closeOpenPorts(thing: Thing): void {
    if (leaking === undefined || !thing.part) return;
    const { numbered, through } = openPorts(thing);
    const isPlate = thing.what === "outlet";
    const power = wordIn(thing.part, "power", isPlate ? "all ports" : "no");
    const ohms = numberIn(thing.part, "ohms", 0) + leaking;
    const close = (): void => {
      resistors.set(thing, wires.length);
      wires.push({ a: foot.get(thing)!, b: ground, ohms, drop: undefined, of: [thing.name] });
    };
    if (through && power !== "no") close();
    for (const port of numbered) {
      const isFirst = !isPlate && kindOf(thing.part) === "splitter" && port === 1;
      if (power === "all ports" || (power === "one port" && isFirst)) close();
    }
  }

  function hang(thing: Thing, parentFoot: number): void {
    let upper = parentFoot;
    if (thing.source) {
      upper = node();
      feedIn(`${thing.what} ${thing.source.of}`, thing.source.volts, upper);
      wire(upper, parentFoot, thing.above, thing.name);
    }
    const lower = node();
    foot.set(thing, lower);
    wire(lower, upper, thing.source ? thing.below : [...thing.above, ...thing.below], thing.name);
    if (thing.load > 0) {
      ownLoads.set(thing, loads.length);
      loads.push({ node: lower, amps: thing.load });
    }
    closeOpenPorts(thing);
    for (const child of thing.children) hang(child, lower);
  }

  for (const head of heads) {
    const here = node();
    inside.set(head, here);
    const supply = rowNamed(tables.supplies, "supply", head.row.supply);
    if (supply && wordIn(supply, "stands", "in the line") !== "in the line") {
      feedIn(`output ${head.name}`, numberIn(supply, "volts"), here);
    }
    const load = numberIn(head.kind, "load");
    headLoads.set(head, loads.length);
    loads.push(
      wordIn(head.kind, "load_unit", "a") === "w" ? { node: here, watts: load } : { node: here, amps: load },
    );
    for (const output of head.outputs) {
      if (output.children.length === 0 && !output.source) continue;
      const out = node();
      connector.set(output, out);
      if (isFilled(head.kind, "output_amps"))
        loads.push({ node: out, amps: numberIn(head.kind, "output_amps") });
      else
        wires.push({
          a: out,
          b: here,
          ohms: 0,
          drop: isFilled(head.kind, "output_drop") ? numberIn(head.kind, "output_drop") : undefined,
          of: [],
        });
      hang(output, out);
    }
  }

  const feeds: Feed[] = [];
  for (const { dish, from, to, slots, cable, metres } of feedersOf(tables)) {
    const head = heads.find(({ row }) => row === to);
    if (!head || wordIn(head.kind, "powers_feed", "no") !== "yes") continue;
    const ohms = cable?.ohms(metres) ?? 0;
    if (dish?.feed)
      for (const slot of slots) {
        const there = node();
        wires.push({ a: inside.get(head)!, b: there, ohms, drop: undefined, of: [] });
        loads.push({ node: there, amps: numberIn(dish.feed, "load_amps", 0) });
        feeds.push({ dish: dish.name, slot, node: there, least: numberIn(dish.feed, "least_volts", 0) });
      }
    const before = heads.find(({ row }) => row === from);
    if (before) wires.push({ a: inside.get(head)!, b: inside.get(before)!, ohms, drop: undefined, of: [] });
  }

  const outlets = tree.outlets.filter(({ head }) => heads.includes(head));
  const severalAt = ({ row, split }: Thing): number => (split(1).length > 0 ? howMany(row) : 1);
  // Several receivers behind what splits them have a node in common; on one plain connector only one can be.
  const shared = new Map<Thing, number>();
  for (const outlet of outlets)
    if (severalAt(outlet) > 1) {
      shared.set(outlet, node());
      wire(shared.get(outlet)!, foot.get(outlet)!, outlet.tail, outlet.name);
    }
  const units = outlets.flatMap((outlet): Unit[] => {
    const receiver = receiverOf(tables, outlet.row);
    const several = receiver ? severalAt(outlet) : 1;
    return Array.from({ length: several }, (_, index) => ({ outlet, port: index + 1, receiver }));
  });
  const stepsFrom = ({ outlet, port }: Unit): readonly Step[] =>
    shared.has(outlet) ? outlet.split(port) : [...outlet.tail, ...outlet.split(port)];
  const passageFrom = new Map(
    units.map((unit) => [unit, inRow(stepsFrom(unit).map(({ passage }) => passage))]),
  );
  const endOf = ({ outlet }: Unit): number => shared.get(outlet) ?? foot.get(outlet)!;

  function at(on: ReadonlyMap<Unit, number>, isDrawing = true): State | undefined {
    const branches: Wire[] = [...wires];
    const all = new Map(held);
    let count = nodes;
    const givenBy = new Map<Unit, number>();
    for (const [unit, volts] of on) {
      const { way, ohms, drop } = passageFrom.get(unit)!;
      if (way === "none") continue;
      const source = count++;
      all.set(source, volts);
      givenBy.set(unit, branches.length);
      branches.push({
        a: source,
        b: endOf(unit),
        ohms: ohms + limits.contactOhms,
        drop,
        of: stepsFrom(unit).map((step) => step.of),
      });
    }
    const leastVolts = isDrawing ? limits.leastVolts : Infinity;
    const point = operatingPoint({ nodes: count, held: all, branches, loads }, { ...limits, leastVolts });
    return point && stateOf(point, branches, givenBy);
  }

  function stateOf(
    { volts, amps, drawn }: Point,
    branches: readonly Wire[],
    givenBy: Map<Unit, number>,
  ): State {
    const outputs = (head: HeadUnit): number[] =>
      isFilled(head.kind, "output_amps")
        ? []
        : head.outputs.flatMap((output) => {
            const out = connector.get(output);
            return out === undefined ? [] : [volts[out]!];
          });
    const outputOf = (thing: Thing): Thing => (thing.parent ? outputOf(thing.parent) : thing);
    /** Out of the foot of a thing towards the head unit. */
    const upwards = (thing: Thing): number =>
      branches.reduce(
        (sum, { a, b, of }, index) =>
          a === foot.get(thing) && b !== ground && of[0] === thing.name ? sum + amps[index]! : sum,
        0,
      );
    return {
      volts: (index) => volts[index]!,
      headVolts: (head) => Math.max(volts[inside.get(head)!]!, ...outputs(head)),
      headAmps: (head) => drawn[headLoads.get(head)!]!,
      outputVolts: (thing) => volts[connector.get(outputOf(thing))!]!,
      supplyAmps: (of) => {
        const source = sourceNodes.get(of);
        return branches.reduce((sum, { a, b }, index) => {
          if (a === source) return sum + amps[index]!;
          return b === source ? sum - amps[index]! : sum;
        }, 0);
      },
      given: (unit) => {
        const branch = givenBy.get(unit);
        return branch === undefined ? 0 : amps[branch]!;
      },
      standing: (unit) => (passageFrom.get(unit)!.way === "both" ? volts[endOf(unit)]! : 0),
      through: (device) =>
        Math.max(
          ...branches.map(({ of }, index) => (of.includes(device.name) ? Math.abs(amps[index]!) : 0)),
          Math.abs((ownLoads.has(device) ? drawn[ownLoads.get(device)!]! : 0) + upwards(device)),
        ),
      at: (thing) => volts[foot.get(thing)!]!,
      onResistor: (thing) => (resistors.has(thing) ? volts[foot.get(thing)!]! : 0),
    };
  }
  return { heads, outlets, feeds, units, at };
}

/** What is asked of a circuit in all its states; a state without an operating point is missing. */
export interface States {
  readonly units: readonly Unit[];
  /** All off and nothing draws: the worst for what stands on a receiver from supplies. */
  readonly idle: State | undefined;
  readonly off: State | undefined;
  readonly allOn: State | undefined;
  readonly alone: ReadonlyMap<Unit, State | undefined>;
  readonly commanding: ReadonlyMap<Unit, State | undefined>;
  /** Spare outlets too. */
  readonly standing: ReadonlyMap<Unit, State | undefined>;
}

export function statesOf({ units, at }: System): States {
  const receivers = units.filter(({ receiver }) => receiver);
  const resting = receivers.map((unit) => [unit, unit.receiver!.restVolts] as const);
  const commanding = receivers.map((unit) => [unit, unit.receiver!.commandVolts] as const);
  const ofEach = (of: (unit: Unit) => State | undefined, list = receivers): Map<Unit, State | undefined> =>
    new Map(list.map((unit) => [unit, of(unit)]));
  return {
    units,
    idle: at(new Map(), false),
    off: at(new Map()),
    allOn: at(new Map(resting)),
    alone: ofEach((unit) => at(new Map([[unit, unit.receiver!.restVolts]]))),
    commanding: ofEach((unit) => at(new Map([...resting, [unit, unit.receiver!.commandVolts]]))),
    standing: ofEach((unit) => at(new Map(commanding.filter(([other]) => other !== unit))), [...units]),
  };
}

/** The states of a kind that are about an outlet's receivers. */
export const statesFor = (
  outlet: Thing,
  states: ReadonlyMap<Unit, State | undefined>,
): { unit: Unit; state: State | undefined }[] =>
  [...states].flatMap(([unit, state]) => (unit.outlet === outlet ? [{ unit, state }] : []));
