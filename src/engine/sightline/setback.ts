/**
 * How far a dish must stand back from an obstacle to look over it.
 *
 * Source: plane geometry; the Earth's curvature is left out (0.08 m at 1 km).
 *   A margin below the ray leaves room for half a beamwidth and for growth:
 *   2 to 5 deg, common practice, no source.
 * Accuracy: exact for a straight ray. Trees grow: measure them in leaf and
 *   add the years of the contract.
 * Range: elevation up to 89.9 deg, margin less than the elevation; lengths in
 *   one unit, whichever it is.
 */
import { faults, type Fault } from "../faults";
import type { Degrees, Metres } from "../quantity";
import { tanDeg } from "./angles";

/**
 * @param elevation of the slot, in degrees
 * @param obstacleHeight of the thing in front, in metres from the same level as the dish's
 * @param dishHeight of the dish, in metres
 * @param margin to keep free below the ray, in degrees
 * @returns least level distance from dish to obstacle, in metres; 0 when it is no higher than the dish
 */
export function setback(
  elevation: Degrees,
  obstacleHeight: Metres,
  dishHeight: Metres = 0,
  margin: Degrees = 0,
): Metres | Fault {
  if (!(margin < elevation)) return faults.marginTooWide(margin, elevation);
  return Math.max(0, obstacleHeight - dishHeight) / tanDeg(elevation - margin);
}
