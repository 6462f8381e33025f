/**
 * Noise temperature of a part with a given noise figure.
 *
 * T = 290·(10^(NF/10) − 1).
 *
 * Source: definition of the noise figure, reference 290 K (IEEE).
 * Accuracy: exact. The dish adds its own, some 20 to 60 K under a clear sky.
 */
import type { Decibels, Kelvin } from "../quantity";
import { NOISE_REFERENCE_K } from "./radioConstants";

/**
 * @param noiseFigure dB
 * @returns kelvin
 */
export const noiseTemperature = (noiseFigure: Decibels): Kelvin =>
  NOISE_REFERENCE_K * Math.expm1((noiseFigure / 10) * Math.LN10);
