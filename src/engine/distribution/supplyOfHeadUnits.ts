/** Volts and amperes at each head unit, over the states of its supply. */
import type { Amperes, Volts } from "../quantity";
import type { SupplyCircuitPart, SupplyStateName } from "./supplyCircuits";
import type { NetworkOptions } from "./supplyNetwork";
import type { SupplyNodes } from "./supplyNodes";
import type { Tree } from "./tree";

export interface VoltsAndAmperes {
  readonly volts: Volts;
  readonly amperes: Amperes;
}

export interface HeadUnitSupply {
  /** At the one of its connectors that stands highest. */
  readonly allOff: VoltsAndAmperes;
  readonly allOn: VoltsAndAmperes;
  /** With the receiver on alone that leaves it least; null without receivers. */
  readonly leastAlone: (VoltsAndAmperes & { readonly outlet: number }) | null;
  /** By row of the outlets, those of this head unit: its volts with that receiver on alone. */
  readonly alone: ReadonlyMap<number, Volts>;
  /** Something feeds it while all receivers are off. */
  readonly fedWithoutReceivers: boolean;
}

/** Between two that leave it the same, the first row counts. */
const SAME: Volts = 1e-6;
const UNKNOWN: VoltsAndAmperes = { volts: NaN, amperes: NaN };

export function headUnitSupply(tree: Tree, whole: SupplyNodes, { leastVolts }: NetworkOptions) {
  const { job, row, output, pointOfOutlet } = tree;
  const allOff = job.headUnits.map(() => UNKNOWN);
  const allOn: (VoltsAndAmperes | undefined)[] = [];
  const alone = job.headUnits.map(() => new Map<number, VoltsAndAmperes>());
  const headOf = (outlet: number): number => row[output[pointOfOutlet[outlet]!]!]!;

  const now = (circuit: SupplyCircuitPart, head: number): VoltsAndAmperes => {
    const { kind } = job.headUnits[head]!;
    let volts = circuit.voltsAt(whole.common[head]!);
    if (kind.senseAmperes === null)
      for (let one = 0; one < kind.outputs; one++)
        volts = Math.max(volts, circuit.voltsAt(whole.ofPoint[tree.firstOutput[head]! + one]!));
    const load = circuit.loads.indexOf(whole.commonLoad[head]!);
    return { volts, amperes: circuit.network.drawn[load]! };
  };

  return {
    note(circuit: SupplyCircuitPart, state: SupplyStateName, receiver: number): void {
      if (state === "all off") for (const head of circuit.heads) allOff[head] = now(circuit, head);
      if (state === "all on") for (const head of circuit.heads) allOn[head] = now(circuit, head);
      if (state !== "alone") return;
      const { outlet } = whole.receivers[circuit.receivers[receiver]!]!;
      const head = headOf(outlet);
      if (!circuit.has(whole.common[head]!)) return;
      const found = now(circuit, head);
      const before = alone[head]!.get(outlet);
      if (!before || found.volts < before.volts) alone[head]!.set(outlet, found);
    },
    result: (): HeadUnitSupply[] => {
      // A receiver that nothing joins to its head unit for the supply leaves it as it is.
      job.outlets.forEach(({ receiver }, outlet) => {
        if (!receiver || pointOfOutlet[outlet]! < 0) return;
        const head = headOf(outlet);
        if (!alone[head]!.has(outlet)) alone[head]!.set(outlet, allOff[head]!);
      });
      return job.headUnits.map((_, head) => {
        const each = [...alone[head]!].sort(([a], [b]) => a - b);
        const least = each.reduce<(typeof each)[number] | undefined>(
          (worst, one) => (!worst || one[1].volts < worst[1].volts - SAME ? one : worst),
          undefined,
        );
        return {
          allOff: allOff[head]!,
          allOn: allOn[head] ?? allOff[head]!,
          leastAlone: least ? { ...least[1], outlet: least[0] } : null,
          alone: new Map(each.map(([outlet, { volts }]) => [outlet, volts])),
          fedWithoutReceivers: allOff[head]!.volts >= leastVolts,
        };
      });
    },
  };
}
