/** What each receiver gives, what stands on its connector, and what its output sees of it. */
import type { SupplyCircuitPart, SupplyStateName } from "./supplyCircuits";
import type { SupplyNodes } from "./supplyNodes";
import type { Tree } from "./tree";

/** By row of the outlets; not a number where nothing was asked. */
export interface OutletSupply {
  /** Amperes that its receiver gives most, alone or while it commands. */
  readonly given: Float64Array;
  /** Volts on its connector from supplies alone, while nothing draws: the worst. */
  readonly fromSupplies: Float64Array;
  /** Volts on its connector while it is off, or none is there, and all others command. */
  readonly standing: Float64Array;
  /** Volts at its output while its receiver commands and the others rest. */
  readonly outputCommanding: Float64Array;
  /** Volts at its output with all receivers on at rest. */
  readonly outputResting: Float64Array;
}

export function outletSupply({ job, output, pointOfOutlet }: Tree, whole: SupplyNodes) {
  const blank = (): Float64Array => new Float64Array(job.outlets.length).fill(NaN);
  const found: OutletSupply = {
    given: blank(),
    fromSupplies: blank(),
    standing: blank(),
    outputCommanding: blank(),
    outputResting: blank(),
  };
  // Of several receivers at one outlet the worst counts.
  const least = (into: Float64Array, at: number, value: number): void => {
    if (!(into[at]! <= value)) into[at] = value;
  };
  const most = (into: Float64Array, at: number, value: number): void => {
    if (!(into[at]! >= value)) into[at] = value;
  };
  const atOutput = (outlet: number): number => whole.ofPoint[output[pointOfOutlet[outlet]!]!]!;
  /** By circuit: spare outlets, whose connectors have no receiver. */
  const spare = new Map<number, number[]>();
  /** Outlets with a receiver that nothing joins to its output for the supply, so that it stays as the others leave it. */
  const cutOff = new Set<number>();
  /** By circuit of the output: outlets with a receiver. */
  const commanders = new Map<number, number[]>();
  const enter = (into: Map<number, number[]>, node: number, outlet: number): void => {
    const there = into.get(whole.circuit[node]!);
    if (there) there.push(outlet);
    else into.set(whole.circuit[node]!, [outlet]);
  };
  job.outlets.forEach(({ receiver }, outlet) => {
    const node = whole.connector[outlet]!;
    if (node < 0) return;
    if (receiver) enter(commanders, atOutput(outlet), outlet);
    else enter(spare, node, outlet);
  });

  const note = (circuit: SupplyCircuitPart, state: SupplyStateName, receiver: number): void => {
    const { receivers, sources, network, voltsAt } = circuit;
    if (state === "idle") {
      for (const one of receivers) {
        const { node, outlet } = whole.receivers[one]!;
        most(found.fromSupplies, outlet, voltsAt(node));
      }
      for (const outlet of spare.get(circuit.index) ?? [])
        found.fromSupplies[outlet] = voltsAt(whole.connector[outlet]!);
    }
    // An output that no receiver is joined to rests as it is with all off.
    if (state === "all off" || state === "all on")
      for (const outlet of commanders.get(circuit.index) ?? [])
        found.outputResting[outlet] = voltsAt(atOutput(outlet));
    if (state === "all commanding")
      for (const outlet of spare.get(circuit.index) ?? [])
        found.standing[outlet] = voltsAt(whole.connector[outlet]!);
    if (receiver < 0) return;
    const { node, outlet } = whole.receivers[receivers[receiver]!]!;
    if (state === "off among others") most(found.standing, outlet, voltsAt(node));
    else most(found.given, outlet, network.given[sources.length + receiver]!);
    if (state !== "commanding") return;
    if (circuit.has(atOutput(outlet))) least(found.outputCommanding, outlet, voltsAt(atOutput(outlet)));
    else cutOff.add(outlet);
  };

  const result = (): OutletSupply => {
    for (const outlet of cutOff) least(found.outputCommanding, outlet, found.outputResting[outlet]!);
    return found;
  };
  return { note, hasSpare: (circuit: number) => spare.has(circuit), result };
}
