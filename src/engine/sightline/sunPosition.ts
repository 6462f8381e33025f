/**
 * Azimuth and elevation of the sun at a site: a compass that no iron disturbs,
 * and the light by which an obstacle's shadow shows what it hides.
 *
 * Source: apparentSun, turned to the site's horizon; less the sun's parallax.
 * Accuracy: 0.01 deg; the true, not the refracted elevation. A minute of the
 *   clock moves the sun's azimuth by 0.25 deg and more.
 * Range: 1950 to 2100; at elevations below 0 the sun has set.
 */
import { faults, type Fault } from "../faults";
import type { Degrees } from "../quantity";
import { cosDeg, sinDeg, toDegrees, wrap360 } from "./angles";
import { apparentSun } from "./apparentSun";
import { SUN_FIRST_YEAR, SUN_LAST_YEAR } from "./constants";
import type { Aim } from "./pairAim";
import { unit, type Vector } from "./vectors";

/** The Earth's radius as the sun sees it, in astronomical units. */
const PARALLAX_RADIANS = 4.2635e-5;

/** Unit vector to the centre of the sun at an instant in milliseconds since 1970; other parameters as below. */
export function sunDirection(latitude: Degrees, longitude: Degrees, instantMs: number): Vector {
  const { rightAscension, declination: δ, siderealTime } = apparentSun(instantMs);
  const hourAngle = siderealTime + longitude - rightAscension;
  return unit({
    east: -cosDeg(δ) * sinDeg(hourAngle),
    north: cosDeg(latitude) * sinDeg(δ) - sinDeg(latitude) * cosDeg(δ) * cosDeg(hourAngle),
    up: sinDeg(latitude) * sinDeg(δ) + cosDeg(latitude) * cosDeg(δ) * cosDeg(hourAngle) - PARALLAX_RADIANS,
  });
}

/**
 * @param latitude geodetic latitude in degrees, north positive
 * @param longitude degrees, east positive
 * @param utc an instant in UTC
 * @returns azimuth and elevation in degrees; a fault outside the years of the model
 */
export function sunPosition(latitude: Degrees, longitude: Degrees, utc: Date): Aim | Fault {
  const year = utc.getUTCFullYear();
  if (!(year >= SUN_FIRST_YEAR && year <= SUN_LAST_YEAR)) {
    return faults.outOfRange("utc's year", year, { min: SUN_FIRST_YEAR, max: SUN_LAST_YEAR });
  }
  const { east, north, up } = sunDirection(latitude, longitude, utc.getTime());
  return {
    azimuth: wrap360(toDegrees(Math.atan2(east, north))),
    elevation: toDegrees(Math.atan2(up, Math.hypot(east, north))),
  };
}
