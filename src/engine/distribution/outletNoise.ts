/**
 * Carrier to noise at an outlet at one frequency: that of the head unit's
 * output, and what cables, parts, amplifiers and the receiver add on the way.
 *
 * Source: signalAndNoise.ts.
 * Accuracy: exact for matched parts. Cables and parts are taken as warm as the
 *   hottest cable, where they lose most.
 */
import type { Decibels } from "../quantity";
import { noiseTemperature } from "../signal/noiseTemperature";
import { between, connectorOf, lossTo, type Condition, type Losses } from "./losses";
import { gainAt } from "./levels";
import { afterGain, afterLoss, carrierToNoise, withNoise, type Signal } from "./signalAndNoise";
import { together, type SlotSeen } from "./sky";
import { deviceAt, type Tree } from "./tree";

const KELVIN = 273.15;

/**
 * @param receiverNoise its noise figure, dB
 * @returns the level at an outlet's connector, and the noise beside it that comes from below the head unit alone
 */
export function addedNoise(
  tree: Tree,
  losses: Losses,
  outlet: number,
  where: Condition,
  receiverNoise: Decibels,
): Signal {
  const warm = tree.job.site.hot + KELVIN;
  const amplifiers: number[] = [];
  const end = connectorOf(tree, outlet);
  for (let at = losses.amplifier[end]!; at >= 0; at = losses.amplifier[at]!) amplifiers.push(at);
  const output = tree.output[tree.pointOfOutlet[outlet]!]!;
  let signal: Signal = {
    level: between(tree.job.headUnits[tree.row[output]!]!.kind.output, where),
    noise: 0,
  };
  let sofar = 0;
  for (const amplifier of amplifiers.reverse()) {
    const before = lossTo(losses, amplifier, where);
    const gain = gainAt(tree, amplifier, where);
    signal = afterLoss(signal, before - sofar, warm);
    signal = afterGain(signal, gain, deviceAt(tree, amplifier)!.amplifier!.noiseFigure);
    sofar = before - gain;
  }
  signal = afterLoss(signal, lossTo(losses, end, where) - sofar, warm);
  return withNoise(signal, noiseTemperature(receiverNoise));
}

/** Carrier to noise of one slot; without a slot's own figures there is none. */
export interface OutletCarrierToNoise {
  readonly clear: Decibels;
  /** At the availability wanted; null where only a clear sky is judged. */
  readonly rain: Decibels | null;
}

/**
 * @param added as {@link addedNoise} has it, one for each frequency of the outlet
 * @returns that at the worst of its frequencies; null where the slot's is not asked
 */
export function outletCarrierToNoise(
  { atOutput, slot }: SlotSeen,
  added: readonly Signal[],
): OutletCarrierToNoise | null {
  const { symbolRate } = slot;
  if (!atOutput || symbolRate === null || added.length === 0) return null;
  const own = Math.min(...added.map((signal) => carrierToNoise(signal, symbolRate * 1e6)));
  return {
    clear: together(atOutput.clear, own),
    rain: atOutput.rain === null ? null : together(atOutput.rain, own),
  };
}
