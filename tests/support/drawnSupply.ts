/** Supply networks drawn from a seed: cables, splitters, inserters and receivers as installers join them, and as they should not. */
import type { Passes, SupplyCircuit } from "../../src/engine/distribution/supplyCircuit";
import { drawn } from "./drawn";

/** A load with less while none draws is not powered. */
const LEAST_VOLTS = 1;
/** To the return at every node, as the network that ngspice gets has it. */
export const LEAK_OHMS = 1e7;
const MOST_LEGS = 12;

export function drawnSupply(seed: number): SupplyCircuit {
  const { whole, pick, chance, between } = drawn(seed);
  const nodes: SupplyCircuit["nodes"][number][] = [{ parent: -1, ohms: 0, passes: "nothing", drop: 0 }];
  const add = (parent: number, ohms: number, passes: Passes = "both ways", drop = 0): number =>
    nodes.push({ parent, ohms, passes, drop }) - 1;
  const cable = (parent: number): number => add(parent, between(0.1, 7, 2));
  const port = (parent: number): number => {
    const passes = chance(0.7)
      ? "to the parent"
      : pick<Passes>(["both ways", "both ways", "from the parent", "nothing"]);
    return add(
      parent,
      0.05,
      passes,
      passes === "both ways" || passes === "nothing" ? 0 : pick([0.3, 0.4, 0.7]),
    );
  };

  const sources: SupplyCircuit["sources"][number][] = [];
  const loads: SupplyCircuit["loads"][number][] = [
    chance(0.5)
      ? { node: 0, kind: "A", amount: between(0.1, 0.45, 2) }
      : { node: 0, kind: "W", amount: between(1, 5, 1) },
  ];
  // From the head unit along a trunk, with splitters on the way.
  let trunk = cable(0);
  const inserter = (node: number): void =>
    void sources.push({
      node,
      volts: pick([18, 20, 24]),
      ohms: between(0.1, 0.4, 1),
      drop: pick([null, 0.4]),
    });
  if (chance(0.4)) inserter(trunk);
  const legs = whole(1, MOST_LEGS);
  for (let leg = 0; leg < legs; leg++) {
    if (chance(0.25)) trunk = cable(chance(0.5) ? port(trunk) : trunk);
    if (chance(0.1)) inserter(trunk);
    // An amplifier that is fed from the line.
    if (chance(0.08)) loads.push({ node: trunk, kind: "A", amount: between(0.05, 0.15, 2) });
    const receiver = cable(port(trunk));
    if (chance(0.75)) sources.push({ node: receiver, volts: pick([13, 18]), ohms: 0.5, drop: 0.7 });
  }
  return { nodes, sources, loads, leastVolts: LEAST_VOLTS, leakOhms: LEAK_OHMS };
}
