/**
 * Carrier-to-noise ratio of a satellite downlink.
 *
 * C/N = EIRP − free-space loss − other losses + dish gain − 10·log10(k·T·B).
 *
 * Source: Roddy, Satellite Communications, 4th ed., ch. 12 and 16.
 * Accuracy: that of the figures given; uplink noise and interference are left out.
 */
import { isFault, type Fault } from "../faults";
import type { Decibels, Kelvin, Kilometres, Megahertz, Metres } from "../quantity";
import { dishGain } from "./dishGain";
import { freeSpaceLoss } from "./freeSpaceLoss";
import { BOLTZMANN_J_PER_K } from "./radioConstants";

export interface Downlink {
  /** Equivalent isotropic radiated power towards the site, dBW. */
  readonly eirp: Decibels;
  readonly range: Kilometres;
  readonly frequency: Megahertz;
  readonly diameter: Metres;
  /** Noise temperature of the whole reception, dish and head unit. */
  readonly noise: Kelvin;
  /** Noise bandwidth; with a bit rate in Mbit/s instead the answer is Eb/N0. */
  readonly bandwidth: Megahertz;
  /** Rain, atmosphere, pointing, ageing. */
  readonly losses: Decibels;
  readonly efficiency: number;
}

/** @returns dB; a fault for a dish of less than a wavelength */
export function carrierToNoise(link: Downlink): Decibels | Fault {
  const gain = dishGain(link.diameter, link.frequency, link.efficiency);
  if (isFault(gain)) return gain;
  const carrier = link.eirp - freeSpaceLoss(link.range, link.frequency) - link.losses + gain;
  return carrier - 10 * Math.log10(BOLTZMANN_J_PER_K * link.noise * link.bandwidth * 1e6);
}
