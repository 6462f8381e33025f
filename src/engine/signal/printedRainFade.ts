/**
 * Rain attenuation of a slant path that is exceeded for a small part of an
 * average year, by the method as it is printed, and which way its curve runs.
 *
 * The path below the rain height, shortened for the size of rain cells and
 * adjusted in height, times the rain's attenuation per kilometre at the rate
 * exceeded for 0.01 % of the year; then scaled to the percentage wanted.
 *
 * Source: ITU-R P.618-13, section 2.2.1.1 (the same in -14).
 * Accuracy: the method as printed, ITU Study Group 3's examples to 1e-6 dB;
 *   against nature the method is good to some 20 to 30 % of the decibels.
 * Range: 0.001 to 5 % of the year, up to 55 GHz, elevation from 5°.
 */
import type { Decibels, Degrees, Gigahertz, Kilometres } from "../quantity";
import { cosDeg, sinDeg, toDegrees } from "../sightline/angles";
import { rainSpecific } from "./rainSpecific";

export interface RainPath {
  readonly latitude: Degrees;
  readonly elevation: Degrees;
  readonly frequency: Gigahertz;
  /** Rain rate exceeded for 0.01 % of an average year, mm/h. */
  readonly rain: number;
  /** Part of an average year, %. */
  readonly percent: number;
  /** Rain height above sea level. */
  readonly rainHeight: Kilometres;
  /** Site height above sea level. */
  readonly siteHeight: Kilometres;
  /** Tilt of the polarisation from the horizontal; 45 for circular. */
  readonly tilt: Degrees;
}

export interface PrintedFade {
  /** Exceeded for the percentage of the year; 0 without rain or above the rain. */
  readonly decibels: Decibels;
  /** A rarer part of the year would have less fade: the scaling has turned. */
  readonly turned: boolean;
}

/** Per cent of the year from which everything is scaled. */
const HUNDREDTH = 0.01;

/** @param path with the percentage of the year that is wanted */
export function printedRainFade(path: RainPath): PrintedFade {
  const rise = path.rainHeight - path.siteHeight;
  if (rise <= 0 || path.rain <= 0) return { decibels: 0, turned: false };
  const atHundredth = fadeAtHundredth(path, rise);
  const { percent: p } = path;
  const bend = latitudeTerm(path) * sinDeg(path.elevation);
  const exponent = 0.655 + 0.033 * Math.log(p) - 0.045 * Math.log(atHundredth) - bend * (1 - p);
  const distance = Math.log(p / HUNDREDTH);
  return {
    decibels: atHundredth * Math.exp(-exponent * distance),
    // Of d(ln A)/d(ln p) = −(exponent + distance·d(exponent)/d(ln p)) the sign.
    turned: exponent + distance * (0.033 + bend * p) < 0,
  };
}

/** Steps 2 to 9: the attenuation exceeded for 0.01 % of the year. */
function fadeAtHundredth(path: RainPath, rise: Kilometres): Decibels {
  const { elevation: θ, frequency: f } = path;
  const sinθ = sinDeg(θ);
  const cosθ = cosDeg(θ);
  const slant = rise / sinθ;
  const ground = slant * cosθ;
  const γ = rainSpecific(f, path.rain, θ, path.tilt);

  const across = 1 / (1 + 0.78 * Math.sqrt((ground * γ) / f) - 0.38 * (1 - Math.exp(-2 * ground)));
  const ζ = toDegrees(Math.atan2(rise, ground * across));
  const inRain = ζ > θ ? (ground * across) / cosθ : slant;

  const χ = Math.max(0, 36 - Math.abs(path.latitude));
  const upward =
    1 /
    (1 + Math.sqrt(sinθ) * ((31 * (1 - Math.exp(-θ / (1 + χ))) * Math.sqrt(inRain * γ)) / (f * f) - 0.45));
  return γ * inRain * upward;
}

/** β of step 10. */
function latitudeTerm({ percent, latitude, elevation }: RainPath): number {
  const north = Math.abs(latitude);
  if (percent >= 1 || north >= 36) return 0;
  const low = -0.005 * (north - 36);
  return elevation >= 25 ? low : low + 1.8 - 4.25 * sinDeg(elevation);
}
