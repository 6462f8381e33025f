/** Every cause at every place below one head unit, and at those above it that reach no other, as effects on its readings. */
import type { Decibels, Megahertz } from "../quantity";
import {
  LEAST_SWAP_DB,
  RATED_TO_MHZ,
  SWAPPED,
  type Cause,
  type PlaceAbove,
  type Power,
  type Shape,
} from "./causes";
import type { Column, Effects, Reading } from "./evidence";

export interface Hypothesis {
  readonly cause: Cause;
  readonly where: string;
  /** Indexes of the readings that it touches. */
  readonly at: readonly number[];
  /** Chance before any reading. */
  readonly chance: number;
  readonly effects: Effects;
}

/** A hypothesis that must stay solvable needs some spread. */
const LEAST_SD = 0.02;
/** Beyond so many outlets of a head unit, swaps are only looked at between outlets of one branch. */
const MANY_OUTLETS = 40;

const position = (shape: Shape, f: Megahertz): number =>
  shape === "root" ? Math.sqrt(f) : shape === "above" ? Math.max(f, RATED_TO_MHZ) : f;

/** The share of the way from the low to the high end at which a frequency lies. */
function share(shape: Shape, f: Megahertz, low: Megahertz, high: Megahertz): number {
  const from = position(shape, low);
  const to = position(shape, high);
  return to > from ? (position(shape, f) - from) / (to - from) : 0;
}

function columnsOf(
  cause: Cause,
  at: readonly number[],
  readings: readonly Reading[],
  low: Megahertz,
  high: Megahertz,
): Column[] {
  const effectOf = (loss: (f: Megahertz) => Decibels) =>
    new Map(at.map((index) => [index, readings[index]!.frequencies.map((f) => -loss(f))] as const));
  const typical = (f: Megahertz) => cause.low + (cause.high - cause.low) * share(cause.shape, f, low, high);
  const columns: Column[] = [];
  if (cause.low !== 0 || cause.high !== 0) {
    columns.push({ mean: 1, sd: Math.max(cause.spread, LEAST_SD), effect: effectOf(typical) });
  }
  if (cause.tilt > 0) {
    columns.push({ mean: 0, sd: cause.tilt, effect: effectOf((f) => share("flat", f, low, high) - 0.5) });
  }
  return columns;
}

/**
 * Places with the readings below them: every branch that feeds two or more, then every outlet. Where not all that
 * a branch feeds was measured, one reading can't tell it from its outlet, so both are places.
 */
function placesOf(
  readings: readonly Reading[],
  partly: ReadonlySet<string>,
): { where: string; at: number[]; branch: boolean }[] {
  const below = new Map<string, number[]>();
  readings.forEach(({ path }, index) =>
    path.forEach((branch) => below.set(branch, [...(below.get(branch) ?? []), index])),
  );
  return [
    ...[...below]
      .filter(([where, at]) => at.length > 1 || partly.has(where))
      .map(([where, at]) => ({ where, at, branch: true })),
    ...readings.map(({ outlet }, index) => ({ where: outlet, at: [index], branch: false })),
  ];
}

/** Something above head units, with the head units that it reaches. */
export interface Above {
  readonly where: string;
  readonly of: PlaceAbove;
  /** In the order of the path. */
  readonly heads: readonly string[];
}

/** A cause above the head units, as the outlets of one of them feel it: their supply comes from elsewhere. */
export function feltBelow(
  cause: Cause,
  dead: boolean,
  power: Power,
  readings: readonly Reading[],
  low: Megahertz,
  high: Megahertz,
): Effects {
  const all = readings.map((_, index) => index);
  return {
    columns: dead ? [] : columnsOf(cause, all, readings, low, high),
    power: new Map(all.map((index) => [index, power])),
    dead: new Set(dead ? all : []),
  };
}

/** Ways of a cause that leaves the supply below as it is: with the whole signal gone, and without. */
export const waysAbove = ({ ways }: Cause): { readonly dead: boolean; readonly weight: number }[] =>
  [false, true]
    .map((dead) => ({
      dead,
      weight: ways.reduce((sum, way) => sum + ((way.dead ?? false) === dead ? way.weight : 0), 0),
    }))
    .filter(({ weight }) => weight > 0);

