/**
 * The least isolation between two outlets of each output: that of the part
 * where their paths part, and all losses from its ports to both connectors.
 * Worked where it is least: at the low end of the range, when it is cold.
 * Parts that state no isolation are left out, as are different outputs.
 *
 * Source: decibels along a path add.
 * Accuracy: that of the isolation stated; reflections are left out.
 */
import type { Decibels } from "../quantity";
import { between, connectorOf, lossTo, type Losses } from "./losses";
import { cornersOf } from "./levels";
import { deviceAt, lossToPort, OUTLET, type Tree } from "./tree";

export interface Isolation {
  /** The output's point. */
  readonly output: number;
  /** Rows of the two outlets. */
  readonly outlets: readonly [number, number];
  readonly decibels: Decibels;
}

/** @returns one for each output with two outlets or more beyond parts that state it */
export function leastIsolation(tree: Tree, losses: Losses): Isolation[] {
  const { count, kind, row, parent, port, output, job } = tree;
  const where = cornersOf(tree).lowCold;
  /** By point: the least loss from the output to a connector at or below it, and whose. */
  const least = new Float64Array(count).fill(Infinity);
  const whose = new Int32Array(count).fill(-1);
  /** By point: the least loss from a port of its own, and to whose connector. */
  const branch = new Float64Array(count).fill(Infinity);
  const branchTo = new Int32Array(count).fill(-1);
  const found = new Map<number, Isolation>();

  const joins = (point: number, loss: Decibels, outlet: number): void => {
    const isolation = isolationAt(point);
    const other = branchTo[point]!;
    if (isolation !== null && other >= 0) {
      const decibels = isolation + branch[point]! + loss;
      const top = output[point]!;
      if (decibels < (found.get(top)?.decibels ?? Infinity))
        found.set(top, {
          output: top,
          outlets: [Math.min(outlet, other), Math.max(outlet, other)],
          decibels,
        });
    }
    if (loss < branch[point]!) {
      branch[point] = loss;
      branchTo[point] = outlet;
    }
  };
  const isolationAt = (point: number): Decibels | null =>
    kind[point] === OUTLET
      ? (job.outlets[row[point]!]!.plate?.isolation ?? null)
      : (deviceAt(tree, point)?.isolation ?? null);

  for (let point = count - 1; point >= 0; point--) {
    if (kind[point] === OUTLET && !losses.faults.has(point)) {
      const outlet = row[point]!;
      const { split } = job.outlets[outlet]!;
      const own = lossTo(losses, connectorOf(tree, outlet), where);
      joins(point, split ? between(split.port, where) : 0, outlet);
      if (own < least[point]!) {
        least[point] = own;
        whose[point] = outlet;
      }
    }
    const above = parent[point]!;
    if (above < 0 || whose[point]! < 0) continue;
    const atPort = lossTo(losses, above, where) + between(lossToPort(tree, above, port[point]!), where);
    joins(above, least[point]! - atPort, whose[point]!);
    if (least[point]! < least[above]!) {
      least[above] = least[point]!;
      whose[above] = whose[point]!;
    }
  }
  return [...found.values()].sort((a, b) => a.output - b.output);
}
