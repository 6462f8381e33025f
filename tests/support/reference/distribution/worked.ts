/** A job worked out once for all columns: its tree, bands, slots and circuits in all their states. */
import { allotted, type Allotted } from "./bands";
import { OURS, type Limits } from "./circuit";
import { slotsAt, type SlotAt } from "./dishes";
import { statesFor, statesOf, systemsOf, type State, type States, type System } from "./supply";
import type { Tables } from "./tables";
import { treeOf, type HeadUnit, type Thing, type Tree } from "./tree";

/** What two solves, or two sums, of the same thing may differ by: a limit that is met exactly is met. */
export const EXACT = 1e-6;
export const isHigher = (value: number, limit: number, by = EXACT): boolean => value > limit + by;
export const isLower = (value: number, limit: number, by = EXACT): boolean => value < limit - by;
/** A millivolt or milliampere beyond a limit is less than anybody measures. */
export const SLIGHT = 1e-3;

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
    systems: systemsOf(tables, tree, limits).map((system) => ({ system, states: statesOf(system) })),
  };
}

export const statesAt = ({ systems }: Worked, head: HeadUnit): States =>
  systems.find(({ system }) => system.heads.includes(head))!.states;
export const outletsOf = ({ tree }: Worked, head: HeadUnit): Thing[] =>
  tree.outlets.filter((outlet) => outlet.head === head);

/** Every state of a circuit; that all command is only asked for what then stands on spare outlets. */
export const everyState = ({ off, allOn, alone, commanding, standing }: States): State[] => {
  const withOneOff = [...standing].flatMap(([{ receiver }, state]) => (receiver ? [state] : []));
  return [off, allOn, ...alone.values(), ...commanding.values(), ...withOneOff].filter(
    (state): state is State => state !== undefined,
  );
};

/** Volts of a state that has no operating point count as none. */
export const voltsIn = (state: State | undefined, of: (state: State) => number): number =>
  state ? of(state) : 0;

export const POWERED = 1;
/** A supply that gives less in every state is of no use. */
export const LEAST_AMPS = 1e-3;
/** All on, each of those outlets alone, and all off where the head unit then has volts. */
export function statesInUse(
  worked: Worked,
  head: HeadUnit,
  outlets: readonly Thing[],
): (State | undefined)[] {
  const { off } = statesAt(worked, head);
  const isFedAnyway = voltsIn(off, (state) => state.headVolts(head)) >= POWERED;
  return [...(isFedAnyway ? [off] : []), ...statesWatched(worked, head, outlets)];
}

/** Those in which one of the outlets is on. */
export function statesWatched(
  worked: Worked,
  head: HeadUnit,
  outlets: readonly Thing[],
): (State | undefined)[] {
  const { allOn, alone } = statesAt(worked, head);
  const mine = outlets.flatMap((outlet) => statesFor(outlet, alone).map(({ state }) => state));
  return [...mine, ...(mine.length > 0 ? [allOn] : [])];
}

/** The first of several whose figure is least. */
export function leastOf<T>(list: readonly T[], of: (one: T) => number): T | undefined {
  return list.reduce<T | undefined>(
    (least, one) => (least === undefined || of(one) < of(least) - EXACT ? one : least),
    undefined,
  );
}

/** Nothing where nothing is asked. */
export const leastIn = (values: readonly number[]): number | undefined =>
  values.length > 0 ? Math.min(...values) : undefined;

/** An end resistor on which volts stand that it does not block. */
export const isOnPower = (worked: Worked, thing: Thing): boolean =>
  everyState(statesAt(worked, thing.head)).some((state) => state.onResistor(thing) > POWERED);

/** Keys of the supplies that another one feeds. */
export function fedBackwards({ tree, systems }: Worked, head: HeadUnit): string[] {
  const { states } = systems.find(({ system }) => system.heads.includes(head))!;
  const keys = [
    ...tree.heads.map(({ name }) => `output ${name}`),
    ...tree.devices.flatMap(({ source, name }) => (source ? [`device ${name}`] : [])),
  ];
  return keys.filter((key) => everyState(states).some((state) => state.supplyAmps(key) < -LEAST_AMPS));
}
