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
  { job }: Tree,
  counts: Counts,
  rates: LabourRates,
  { floors, throughWalls, difficulty }: LabourAmounts,
): LabourMinutes {
  const { dishes, headUnits, devices, outlets } = job;
  const sum = <T>(of: readonly T[], minutes: (one: T) => Minutes): Minutes =>
    of.reduce((so, one) => so + minutes(one), 0);
  const parts = [...devices.map(({ part }) => part), ...outlets.flatMap(({ split }) => split ?? [])];
  const stretched = {
    throughWalls: throughWalls * rates.throughWall,
    terminations: counts.connectors * rates.termination,
    dishes: sum(dishes, ({ slots }) => rates.dish + Math.max(0, slots.length - 1) * rates.furtherSlot),
    feeds: sum(dishes, ({ feed, slots }) => (feed ? slots.length * rates.feed : 0)),
    headUnits: sum(headUnits, ({ kind }) =>
      kind.sits === "on the dish" ? rates.headUnitOnDish : rates.switch,
    ),
    supplies: counts.mainsSockets * rates.supply,
    devices: sum(parts, ({ kind }) => (kind === "inserter" ? 0 : rates.device[kind])),
    plates: outlets.filter(({ plate }) => plate).length * rates.plate,
    endResistors: counts.endResistors * rates.endResistor,
    groundingBlocks: counts.groundingBlocks * rates.groundingBlock,
    dishBonds: dishes.length * rates.dishBond,
    measuring: outlets.length * rates.measuredOutlet,
  };
  const routes = new Map(
    [...counts.metresByRoute].map(([route, metres]) => [route, metres * (rates.route.get(route) ?? 0)]),
  );
  const fixed = { floors: floors * rates.floor, job: rates.job };
  const harder = sum([...Object.values(stretched), ...routes.values()], (minutes) => minutes) * difficulty;
  return { routes, ...stretched, ...fixed, total: harder + fixed.floors + fixed.job };
}
