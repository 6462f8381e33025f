/**
 * How high the ray to a slot stands at a distance from the dish, less a margin.
 *
 * Source: plane geometry; the Earth's curvature is left out (0.08 m at 1 km).
 *   A margin below the ray leaves room for half a beamwidth and for growth:
 *   2 to 5 deg, common practice, no source.
 * Accuracy: exact for a straight ray.
 * Range: elevation up to 89.9 deg, margin less than the elevation; lengths in
 *   one unit, whichever it is.
 */
import { faults, type Fault } from "../faults";
import type { Degrees, Metres } from "../quantity";
import { tanDeg } from "./angles";

/**
 * @param elevation of the slot, in degrees
 * @param distance from the dish along the ray's azimuth, level, in metres
 * @param dishHeight of the dish, in metres
 * @param margin to keep free below the ray, in degrees
 * @returns greatest height that is still clear at that distance, in metres
 */
export function rayHeight(
  elevation: Degrees,
  distance: Metres,
  dishHeight: Metres = 0,
  margin: Degrees = 0,
): Metres | Fault {
  if (!(margin < elevation)) return faults.marginTooWide(margin, elevation);
  return dishHeight + distance * tanDeg(elevation - margin);
}
