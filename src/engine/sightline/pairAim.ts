/**
 * Aim of a dish that receives two slots: the middle of the two directions.
 *
 * Source: derivation. The middle is the sum of the two unit vectors; it is
 *   neither the look angle to the middle longitude (0.1 deg off) nor the mean
 *   of the two azimuths (over 1 deg off at an elevation of 50 deg).
 * Accuracy: that of the look angles; held to an independent derivation within 0.002 deg.
 * Range: two slots above the horizon whose middle is not straight overhead.
 *   Where the dish's maker gives his own aim for unequal feeds, that goes first.
 */
import { faults, isFault, type Fault } from "../faults";
import type { Degrees, Metres } from "../quantity";
import { toDegrees, wrap360 } from "./angles";
import { pictureAlong } from "./boresight";
import { add, lengthOf, unit } from "./vectors";
import { visibleSlot } from "./visibleSlot";

export interface Aim {
  readonly azimuth: Degrees;
  readonly elevation: Degrees;
}

/** Two directions whose sum is shorter than this lie opposite each other. */
const OPPOSITE = 1e-9;

/**
 * @param latitude geodetic latitude in degrees, north positive
 * @param longitude degrees, east positive
 * @param slotA one slot in degrees east
 * @param slotB the other
 * @param height metres above the ellipsoid
 * @returns azimuth and elevation in degrees
 */
export function pairAim(
  latitude: Degrees,
  longitude: Degrees,
  slotA: Degrees,
  slotB: Degrees,
  height: Metres = 0,
): Aim | Fault {
  const a = visibleSlot(latitude, longitude, slotA, height);
  if (isFault(a)) return a;
  const b = visibleSlot(latitude, longitude, slotB, height);
  if (isFault(b)) return b;
  const sum = add(a, b);
  if (lengthOf(sum) < OPPOSITE) return faults.noPairAim(latitude);
  const aim = unit(sum);
  if (!pictureAlong(aim)) return faults.noPairAim(latitude);
  return {
    azimuth: wrap360(toDegrees(Math.atan2(aim.east, aim.north))),
    elevation: toDegrees(Math.atan2(aim.up, Math.hypot(aim.east, aim.north))),
  };
}