/**
 * @param head name of the head unit
 * @param readings of its outlets
 * @param causes with their chances
 * @param low lowest frequency of the job, MHz
 * @param high highest frequency of the job, MHz
 * @param partly branches below which not every outlet was measured
 * @param own what is above this head unit and no other
 * @param shared what is above this one and others: a cause there is looked for over all of them
 */
export function hypothesesOf(
  head: string,
  readings: readonly Reading[],
  causes: readonly Cause[],
  low: Megahertz,
  high: Megahertz,
  partly: ReadonlySet<string> = new Set(),
  own: readonly Above[] = [],
  shared: readonly Above[] = [],
): Hypothesis[] {
  const all = readings.map((_, index) => index);
  const places = placesOf(readings, partly);
  const alongFeeder = (cause: Cause, where: string): Hypothesis[] =>
    waysAbove(cause).map(({ dead, weight }) => ({
      cause,
      where,
      at: all,
      chance: cause.chance * weight,
      effects: feltBelow(cause, dead, "kept", readings, low, high),
    }));
  return causes.flatMap((cause) => {
    const isShared = cause.above === "dish" && shared.some(({ of }) => of === "dish");
    const where =
      cause.place === "head unit"
        ? isShared
          ? []
          : [{ where: head, at: all }]
        : places.filter(({ branch }) => cause.place !== "outlet" || !branch);
    const found = where.flatMap(({ where, at }) => {
      const columns = columnsOf(cause, at, readings, low, high);
      return cause.ways.map(({ power, dead, weight }) => ({
        cause,
        where,
        at,
        chance: cause.chance * weight,
        effects: {
          columns: dead ? [] : columns,
          power: new Map<number, Power>(at.map((index) => [index, power])),
          dead: new Set(dead ? at : []),
        },
      }));
    });
    // Nor can what no reading at the head unit itself would show be told from nothing there.
    const felt = found.filter(
      ({ effects, where }) => cause.place === "head unit" || where !== head || changesSomething(effects),
    );
    const feeders =
      cause.above === "feeder"
        ? own.filter(({ of }) => of === "feeder").flatMap(({ where }) => alongFeeder(cause, where))
        : [];
    return cause.cause === SWAPPED ? [...felt, ...swaps(cause, readings)] : [...felt, ...feeders];
  });
}

const changesSomething = ({ columns, power, dead }: Effects): boolean =>
  dead.size > 0 ||
  [...power.values()].some((state) => state !== "kept") ||
  columns.some(({ effect }) => [...effect.values()].some((row) => row.length > 0));

function swaps(cause: Cause, readings: readonly Reading[]): Hypothesis[] {
  const pairs: Hypothesis[] = [];
  for (let a = 0; a < readings.length; a += 1) {
    for (let b = a + 1; b < readings.length; b += 1) {
      const one = readings[a]!;
      const other = readings[b]!;
      if (one.frequencies.join() !== other.frequencies.join()) continue;
      if (readings.length > MANY_OUTLETS && one.path[0] !== other.path[0]) continue;
      const gap = one.predicted.map((level, i) => other.predicted[i]! - level);
      if (!gap.some((value) => Math.abs(value) >= LEAST_SWAP_DB)) continue;
      const effect = new Map([[a, gap] as const, [b, gap.map((value) => -value)] as const]);
      pairs.push({
        cause,
        where: `${one.outlet} and ${other.outlet}`,
        at: [a, b],
        chance: 0,
        effects: { columns: [{ mean: 1, sd: LEAST_SD, effect }], power: new Map(), dead: new Set() },
      });
    }
  }
  // One chance for each outlet, shared out over its partners.
  const each = pairs.length === 0 ? 0 : (cause.chance * readings.length) / 2 / pairs.length;
  return pairs.map((pair) => ({ ...pair, chance: each }));
}
