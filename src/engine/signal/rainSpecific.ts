/**
 * Attenuation of rain per kilometre of path.
 *
 * γ = k·R^α, with k and α of both polarisations combined for the elevation and
 * the tilt of the polarisation.
 *
 * Source: ITU-R P.838-3.
 * Accuracy: the constants as printed; ITU Study Group 3's examples to 1e-6.
 *   Textbooks before 2005 use older constants.
 * Range: 1 to 1000 GHz.
 */
import type { Degrees, Gigahertz } from "../quantity";
import { cosDeg } from "../sightline/angles";
import { ALPHA_HORIZONTAL, ALPHA_VERTICAL, K_HORIZONTAL, K_VERTICAL, type Regression } from "./rainConstants";

export interface RainPower {
  readonly k: number;
  readonly alpha: number;
}

function regressed({ bells, slope, constant }: Regression, frequency: Gigahertz): number {
  const logF = Math.log10(frequency);
  return bells.reduce(
    (sum, [a, b, c]) => sum + a * Math.exp(-(((logF - b) / c) ** 2)),
    slope * logF + constant,
  );
}

/**
 * @param frequency gigahertz
 * @param elevation degrees
 * @param tilt of the polarisation from the horizontal, degrees; 45 for circular
 * @returns k and α
 */
export function rainPower(frequency: Gigahertz, elevation: Degrees, tilt: Degrees): RainPower {
  const kH = 10 ** regressed(K_HORIZONTAL, frequency);
  const kV = 10 ** regressed(K_VERTICAL, frequency);
  const kαH = kH * regressed(ALPHA_HORIZONTAL, frequency);
  const kαV = kV * regressed(ALPHA_VERTICAL, frequency);
  const turn = cosDeg(elevation) ** 2 * cosDeg(2 * tilt);
  const k = (kH + kV + (kH - kV) * turn) / 2;
  return { k, alpha: (kαH + kαV + (kαH - kαV) * turn) / (2 * k) };
}

/**
 * @param frequency gigahertz
 * @param rain millimetres per hour
 * @param elevation degrees
 * @param tilt of the polarisation from the horizontal, degrees; 45 for circular
 * @returns dB per km
 */
export function rainSpecific(frequency: Gigahertz, rain: number, elevation: Degrees, tilt: Degrees): number {
  const { k, alpha } = rainPower(frequency, elevation, tilt);
  return k * rain ** alpha;
}
