/**
 * Width of a dish's beam between its half-power points.
 *
 * θ = 70·λ/D degrees.
 *
 * Source: Maral & Bousquet, Satellite Communications Systems (from memory).
 * Accuracy: 10 %: the factor is 58 to 75 with the illumination of the rim.
 * Range: dishes of several wavelengths.
 */
import type { Degrees, Megahertz, Metres } from "../quantity";
import { BEAMWIDTH_DEG, wavelengthM } from "./radioConstants";

/**
 * @param diameter metres, across the direction in which the width is wanted
 * @param frequency megahertz
 * @returns degrees between the half-power points
 */
export const beamwidth = (diameter: Metres, frequency: Megahertz): Degrees =>
  (BEAMWIDTH_DEG * wavelengthM(frequency)) / diameter;
