/**
 * Levels at each outlet and at each amplifier's output, at the four corners of
 * range and weather.
 *
 * An amplifier's stated output holds for two carriers; for n it is
 * 7.5·log10(n − 1) dB lower (from memory, distribution-amplifier practice).
 */
import type { DecibelMicrovolts, Decibels } from "../quantity";
import { between, condition, connectorOf, lossTo, type Condition, type Losses } from "./losses";
import { deviceAt, type Tree } from "./tree";

/** The ends of the range, each when it is cold and when it is hot. */
export interface Corners {
  readonly lowCold: Condition;
  readonly lowHot: Condition;
  readonly highCold: Condition;
  readonly highHot: Condition;
}

export const cornersOf = ({ job: { site } }: Tree): Corners => ({
  lowCold: condition(site, site.low, site.cold),
  lowHot: condition(site, site.low, site.hot),
  highCold: condition(site, site.high, site.cold),
  highHot: condition(site, site.high, site.hot),
});

/** By outlet's row; not a number where the row is bad. */
export interface OutletLevels {
  readonly lowCold: Float64Array;
  readonly lowHot: Float64Array;
  readonly highCold: Float64Array;
  readonly highHot: Float64Array;
}

/** @returns dBµV at a point, or at a connector (see connectorOf), whose output's point is given */
export function levelAt(
  tree: Tree,
  losses: Losses,
  at: number,
  output: number,
  where: Condition,
): DecibelMicrovolts {
  const { kind } = tree.job.headUnits[tree.row[output]!]!;
  return between(kind.output, where) - lossTo(losses, at, where);
}

/** @returns dBµV at the connector of an outlet's row; not a number where the row or its cable is bad */
export function outletLevel(tree: Tree, losses: Losses, outlet: number, where: Condition): DecibelMicrovolts {
  const point = tree.pointOfOutlet[outlet]!;
  return point < 0 || losses.faults.has(point)
    ? NaN
    : levelAt(tree, losses, connectorOf(tree, outlet), tree.output[point]!, where);
}

export function outletLevels(tree: Tree, losses: Losses): OutletLevels {
  const corners = cornersOf(tree);
  const { outlets } = tree.job;
  const at = (where: Condition): Float64Array =>
    Float64Array.from(outlets, (_, outlet) => outletLevel(tree, losses, outlet, where));
  return {
    lowCold: at(corners.lowCold),
    lowHot: at(corners.lowHot),
    highCold: at(corners.highCold),
    highHot: at(corners.highHot),
  };
}

export interface AmplifierOutput {
  /** Row of the devices. */
  readonly device: number;
  /** The highest of the four corners. */
  readonly most: DecibelMicrovolts;
  /** For the carriers that it carries; null where its maker states none. */
  readonly limit: DecibelMicrovolts | null;
  /** User bands of its output. */
  readonly carriers: number;
}

/** dB that the output of an amplifier stays below its figure for two carriers. */
export const carrierDerating = (carriers: number): Decibels =>
  carriers > 2 ? DERATING_DB * Math.log10(carriers - 1) : 0;
const DERATING_DB = 7.5;

/** @returns the output of each amplifier whose row and cables are good */
export function amplifierOutputs(tree: Tree, losses: Losses): AmplifierOutput[] {
  const corners = Object.values(cornersOf(tree)) as Condition[];
  return tree.job.devices.flatMap(({ part }, device) => {
    const point = tree.pointOfDevice[device]!;
    if (!part.amplifier || point < 0 || losses.faults.has(point)) return [];
    const output = tree.output[point]!;
    const carriers = tree.job.headUnits[tree.row[output]!]!.kind.bands.length;
    const { mostOutput } = part.amplifier;
    return [
      {
        device,
        most: Math.max(
          ...corners.map((where) => levelAt(tree, losses, point, output, where) - between(part.port, where)),
        ),
        limit: mostOutput === null ? null : mostOutput - carrierDerating(carriers),
        carriers,
      },
    ];
  });
}

/** @returns the gain of the amplifier at a point */
export const gainAt = (tree: Tree, point: number, where: Condition): Decibels =>
  -between(deviceAt(tree, point)!.port, where);
