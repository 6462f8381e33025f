/**
 * Loss of free space between two isotropic antennas.
 *
 * L = 20·log10(4π·d/λ), that is 32.45 + 20·log10(km) + 20·log10(MHz).
 *
 * Source: ITU-R P.525; the constant is not rounded here (textbooks print 32.4).
 * Accuracy: exact in a vacuum.
 * Range: distances of many wavelengths.
 */
import type { Decibels, Kilometres, Megahertz } from "../quantity";
import { wavelengthM } from "./radioConstants";

/**
 * @param range kilometres
 * @param frequency megahertz
 * @returns dB, positive
 */
export const freeSpaceLoss = (range: Kilometres, frequency: Megahertz): Decibels =>
  20 * Math.log10((4 * Math.PI * range * 1000) / wavelengthM(frequency));
