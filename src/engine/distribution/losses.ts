/**
 * Loss from the top of each output down to every point, at any frequency and
 * temperature of the cable.
 *
 * Losses of parts lie on a straight line between the ends of the range, losses
 * of cables on k1·√f + k2·f + k0, so that sums of two and of three figures say
 * everything about a path, whatever its length.
 *
 * Source: decibels along a path add; cables as cableLoss.ts.
 * Accuracy: exact; reflections between parts are left out.
 */
import { isFault, type Fault } from "../faults";
import type { Celsius, Decibels, Megahertz } from "../quantity";
import { cableLoss, lossGrowth } from "../signal/cableLoss";
import { CABLE_REFERENCE_C } from "../signal/constants";
import type { Site } from "./job";
import type { AtEnds, Run } from "./parts";
import { deviceAt, lossToPort, OUTLET, runTo, type Tree } from "./tree";

/** Where losses are asked: a frequency, and a temperature of the cables. */
export interface Condition {
  /** Of the way from the low to the high end of the range. */
  readonly share: number;
  readonly frequency: Megahertz;
  readonly root: number;
  readonly growth: number;
}

/**
 * @param frequency megahertz
 * @param temperature degrees Celsius of the cables
 */
export const condition = (site: Site, frequency: Megahertz, temperature: Celsius): Condition => ({
  share: (frequency - site.low) / (site.high - site.low),
  frequency,
  root: Math.sqrt(frequency),
  growth: lossGrowth(temperature),
});

/** Between the ends of the range, and beyond them on the same line. */
export const between = ({ low, high }: AtEnds, { share }: Condition): Decibels => low + (high - low) * share;

export interface Losses {
  /** By point, at its input; after the points by outlet, at its connector. Negative after an amplifier. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly k1: Float64Array;
  readonly k2: Float64Array;
  readonly k0: Float64Array;
  /** By point: the nearest amplifier above it; -1 for none. */
  readonly amplifier: Int32Array;
  /** By point below a cable whose figures are at fault. */
  readonly faults: ReadonlyMap<number, Fault>;
}

/** @returns where the connector of an outlet's row stands in {@link Losses} */
export const connectorOf = (tree: Tree, outlet: number): number => tree.count + outlet;

/** @returns the losses to every point and every connector */
export function lossesOf(tree: Tree): Losses {
  const { count, job, kind, row, parent, port } = tree;
  const size = count + job.outlets.length;
  const [low, high, k1, k2, k0] = Array.from({ length: 5 }, () => new Float64Array(size)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const amplifier = new Int32Array(size).fill(-1);
  const faults = new Map<number, Fault>();
  const copy = (to: number, from: number, { low: atLow, high: atHigh }: AtEnds): void => {
    low[to] = low[from]! + atLow;
    high[to] = high[from]! + atHigh;
    k1[to] = k1[from]!;
    k2[to] = k2[from]!;
    k0[to] = k0[from]!;
    amplifier[to] = amplifier[from]!;
    const fault = faults.get(from);
    if (fault) faults.set(to, fault);
  };
  for (let point = 0; point < count; point++) {
    const above = parent[point]!;
    if (above >= 0) {
      copy(point, above, lossToPort(tree, above, port[point]!));
      if (deviceAt(tree, above)?.amplifier) amplifier[point] = above;
    }
    const run = runTo(tree, point);
    if (run && run.length > 0) {
      const hundreds = run.length / 100;
      const loss = coefficients(job.site, run);
      if (isFault(loss)) faults.set(point, faults.get(point) ?? loss);
      else {
        k1[point]! += loss.k1 * hundreds;
        k2[point]! += loss.k2 * hundreds;
        k0[point]! += loss.k0 * hundreds;
      }
    }
    if (kind[point] !== OUTLET) continue;
    const outlet = row[point]!;
    const { plate, split } = job.outlets[outlet]!;
    copy(connectorOf(tree, outlet), point, {
      low: (plate?.port.low ?? 0) + (split?.port.low ?? 0),
      high: (plate?.port.high ?? 0) + (split?.port.high ?? 0),
    });
  }
  return { low, high, k1, k2, k0, amplifier, faults };
}

/** @returns a cable's coefficients, per 100 m at 20 °C; a fault where they are none or make it an amplifier */
function coefficients({ low, high }: Site, { cable }: Run) {
  if (isFault(cable) || isFault(cable.loss)) return isFault(cable) ? cable : (cable.loss as Fault);
  for (const frequency of [low, high]) {
    const loss = cableLoss(cable, 1, frequency, CABLE_REFERENCE_C);
    if (isFault(loss)) return loss;
  }
  return cable.loss;
}

/** @returns dB from the output down to a point, or to a connector */
export function lossTo({ low, high, k1, k2, k0 }: Losses, at: number, where: Condition): Decibels {
  const { share, root, frequency, growth } = where;
  return (
    low[at]! + (high[at]! - low[at]!) * share + (k1[at]! * root + k2[at]! * frequency + k0[at]!) * growth
  );
}
