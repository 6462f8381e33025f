/**
 * How far the peak lies from the present setting, from the drops a step to
 * either side. The beamwidth cancels out.
 *
 * Source: derivation from the parabola L = 12(θ/θ3)² of the main lobe (Maral
 *   and Bousquet, from memory): ε = (Δ/2)(d₋ − d₊)/(d₋ + d₊).
 * Accuracy: exact on the parabola, which holds to about −6 dB. A meter's 0.1 dB
 *   step costs Δ/20 when the drops add up to 1 dB.
 * Range: readings in dB, not in percent or quality. The step Δ at most 0.8 of
 *   the beamwidth, for which the drops add up to 15.36 dB. The azimuth turn of a
 *   mast moves the beam by turn · cos(elevation); the offset in turn degrees
 *   stays right. The peak at most 2.5 steps away, and at most 0.71 beamwidths
 *   (6 dB): beyond, the parabola through the readings says nothing of the beam.
 */
import { faults, type Fault } from "../faults";
import type { Decibels, Degrees } from "../quantity";
import { FARTHEST_PEAK_STEPS, WIDEST_STEP_BEAMWIDTHS } from "./constants";

/** d₊ + d₋ = 24 (Δ/θ3)² on the parabola. */
const GREATEST_SUM_DB = 24 * WIDEST_STEP_BEAMWIDTHS ** 2;

/**
 * @param dropPlus dB below the present reading after a step to +
 * @param dropMinus dB below the present reading after a step to −
 * @param step degrees turned to either side, or marks of the mount's scale
 * @returns where the peak is, towards + when positive, in the step's unit; a fault where the readings cannot say
 */
export function peakOffset(dropPlus: Decibels, dropMinus: Decibels, step: Degrees): Degrees | Fault {
  const sum = dropPlus + dropMinus;
  if (!(sum > 0)) return faults.noPeak(sum);
  if (sum > GREATEST_SUM_DB) return faults.stepTooWide(sum, GREATEST_SUM_DB);
  const offset = ((step / 2) * (dropMinus - dropPlus)) / sum;
  // The width that the drops show is step·√(24/sum), and the parabola is 6 dB down at the width over √2.
  const farthest = step * Math.min(FARTHEST_PEAK_STEPS, Math.sqrt(12 / sum));
  return Math.abs(offset) > farthest * (1 + 1e-9)
    ? faults.peakOutOfReach(offset, -farthest, farthest, step)
    : offset;
}
