/**
 * Bearing that a magnetic compass shows when the dish points at an orbital slot:
 * true azimuth less the declination, east positive.
 *
 * Source: WMM2025, with its blackout zone: where the horizontal field is below
 *   2000 nT a compass is of no use (WMM2025 report, from memory). In the caution
 *   zone, below 6000 nT, the answer is given but may be off by degrees.
 * Accuracy: that of the declination, about 0.4 deg at middle latitudes before
 *   local iron.
 * Range: the dates of the magnetic model; outside the blackout zones, which lie
 *   around the magnetic poles.
 */
import { faults, isFault, type Fault } from "../faults";
import type { Degrees, Metres } from "../quantity";
import { wrap360 } from "./angles";
import { COMPASS_BLACKOUT_NT } from "./constants";
import { lookAngles } from "./lookAngles";
import { magneticField } from "./magneticField";

/**
 * @param latitude geodetic latitude in degrees, north positive
 * @param longitude degrees, east positive
 * @param slot orbital slot in degrees east
 * @param date an instant in UTC
 * @param height metres above the ellipsoid
 * @returns degrees clockwise from magnetic north, 0 to 360; a fault where there is none
 */
export function compassBearing(
  latitude: Degrees,
  longitude: Degrees,
  slot: Degrees,
  date: Date,
  height: Metres = 0,
): Degrees | Fault {
  const angles = lookAngles(latitude, longitude, slot, height);
  if (isFault(angles)) return angles;
  const field = magneticField(latitude, longitude, date, height);
  if (isFault(field)) return field;
  if (field.horizontal < COMPASS_BLACKOUT_NT) return faults.compassBlackout(field.horizontal);
  return wrap360(angles.azimuth - field.declination);
}
