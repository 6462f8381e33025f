/**
 * What a distribution takes in pieces and in metres of cable, by the tree.
 *
 * Two connectors for each piece of cable, and for each cable off a dish a
 * grounding block with two more; a lead for each receiver, and one more for
 * what splits several; a mains socket, by others, for each supply; an end
 * resistor for each open port of a splitter, a tap or a loop-through plate, of
 * what splits receivers at an outlet, and for each onward port of a last switch.
 *
 * Source: counting; end resistors on ports of splitters: common practice, no source.
 * Accuracy: exact. Metres are as typed: slack, waste and reels come after. Of a
 *   row that has no place in the tree the part counts, its cable does not; of
 *   one with a fault of its own nothing does.
 */
import { isFault } from "../faults";
import type { Metres } from "../quantity";
import { nameKey } from "../signal/nameKey";
import type { Run } from "./parts";
import { OUTPUT, runTo, type Tree } from "./tree";
import type { Trunks } from "./trunks";

export interface Counts {
  /** By name of the part: head units, feeds, devices, plates, supplies. */
  readonly parts: ReadonlyMap<string, number>;
  /** By size in metres; null where none is given. */
  readonly dishes: ReadonlyMap<Metres | null, number>;
  readonly connectors: number;
  readonly groundingBlocks: number;
  readonly endResistors: number;
  readonly receiverLeads: number;
  readonly mainsSockets: number;
  readonly metresByCable: ReadonlyMap<string, Metres>;
  readonly metresByRoute: ReadonlyMap<string, Metres>;
}

/** Onward ports of switches that no other switch hangs on. */
export function openOnwardPorts({ job }: Tree, { inlets }: Trunks): number {
  const leadsOn = new Set(inlets.flatMap((some) => some.map(({ above }) => above)));
  return job.headUnits.reduce(
    (sum, { kind }, head) => sum + (kind.onward && !leadsOn.has(head) ? kind.slots * kind.feedersPerSlot : 0),
    0,
  );
}

/** @returns by head unit 1 where it is on a dish, or right behind one: a feeder without a length is no cable */
function headUnitsAtDish({ job }: Tree, { inlets, order }: Trunks): Uint8Array {
  const atDish = new Uint8Array(job.headUnits.length);
  for (const head of order)
    atDish[head] = Number(
      job.headUnits[head]!.kind.sits === "on the dish" ||
        (inlets[head]!.length > 0 &&
          inlets[head]!.every(
            ({ feeder, above }) => !job.feeders[feeder]!.run?.length && (above < 0 || atDish[above] === 1),
          )),
    );
  return atDish;
}

export function countsOf(tree: Tree, trunks: Trunks): Counts {
  const { job, count, kind, row, parent } = tree;
  const { headUnits, devices, outlets, dishes, feeders, site } = job;
  const parts = new Map<string, number>();
  const metresByCable = new Map<string, Metres>();
  const metresByRoute = new Map<string, Metres>();
  const routeNames = new Map<string, string>();
  const add = <K>(to: Map<K, number>, key: K, amount: number): void =>
    void to.set(key, (to.get(key) ?? 0) + amount);
  let pieces = 0;
  let groundingBlocks = 0;
  const cable = (run: Run | null, times: number, fromDish: boolean): void => {
    if (!run || run.length <= 0 || times === 0) return;
    pieces += times;
    if (fromDish) groundingBlocks += times;
    if (!isFault(run.cable)) add(metresByCable, run.cable.name, run.length * times);
    // By the writing in which it stands first: a route is the same in capitals.
    const routeKey = nameKey(run.route);
    const route = routeNames.get(routeKey) ?? run.route;
    routeNames.set(routeKey, route);
    add(metresByRoute, route, run.length * times);
  };

  const dishSizes = new Map<Metres | null, number>();
  for (const { size, slots, feed, fault } of dishes) {
    if (fault) continue;
    add(dishSizes, size, 1);
    if (feed) add(parts, feed.name, slots.length);
  }
  /** By feeder from a switch: the switch. */
  const fromSwitch = new Map(
    trunks.inlets.flatMap((some) =>
      some.flatMap(({ above, feeder }) => (above >= 0 ? [[feeder, above] as const] : [])),
    ),
  );
  const atDish = headUnitsAtDish(tree, trunks);
  const isFromDish = (feeder: number): boolean => {
    const above = fromSwitch.get(feeder);
    return above === undefined || atDish[above] === 1;
  };
  feeders.forEach(({ run }, feeder) => cable(run, trunks.cables[feeder]!, isFromDish(feeder)));
  for (const { kind: unit, supply, fault } of headUnits) {
    if (fault) continue;
    add(parts, unit.name, 1);
    if (supply) add(parts, supply.name, 1);
  }
  for (const { part, fault } of devices) if (!fault) add(parts, part.name, 1);
  let receiverLeads = 0;
  let openSplitPorts = 0;
  for (const { plate, split, receiver, quantity, fault } of outlets) {
    if (fault) continue;
    if (plate) add(parts, plate.name, 1);
    if (split) add(parts, split.name, 1);
    const receivers = receiver ? quantity : 0;
    receiverLeads += receivers + Number(split !== null);
    if (split?.kind === "splitter") openSplitPorts += Math.max(0, split.ways - receivers);
  }
  // What sits right at a head unit on the dish is on the dish too.
  const onDish = new Uint8Array(count);
  for (let point = 0; point < count; point++) {
    if (kind[point] === OUTPUT) {
      onDish[point] = atDish[row[point]!]!;
      continue;
    }
    const run = runTo(tree, point);
    const stays = !run || run.length <= 0;
    onDish[point] = Number(stays && onDish[parent[point]!] === 1);
    cable(run, 1, onDish[parent[point]!] === 1);
  }
  const endResistors = site.endResistor
    ? tree.openPorts.length + openSplitPorts + openOnwardPorts(tree, trunks)
    : 0;
  if (site.endResistor && !isFault(site.endResistor) && endResistors > 0)
    add(parts, site.endResistor.name, endResistors);
  return {
    parts,
    dishes: dishSizes,
    connectors: 2 * (pieces + groundingBlocks),
    groundingBlocks,
    endResistors,
    receiverLeads,
    mainsSockets:
      headUnits.filter(({ supply, fault }) => supply && !fault).length +
      devices.filter(({ part, fault }) => part.supply && !fault).length,
    metresByCable,
    metresByRoute,
  };
}
