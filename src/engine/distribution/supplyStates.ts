/**
 * What must be asked of the supply: all receivers off, each on alone at rest
 * (the hard case: one run carries the whole load), all on, each commanding
 * while the others rest, and each off while all others command, for what then
 * stands on it.
 *
 * A receiver's share of the current with all on is not told: milliohms of
 * contacts decide it.
 *
 * Source, accuracy: as supplyNetwork.ts.
 */
import { faults, type Fault } from "../faults";
import type { Losses } from "./losses";
import { everyState, supplyCircuits, type FailedState } from "./supplyCircuits";
import { headUnitSupply, type HeadUnitSupply } from "./supplyOfHeadUnits";
import { outletSupply, type OutletSupply } from "./supplyOfOutlets";
import { partSupply, type PartSupply } from "./supplyOfParts";
import type { NetworkOptions } from "./supplyNetwork";
import type { SupplyNodes } from "./supplyNodes";
import type { Tree } from "./tree";

/** Below 1 V a head unit draws nothing. */
export const PRODUCT_OPTIONS: NetworkOptions = { leastVolts: 1 };

export interface SupplyStates extends OutletSupply, PartSupply {
  /** By head unit. */
  readonly headUnits: readonly HeadUnitSupply[];
  /**
   * By circuit of the nodes: what is wrong with it. Where a cable is, nothing is told of its parts; where a state has
   * no operating point, only what the others say.
   */
  readonly faults: ReadonlyMap<number, Fault>;
  /** States that needed the slower way. */
  readonly fellBack: number;
}

/** @returns what was found over all states; not a number where nothing was asked or a fault stands */
export function supplyStates(
  tree: Tree,
  losses: Losses,
  whole: SupplyNodes,
  options: NetworkOptions = PRODUCT_OPTIONS,
): SupplyStates {
  const heads = headUnitSupply(tree, whole, options);
  const outlets = outletSupply(tree, whole);
  const parts = partSupply(tree, losses, whole);
  const failed = new Map(whole.faults);
  let fellBack = 0;
  for (const circuit of supplyCircuits(whole, options)) {
    if (failed.has(circuit.index)) continue;
    const hasSpare = outlets.hasSpare(circuit.index);
    const without = everyState(tree, whole, circuit, hasSpare, (state, receiver) => {
      heads.note(circuit, state, receiver);
      outlets.note(circuit, state, receiver);
      parts.note(circuit, state, receiver);
    });
    if (without) failed.set(circuit.index, faults.noSupplyPoint(inWords(tree, without)));
    fellBack += circuit.network.fellBack;
  }
  const headUnits = heads.result();
  return {
    headUnits,
    ...outlets.result(),
    ...parts.result((head) => headUnits[head]!.fedWithoutReceivers),
    faults: failed,
    fellBack,
  };
}

function inWords({ job }: Tree, { state, outlet }: FailedState): string {
  const receiver = outlet < 0 ? "" : `the receiver of "${String(job.outlets[outlet]!.name)}"`;
  switch (state) {
    case "idle":
    case "all off":
      return "with all receivers off";
    case "all on":
      return "with all receivers on";
    case "alone":
      return `with ${receiver} on alone`;
    case "commanding":
      return `while ${receiver} commands`;
    case "all commanding":
      return "while all receivers command";
    case "off among others":
      return `with ${receiver} off and all others on`;
  }
}
