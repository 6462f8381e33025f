/** Currents through supplies and devices and volts at feeds, amplifiers and end resistors, over the states of the supply. */
import type { Losses } from "./losses";
import type { SupplyCircuitPart, SupplyStateName } from "./supplyCircuits";
import type { SupplyNodes } from "./supplyNodes";
import { DEVICE, feedsInAt, type Tree } from "./tree";

/** Not a number where nothing was asked. */
export interface PartSupply {
  /** By supply, in the order of the nodes' sources: amperes out of it. */
  readonly supplyMost: Float64Array;
  /** By supply: below 0 it is fed backwards. */
  readonly supplyLeast: Float64Array;
  /** By feed, in the order of the nodes' feeds: volts, in the states in which its head unit is to work. */
  readonly feedLeast: Float64Array;
  /** By row of the devices: volts at an amplifier, in the states in which it is to work. */
  readonly amplifierLeast: Float64Array;
  /** By row of the devices: the greatest amperes through it or one of its ports. */
  readonly deviceMost: Float64Array;
  /** By end resistor that passes the supply, in the order of the nodes' resistors: volts. */
  readonly resistorMost: Float64Array;
}

export function partSupply(tree: Tree, losses: Losses, whole: SupplyNodes) {
  const { job, count, kind, row, parent, output, pointOfDevice, pointOfOutlet } = tree;
  const blank = (size: number): Float64Array => new Float64Array(size).fill(NaN);
  const supplyMost = blank(whole.sources.length);
  const supplyLeast = blank(whole.sources.length);
  const resistorMost = blank(whole.resistors.length);
  const nodeMost = new Float64Array(whole.nodes.length);
  const feed = { off: blank(whole.feeds.length), on: blank(whole.feeds.length) };
  const amplifier = { off: blank(job.devices.length), on: blank(job.devices.length) };
  const least = (into: Float64Array, at: number, value: number): void => {
    if (!(into[at]! <= value)) into[at] = value;
  };
  const most = (into: Float64Array, at: number, value: number): void => {
    if (!(into[at]! >= value)) into[at] = value;
  };
  /** By circuit: rows of its amplifiers. */
  const amplifiers = new Map<number, number[]>();
  job.devices.forEach(({ part }, device) => {
    const point = pointOfDevice[device]!;
    if (!part.amplifier || point < 0) return;
    const there = whole.circuit[whole.ofPoint[point]!]!;
    amplifiers.set(there, [...(amplifiers.get(there) ?? []), device]);
  });
  /** By row of the devices: an amplifier with a receiver below it. */
  const isAsked = new Uint8Array(job.devices.length);
  job.outlets.forEach(({ receiver }, outlet) => {
    const point = pointOfOutlet[outlet]!;
    if (!receiver || point < 0) return;
    for (let at = losses.amplifier[point]!; at >= 0; at = losses.amplifier[at]!) isAsked[row[at]!] = 1;
  });
  /** The same with one that nothing joins to it for the supply: on alone, that one leaves it as it is with all off. */
  const isCutOff = new Uint8Array(job.devices.length);
  const nodeOf = (device: number): number => whole.ofPoint[pointOfDevice[device]!]!;

  const note = (circuit: SupplyCircuitPart, state: SupplyStateName, receiver: number): void => {
    // All command only for what then stands on spare outlets.
    if (state === "idle" || state === "all commanding") return;
    const { nodes, sources, resistors, feeds, receivers, network, voltsAt } = circuit;
    for (let place = 0; place < nodes.length; place++) {
      const amperes = Math.abs(network.upwards[place]!);
      if (amperes > nodeMost[nodes[place]!]!) nodeMost[nodes[place]!] = amperes;
    }
    for (let place = 0; place < sources.length; place++) {
      most(supplyMost, sources[place]!, network.given[place]!);
      least(supplyLeast, sources[place]!, network.given[place]!);
    }
    for (const one of resistors) most(resistorMost, one, Math.abs(voltsAt(whole.resistors[one]!.node)));
    if (state === "all off") {
      for (const one of feeds) feed.off[one] = voltsAt(whole.feeds[one]!.node);
      for (const device of amplifiers.get(circuit.index) ?? [])
        amplifier.off[device] = voltsAt(nodeOf(device));
    } else if (state !== "off among others")
      for (const one of feeds) least(feed.on, one, voltsAt(whole.feeds[one]!.node));
    if (state === "all on")
      for (const device of amplifiers.get(circuit.index) ?? [])
        if (isAsked[device]) least(amplifier.on, device, voltsAt(nodeOf(device)));
    if (state !== "alone") return;
    // A receiver on alone needs the amplifiers above it, and no others.
    const { outlet } = whole.receivers[receivers[receiver]!]!;
    for (let at = losses.amplifier[pointOfOutlet[outlet]!]!; at >= 0; at = losses.amplifier[at]!)
      if (circuit.has(whole.ofPoint[at]!)) least(amplifier.on, row[at]!, voltsAt(whole.ofPoint[at]!));
      else isCutOff[row[at]!] = 1;
  };

  const suppliedFromAbove = (point: number): boolean => {
    for (let at = parent[point]!; at >= 0; at = parent[at]!) if (feedsInAt(tree, at)) return true;
    return false;
  };

  /** With all off a part is to work only where its head unit works. */
  const inUse = (off: number, on: number, isFed: boolean): number =>
    Number.isNaN(on) ? off : isFed ? Math.min(off, on) : on;

  /** @param isFed whether a head unit works with all receivers off */
  const result = (isFed: (head: number) => boolean): PartSupply => {
    const deviceMost = blank(job.devices.length);
    for (let point = 0; point < count; point++) {
      const above = parent[point]!;
      const through = nodeMost[whole.ofPoint[point]!]!;
      if (kind[point] === DEVICE) most(deviceMost, row[point]!, through);
      if (above >= 0 && kind[above] === DEVICE) most(deviceMost, row[above]!, through);
    }
    // Out of the port that an end resistor closes, where it does not block direct current.
    whole.resistors.forEach(({ point, ohms }, one) => {
      if (kind[point] === DEVICE && resistorMost[one]! > 0)
        most(deviceMost, row[point]!, resistorMost[one]! / ohms);
    });
    whole.sources.forEach(({ device }, one) => {
      if (device >= 0 && supplyMost[one]! > 0) most(deviceMost, device, supplyMost[one]!);
    });
    return {
      supplyMost,
      supplyLeast,
      feedLeast: feed.off.map((off, one) => inUse(off, feed.on[one]!, isFed(whole.feeds[one]!.head))),
      amplifierLeast: amplifier.off.map((off, device) => {
        const point = pointOfDevice[device]!;
        if (point < 0) return NaN;
        const isHeadFed = isFed(row[output[point]!]!);
        // With spare outlets alone below it, it is to work only where its head unit does.
        if (!isAsked[device]) return isHeadFed ? off : NaN;
        // Where no supply feeds into its line, the receivers below do: nobody misses it while all are off.
        const isLineFed = isHeadFed && suppliedFromAbove(point);
        return inUse(off, amplifier.on[device]!, isLineFed || isCutOff[device] === 1);
      }),
      deviceMost,
      resistorMost,
    };
  };
  return { note, result };
}
