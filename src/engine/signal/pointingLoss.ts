/**
 * Loss of a dish that points beside the slot.
 *
 * L = 12·(ε/θ)² dB, with θ the half-power beamwidth.
 *
 * Source: Maral & Bousquet, Satellite Communications Systems, 3rd ed., p. 27 (cited).
 * Accuracy: a parabola fits the main lobe down to some 6 dB.
 * Range: |ε| up to θ/√2, where L is 6 dB; beyond, a fault.
 */
import { faults, type Fault } from "../faults";
import type { Decibels, Degrees } from "../quantity";

const DEEPEST_DB = 6;

/**
 * @param error degrees between the beam's axis and the slot, either sign
 * @param beamwidth degrees between the half-power points
 * @returns dB, positive; a fault beyond the 6 dB points
 */
export function pointingLoss(error: Degrees, beamwidth: Degrees): Decibels | Fault {
  const loss = 12 * (error / beamwidth) ** 2;
  return loss > DEEPEST_DB * (1 + 1e-12) ? faults.beyondMainLobe(error, beamwidth / Math.SQRT2) : loss;
}
