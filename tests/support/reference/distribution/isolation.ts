/**
 * Isolation between two outlets of one output, at the lowest frequency and cold: that of the device at which their ways part, and every
 * loss from its ports to both connectors. Not stated where that device states none.
 */
import { isFilled } from "../job";
import { numberIn, settingsOf, type Tables } from "./tables";
import type { Step, Thing, Tree } from "./tree";

interface Isolation {
  readonly outlets: readonly [string, string];
  readonly decibels: number;
}

/** From the top: an output, devices and outlets, each with the steps that lie behind the foot of the one before. */
const wayOf = (thing: Thing): Thing[] => [...(thing.parent ? wayOf(thing.parent) : []), thing];

export function leastIsolation(tables: Tables, tree: Tree): Isolation | undefined {
  const cold = numberIn(settingsOf(tables), "cold");
  const lowest = numberIn(settingsOf(tables), "low");
  const lost = (steps: readonly Step[]): number =>
    steps.reduce((sum, { loss }) => sum + loss(lowest, cold, false), 0);
  /** From the foot of the last thing of both ways, less the port by which each leaves it. */
  const behind = (way: readonly Thing[], from: number): number =>
    way.slice(from).reduce((sum, thing, index) => {
      const steps = [...thing.above, ...thing.below];
      return sum + lost(index === 0 && thing.parent!.what !== "output" ? steps.slice(1) : steps);
    }, 0);
  let least: Isolation | undefined;
  tree.outlets.forEach((one, index) => {
    for (const other of tree.outlets.slice(index + 1)) {
      const [a, b] = [wayOf(one), wayOf(other)];
      if (a[0] !== b[0]) continue;
      const apart = a.findIndex((thing, place) => thing !== b[place]);
      const from = apart < 0 ? a.length : apart;
      const common = a[from - 1]!;
      if (!common.part || !isFilled(common.part, "isolation")) continue;
      const tail = (outlet: Thing): number =>
        lost(outlet === common ? outlet.split(1) : [...outlet.tail, ...outlet.split(1)]);
      const decibels =
        numberIn(common.part, "isolation") + behind(a, from) + behind(b, from) + tail(one) + tail(other);
      if (!least || decibels < least.decibels - 1e-9) least = { outlets: [one.name, other.name], decibels };
    }
  });
  return least;
}
