/**
 * Gain of a dish over an isotropic antenna.
 *
 * G = 10·log10(η·(π·D/λ)²).
 *
 * Source: Roddy, Satellite Communications, 4th ed., ch. 12.
 * Accuracy: that of the efficiency: 0.55 to 0.7, that is 1 dB. For an offset
 *   dish take the width of the rim, the shorter axis.
 * Range: dishes of a wavelength or more.
 */
import { faults, type Fault } from "../faults";
import type { Decibels, Megahertz, Metres } from "../quantity";
import { LEAST_DISH_WAVELENGTHS, wavelengthM } from "./radioConstants";

/**
 * @param diameter metres
 * @param frequency megahertz
 * @param efficiency aperture efficiency, 0 to 1
 * @returns dBi; a fault for a dish of less than a wavelength
 */
export function dishGain(diameter: Metres, frequency: Megahertz, efficiency: number): Decibels | Fault {
  const wavelength = wavelengthM(frequency);
  return diameter < LEAST_DISH_WAVELENGTHS * wavelength
    ? faults.dishTooSmall(diameter, frequency, LEAST_DISH_WAVELENGTHS, wavelength)
    : 10 * Math.log10(efficiency) + 20 * Math.log10((Math.PI * diameter) / wavelength);
}
