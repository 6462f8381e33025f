/**
 * Straight distance from a site on WGS84 to an orbital slot.
 *
 * Source, accuracy: as for lookAngles. A real satellite wanders within its
 * station-keeping box, which moves the range by tens of kilometres.
 * Range: any site; through the Earth where the elevation is below 0.
 */
import type { Degrees, Kilometres, Metres } from "../quantity";
import { eastNorthUp } from "./lookAngles";

/**
 * @param latitude geodetic latitude in degrees, north positive
 * @param longitude degrees, east positive
 * @param slot orbital slot in degrees east
 * @param height metres above the ellipsoid
 * @returns kilometres
 */
export function slantRange(
  latitude: Degrees,
  longitude: Degrees,
  slot: Degrees,
  height: Metres = 0,
): Kilometres {
  const { east, north, up } = eastNorthUp(latitude, longitude, slot, height);
  return Math.hypot(east, north, up);
}
