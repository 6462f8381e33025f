/**
 * Direct current on a distribution: several sources and loads on one tree of
 * cables and ports, some of which pass current one way only.
 *
 * Source: Kirchhoff's laws, solved from the leaves to the root and back
 *   (supplyCurve.ts). Loads of constant power: I = P/V from no load on, which
 *   falls to the operating point of the highest volts; where the volts reach 0
 *   there is none.
 * Accuracy: exact for sources behind a resistance, ideal diodes of constant
 *   drop, and loads that keep their current or their power whatever the volts.
 */
import type { Amperes, Ohms, Volts, Watts } from "../quantity";
import type { LoadKind } from "../power/loadVolts";
import {
  amperesAt,
  away,
  beyond,
  DEAD,
  joined,
  leak,
  lessLoad,
  restingVolts,
  source,
  towards,
  type SupplyCurve,
} from "./supplyCurve";

/** What a way between a node and its parent lets through. */
export type Passes = "both ways" | "to the parent" | "from the parent" | "nothing";

export interface SupplyNode {
  /** Index of the node nearer to the root, which stands before it in the list; -1 for a root. */
  readonly parent: number;
  readonly ohms: Ohms;
  readonly passes: Passes;
  /** Of the diode, where it passes one way. */
  readonly drop: Volts;
}

export interface SupplySource {
  readonly node: number;
  /** Behind its resistance and its diode. */
  readonly volts: Volts;
  readonly ohms: Ohms;
  /** Of its diode; null where it can be fed backwards. */
  readonly drop: Volts | null;
}

export interface SupplyLoad {
  readonly node: number;
  readonly kind: LoadKind;
  readonly amount: Amperes | Watts;
}

export interface SupplyCircuit {
  readonly nodes: readonly SupplyNode[];
  readonly sources: readonly SupplySource[];
  readonly loads: readonly SupplyLoad[];
  /** A load that has less than this while none draws is not powered, and draws nothing. */
  readonly leastVolts: Volts;
  /** To the return at every node, where a measuring circuit is to be matched. */
  readonly leakOhms?: Ohms;
}

export interface SupplyState {
  /** By node. */
  readonly volts: readonly Volts[];
  /** By node: from it to its parent. */
  readonly upwards: readonly Amperes[];
  /** By source: out of it. */
  readonly given: readonly Amperes[];
  /** By load: into it. */
  readonly drawn: readonly Amperes[];
  /** By load. */
  readonly powered: readonly boolean[];
}

/** Of volts, between two rounds of loads of constant power. */
const SETTLED: Volts = 1e-8;
/** Near the least supply that carries a load, rounds close in slowly. */
const MOST_ROUNDS = 100_000;
/** Contacts have more; without any, two sources at one place would have no answer. */
export const LEAST_OHMS: Ohms = 1e-3;

/** @returns undefined where no volts carry the loads: more power or current is drawn than can come */
export function supplyState(circuit: SupplyCircuit): SupplyState | undefined {
  const { loads } = circuit;
  const idle = solved(
    circuit,
    loads.map(() => 0),
  )!;
  const powered = loads.map(({ node }) => idle.volts[node]! >= circuit.leastVolts);
  let drawn: Amperes[] = loads.map(({ kind, amount }, index) =>
    !powered[index] ? 0 : kind === "A" ? amount : amount / idle.volts[loads[index]!.node]!,
  );
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const state = solved(circuit, drawn);
    if (!state || loads.some(({ node }, index) => powered[index] && state.volts[node]! <= 0))
      return undefined;
    const next = loads.map(({ node, kind, amount }, index) =>
      powered[index] && kind === "W" ? amount / state.volts[node]! : drawn[index]!,
    );
    const moved = Math.max(
      0,
      ...loads.map(({ node }, index) => Math.abs(next[index]! - drawn[index]!) * (state.volts[node]! || 1)),
    );
    if (moved < SETTLED) return { ...state, drawn, powered };
    drawn = next;
  }
  return undefined;
}

/** With each load at a current of its own. */
function solved(
  { nodes, sources, loads, leakOhms }: SupplyCircuit,
  drawn: readonly Amperes[],
): Omit<SupplyState, "drawn" | "powered"> | undefined {
  const parts: SupplyCurve[][] = nodes.map(() => (leakOhms === undefined ? [] : [leak(leakOhms)]));
  const own = sources.map(({ volts, ohms, drop }) => source(volts, Math.max(ohms, LEAST_OHMS), drop));
  sources.forEach(({ node }, index) => parts[node]!.push(own[index]!));
  const taken: number[] = new Array<number>(nodes.length).fill(0);
  loads.forEach(({ node }, index) => (taken[node]! += drawn[index]!));
  const curves: SupplyCurve[] = new Array<SupplyCurve>(nodes.length);
  for (let at = nodes.length - 1; at >= 0; at--) {
    curves[at] = lessLoad(joined(parts[at]!), taken[at]!);
    const { parent } = nodes[at]!;
    if (parent >= 0) parts[parent]!.push(seenFromParent(curves[at]!, nodes[at]!));
  }

  const volts: Volts[] = [];
  const upwards: Amperes[] = [];
  for (const [at, node] of nodes.entries()) {
    const { parent, ohms, passes, drop } = node;
    const above = volts[parent];
    const amperes = above === undefined ? 0 : amperesAt(seenFromParent(curves[at]!, node), above);
    upwards.push(amperes);
    // A way that carries nothing holds its node at no volts of the parent's.
    const held = above !== undefined && (passes === "both ways" || amperes !== 0);
    const resting = held
      ? above + amperes * ohms + (passes === "both ways" ? 0 : Math.sign(amperes) * drop)
      : restingVolts(curves[at]!);
    if (resting === undefined) return undefined;
    // Through its diode the parent still lifts a node that nothing holds, or lets it down.
    if (!held && above !== undefined && passes === "from the parent")
      volts.push(Math.max(resting, above - drop));
    else if (!held && above !== undefined && passes === "to the parent")
      volts.push(Math.min(resting, above + drop));
    else volts.push(resting);
  }
  return { volts, upwards, given: sources.map(({ node }, index) => amperesAt(own[index]!, volts[node]!)) };
}

function seenFromParent(curve: SupplyCurve, { ohms, passes, drop }: SupplyNode): SupplyCurve {
  if (passes === "both ways") return beyond(curve, ohms);
  if (passes === "to the parent") return towards(curve, ohms, drop);
  if (passes === "from the parent") return away(curve, ohms, drop);
  return DEAD;
}
