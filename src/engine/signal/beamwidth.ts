/**
 * Width of a dish's beam between its half-power points.
 *
 * θ = 70·λ/D degrees.
 *
 * Source: Maral & Bousquet, Satellite Communications Systems (from memory).
 * Accuracy: 10 %: the factor is 58 to 75 with the illumination of the rim.
 * Range: dishes of two wavelengths or more, so widths up to 35°: the angle is
 *   taken for small.
 */
import { faults, type Fault } from "../faults";
import type { Degrees, Megahertz, Metres } from "../quantity";
import { BEAMWIDTH_DEG, LEAST_BEAM_WAVELENGTHS, wavelengthM } from "./radioConstants";

/**
 * @param diameter metres, across the direction in which the width is wanted
 * @param frequency megahertz
 * @returns degrees between the half-power points; a fault for a dish of less than two wavelengths
 */
export function beamwidth(diameter: Metres, frequency: Megahertz): Degrees | Fault {
  const wavelength = wavelengthM(frequency);
  return diameter < LEAST_BEAM_WAVELENGTHS * wavelength
    ? faults.dishTooSmall(diameter, frequency, LEAST_BEAM_WAVELENGTHS, wavelength)
    : (BEAMWIDTH_DEG * wavelength) / diameter;
}
