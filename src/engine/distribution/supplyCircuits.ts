/** The circuits that a distribution's supply falls into, each ready to be asked for its states. */
import type { Volts } from "../quantity";
import { SupplyNetwork, type NetworkOptions, type NetworkSource } from "./supplyNetwork";
import type { SupplyNodes } from "./supplyNodes";
import type { Tree } from "./tree";

/** What the receivers of a circuit do. One of them is named where a state is about it. */
export type SupplyStateName =
  /** All off, and nothing draws. */
  | "idle"
  | "all off"
  /** The one named on at rest, all others off. */
  | "alone"
  /** At rest. */
  | "all on"
  /** The one named; all others rest. */
  | "commanding"
  /** All command but the one named, which is off. */
  | "off among others"
  | "all commanding";

/** One circuit; numbers are places in the {@link SupplyNodes} of the whole. */
export interface SupplyCircuitPart {
  readonly index: number;
  readonly nodes: readonly number[];
  readonly loads: readonly number[];
  readonly sources: readonly number[];
  readonly receivers: readonly number[];
  readonly resistors: readonly number[];
  readonly feeds: readonly number[];
  readonly heads: readonly number[];
  readonly network: SupplyNetwork;
  /** @returns the volts at a node of this circuit in the state that was asked last */
  readonly voltsAt: (node: number) => Volts;
  readonly has: (node: number) => boolean;
}

/** @returns one by one, so that only one is held at a time */
export function* supplyCircuits(whole: SupplyNodes, options: NetworkOptions): Generator<SupplyCircuitPart> {
  const { circuit, circuits } = whole;
  const groupOf = (nodes: readonly number[]): number[][] => {
    const groups: number[][] = Array.from({ length: circuits }, () => []);
    nodes.forEach((node, index) => groups[circuit[node]!]!.push(index));
    return groups;
  };
  const at = ({ node }: { readonly node: number }): number => node;
  const nodes = groupOf(whole.nodes.map((_, node) => node));
  const loads = groupOf(whole.loads.map(at));
  const sources = groupOf(whole.sources.map(at));
  const receivers = groupOf(whole.receivers.map(at));
  const resistors = groupOf(whole.resistors.map(at));
  const feeds = groupOf(whole.feeds.map(at));
  const heads = groupOf([...whole.common]);
  const place = new Int32Array(whole.nodes.length);
  for (const group of nodes) group.forEach((node, index) => (place[node] = index));
  const placed = <T extends { readonly node: number }>(one: T): T => ({ ...one, node: place[one.node]! });

  for (let index = 0; index < circuits; index++) {
    // A circuit's first node is its root, whatever is blocked above it.
    const own = nodes[index]!.map((node, first) => {
      const one = whole.nodes[node]!;
      return { ...one, parent: first === 0 ? -1 : place[one.parent]! };
    });
    const inserters = sources[index]!.map((one): NetworkSource => {
      const { node, volts } = whole.sources[one]!;
      return { node: place[node]!, volts, drop: null };
    });
    // Receivers never take current.
    const connected = receivers[index]!.map((one): NetworkSource => ({
      node: place[whole.receivers[one]!.node]!,
      volts: 0,
      drop: 0,
    }));
    const network = new SupplyNetwork(
      own,
      [...inserters, ...connected],
      loads[index]!.map((one) => placed(whole.loads[one]!)),
      resistors[index]!.map((one) => placed(whole.resistors[one]!)),
      options,
    );
    yield {
      index,
      nodes: nodes[index]!,
      loads: loads[index]!,
      sources: sources[index]!,
      receivers: receivers[index]!,
      resistors: resistors[index]!,
      feeds: feeds[index]!,
      heads: heads[index]!,
      network,
      voltsAt: (node) => network.volts[place[node]!]!,
      has: (node) => circuit[node] === index,
    };
  }
}

export interface FailedState {
  readonly state: SupplyStateName;
  /** Row of the outlet that it is about; -1 for none. */
  readonly outlet: number;
}

/**
 * Asks a circuit for every state.
 *
 * @param hasSpare whether it has outlets without a receiver, so that all commanding is asked too
 * @param note called after each that has an operating point, with the place among the circuit's receivers of the one
 *   that it is about, or -1
 * @returns the first without an operating point; null where all have one
 */
export function everyState(
  tree: Tree,
  whole: SupplyNodes,
  { network, receivers, sources }: SupplyCircuitPart,
  hasSpare: boolean,
  note: (state: SupplyStateName, receiver: number) => void,
): FailedState | null {
  const { isOn, sourceVolts } = network;
  const first = sources.length;
  const outlets = receivers.map((one) => whole.receivers[one]!.outlet);
  const kinds = outlets.map((outlet) => tree.job.outlets[outlet]!.receiver!);
  let failed: FailedState | null = null;
  const off = (place: number): void => void (isOn[first + place] = 0);
  const on = (place: number, volts: Volts): void => {
    isOn[first + place] = 1;
    sourceVolts[first + place] = volts;
  };
  const rest = (place: number): void => on(place, kinds[place]!.restVolts);
  const command = (place: number): void => on(place, kinds[place]!.commandVolts);
  const ask = (state: SupplyStateName, receiver = -1): void => {
    if (network.solve(state !== "idle")) note(state, receiver);
    else failed ??= { state, outlet: outlets[receiver] ?? -1 };
  };
  const places = [...receivers.keys()];
  const each = (
    state: SupplyStateName,
    before: (place: number) => void,
    after: (place: number) => void,
  ): void => {
    for (const place of places) {
      before(place);
      ask(state, place);
      after(place);
    }
  };

  places.forEach(off);
  ask("idle");
  ask("all off");
  if (places.length === 0) return failed;
  each("alone", rest, off);
  places.forEach(rest);
  ask("all on");
  each("commanding", command, rest);
  places.forEach(command);
  each("off among others", off, command);
  if (hasSpare) ask("all commanding");
  return failed;
}
