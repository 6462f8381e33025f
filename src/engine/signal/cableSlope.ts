/**
 * How much more a length of cable loses at the high end of the band than at
 * the low end; see {@link cableLoss} for the model, its sources and limits.
 */
import { faults, isFault, type Fault } from "../faults";
import type { Celsius, Decibels, Megahertz, Metres } from "../quantity";
import type { Cable } from "./cable";
import { cableLoss } from "./cableLoss";

/**
 * @param cable its coefficients, in dB per 100 m
 * @param length metres
 * @param low lower frequency in megahertz
 * @param high higher frequency in megahertz
 * @param temperature degrees Celsius of the cable
 * @returns dB; positive when the high end loses more
 */
export function cableSlope(
  cable: Cable,
  length: Metres,
  low: Megahertz,
  high: Megahertz,
  temperature: Celsius,
): Decibels | Fault {
  if (low > high) return faults.lowAboveHigh("low", low, "high", high, "MHz");
  const lossLow = cableLoss(cable, length, low, temperature);
  if (isFault(lossLow)) return lossLow;
  const lossHigh = cableLoss(cable, length, high, temperature);
  return isFault(lossHigh) ? lossHigh : lossHigh - lossLow;
}
