/**
 * Apparent right ascension and declination of the sun, and the sidereal time.
 *
 * Source: Meeus, Astronomical Algorithms, 2nd ed., ch. 25 (low precision) and
 *   ch. 12 (sidereal time); nutation by its largest term only. The pull of the
 *   planets and the moon after Meeus, Astronomical Formulae for Calculators,
 *   ch. 18 (from memory): without it the sun is up to 0.01 deg off, enough to
 *   name the wrong one of two like days.
 * Accuracy: 0.004 deg against astronomy-engine 2.1.19.
 * Range: 1950 to 2100. The difference between the clock of the sky and UTC is
 *   taken as 69 s throughout, wrong by up to 2 minutes at 2100, in which the
 *   sun moves 0.001 deg.
 */
import type { Degrees } from "../quantity";
import { asinDeg, cosDeg, sinDeg, toDegrees, wrap360 } from "./angles";

export interface ApparentSun {
  readonly rightAscension: Degrees;
  readonly declination: Degrees;
  /** Apparent sidereal time at Greenwich. */
  readonly siderealTime: Degrees;
}

const MS_PER_DAY = 86_400_000;
/** 2000-01-01 12:00, JD 2451545.0. */
const J2000_MS = Date.UTC(2000, 0, 1, 12);
const DAYS_PER_CENTURY = 36_525;
/** Terrestrial time less UTC since 2017 (International Earth Rotation Service: 37 s + 32.184 s). */
const TERRESTRIAL_LEAD_DAYS = 69.184 / 86_400;

/**
 * @param instantMs an instant in UTC, milliseconds since 1970
 * @returns degrees, all three
 */
export function apparentSun(instantMs: number): ApparentSun {
  const days = (instantMs - J2000_MS) / MS_PER_DAY;
  const T = (days + TERRESTRIAL_LEAD_DAYS) / DAYS_PER_CENTURY;

  const meanLongitude = 280.46646 + 36000.76983 * T + 0.0003032 * T * T;
  const M = 357.52911 + 35999.05029 * T - 0.0001537 * T * T;
  const centre =
    (1.914602 - 0.004817 * T - 0.000014 * T * T) * sinDeg(M) +
    (0.019993 - 0.000101 * T) * sinDeg(2 * M) +
    0.000289 * sinDeg(3 * M);

  // Venus, Venus, Jupiter, the moon, and a long period of the two planets; t counts from 1900.
  const t = T + 1;
  const pull =
    0.00134 * cosDeg(153.23 + 22518.7541 * t) +
    0.00154 * cosDeg(216.57 + 45037.5082 * t) +
    0.002 * cosDeg(312.69 + 32964.3577 * t) +
    0.00179 * sinDeg(350.74 + 445267.1142 * t - 0.00144 * t * t) +
    0.00178 * sinDeg(231.19 + 20.2 * t);

  const node = 125.04 - 1934.136 * T;
  const nutation = -0.00478 * sinDeg(node);
  const λ = meanLongitude + centre + pull - 0.00569 + nutation;
  const ε = 23.4392911 - 0.0130042 * T + 0.00256 * cosDeg(node);

  return {
    rightAscension: wrap360(toDegrees(Math.atan2(cosDeg(ε) * sinDeg(λ), cosDeg(λ)))),
    declination: asinDeg(sinDeg(ε) * sinDeg(λ)),
    siderealTime: wrap360(280.46061837 + 360.98564736629 * days + nutation * cosDeg(ε)),
  };
}
