/**
 * Labour that follows the route of each cable.
 *
 * Minutes = (Σ metres × minutes a metre of their route + Σ pieces × minutes
 * each) × difficulty + floors + job: difficulty does not stretch the day's
 * set-up.
 *
 * Source: estimating practice: quantity × unit × factor, kept apart so that
 *   each can be checked. No published norm for this trade was found.
 * Accuracy: that of the minutes given.
 */
import type { Counts } from "./counts";
import type { DeviceKind } from "./parts";
import type { Tree } from "./tree";
import { DEVICES, workOf, type Work } from "./work";

export type Minutes = number;

export interface LabourRates {
  /** By route, a metre. */
  readonly route: ReadonlyMap<string, Minutes>;
  readonly throughWall: Minutes;
  readonly termination: Minutes;
  readonly dish: Minutes;
  /** Each slot of a dish after the first. */
  readonly furtherSlot: Minutes;
  readonly feed: Minutes;
  readonly headUnitOnDish: Minutes;
  readonly switch: Minutes;
  readonly device: Readonly<Record<Exclude<DeviceKind, "inserter">, Minutes>>;
  readonly supply: Minutes;
  readonly plate: Minutes;
  readonly endResistor: Minutes;
  readonly groundingBlock: Minutes;
  readonly dishBond: Minutes;
  readonly measuredOutlet: Minutes;
  readonly floor: Minutes;
  readonly job: Minutes;
}

export interface LabourAmounts {
  readonly floors: number;
  readonly throughWalls: number;
  /** Stretches everything but floors and job. */
  readonly difficulty: number;
}

export interface LabourMinutes {
  /** By route, before difficulty. */
  readonly routes: ReadonlyMap<string, Minutes>;
  readonly throughWalls: Minutes;
  readonly terminations: Minutes;
  readonly dishes: Minutes;
  readonly feeds: Minutes;
  readonly headUnits: Minutes;
  readonly supplies: Minutes;
  readonly devices: Minutes;
  readonly plates: Minutes;
  readonly endResistors: Minutes;
  readonly groundingBlocks: Minutes;
  readonly dishBonds: Minutes;
  readonly measuring: Minutes;
  readonly floors: Minutes;
  readonly job: Minutes;
  readonly total: Minutes;
}

/** @returns minutes by line; a route without minutes a metre takes none */
export function labourMinutes(
  tree: Tree,
  counts: Counts,
  rates: LabourRates,
  { floors, throughWalls, difficulty }: LabourAmounts,
): LabourMinutes {
  const work = workOf(tree, counts, floors);
  const minutes = (of: Work, each: Minutes): Minutes => {
    const pieces = work.get(of)!;
    return pieces === 0 ? 0 : pieces * each;
  };
  const sum = (some: Iterable<Minutes>): Minutes => [...some].reduce((so, one) => so + one, 0);
  const stretched = {
    throughWalls: throughWalls * rates.throughWall,
    terminations: minutes("connector", rates.termination),
    dishes: minutes("dish", rates.dish) + minutes("further slot on a dish", rates.furtherSlot),
    feeds: minutes("feed", rates.feed),
    headUnits: minutes("head unit on a dish", rates.headUnitOnDish) + minutes("switch", rates.switch),
    supplies: minutes("supply", rates.supply),
    devices: sum(DEVICES.map((kind) => minutes(kind, rates.device[kind]))),
    plates: minutes("wall plate", rates.plate),
    endResistors: minutes("end resistor", rates.endResistor),
    groundingBlocks: minutes("grounding block", rates.groundingBlock),
    dishBonds: minutes("dish bonding conductor", rates.dishBond),
    measuring: minutes("outlet to measure", rates.measuredOutlet),
  };
  const routes = new Map(
    [...counts.metresByRoute].map(([route, metres]) => [route, metres * (rates.route.get(route) ?? 0)]),
  );
  const fixed = { floors: floors * rates.floor, job: rates.job };
  const harder = sum([...Object.values(stretched), ...routes.values()]) * difficulty;
  return { routes, ...stretched, ...fixed, total: harder + fixed.floors + fixed.job };
}
