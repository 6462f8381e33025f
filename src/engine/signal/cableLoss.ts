/**
 * Loss of a length of coaxial cable at one frequency and temperature.
 *
 * α = (k1·√f + k2·f + k0)·[1 + 0.00198·(T − 20)]: k1 for the conductors' skin
 * effect, k2 for the dielectric, k0 for what is left of a table's rounding and
 * of thin cladding at low frequency.
 *
 * Source: form after the usual conductor and dielectric equations of coaxial
 *   line; temperature rule α(68 °F)·[1 + 0.0011·(T − 68)] of a published
 *   drop-cable note.
 * Accuracy: built-in types within 0.06 dB (series 7: 0.1 dB) per 100 ft of the
 *   ANSI/SCTE 74 kind of maximum table at 5 to 1000 MHz; above, extrapolated,
 *   5 %. Connectors are not in it.
 * Range: 5 to 3000 MHz, −60 to 90 °C. Below 5 MHz a copper-clad centre is
 *   thinner than the skin depth and the model does not hold.
 */
import { faults, isFault, type Fault } from "../faults";
import type { Celsius, Decibels, Megahertz, Metres } from "../quantity";
import type { Cable } from "./cable";
import { CABLE_REFERENCE_C, LOSS_PER_C } from "./constants";

/**
 * @param cable its coefficients, in dB per 100 m
 * @param length metres
 * @param frequency megahertz
 * @param temperature degrees Celsius of the cable
 * @returns dB, positive; a fault when the coefficients would make the cable an amplifier
 */
export function cableLoss(
  cable: Cable,
  length: Metres,
  frequency: Megahertz,
  temperature: Celsius,
): Decibels | Fault {
  if (isFault(cable.loss)) return cable.loss;
  const { k1, k2, k0 } = cable.loss;
  const per100m = k1 * Math.sqrt(frequency) + k2 * frequency + k0;
  if (per100m < 0) return faults.cableGains(cable.name, frequency, per100m);
  return (per100m / 100) * length * lossGrowth(temperature);
}

/** @returns how many times its loss at 20 °C a cable has at a temperature in degrees Celsius */
export const lossGrowth = (temperature: Celsius): number =>
  1 + LOSS_PER_C * (temperature - CABLE_REFERENCE_C);
