/**
 * Elevation of an orbital slot above the horizontal, on WGS84. Apart from the
 * look angles because it has an answer under the slot, where they have none.
 *
 * Source, accuracy: as for lookAngles; refraction is left out.
 * Range: any site; below 0 the Earth is in the way.
 */
import type { Degrees, Metres } from "../quantity";
import { toDegrees } from "./angles";
import { eastNorthUp } from "./lookAngles";

/**
 * @param latitude geodetic latitude in degrees, north positive
 * @param longitude degrees, east positive
 * @param slot orbital slot in degrees east
 * @param height metres above the ellipsoid
 * @returns degrees above the horizontal, −90 to 90
 */
export function elevation(latitude: Degrees, longitude: Degrees, slot: Degrees, height: Metres = 0): Degrees {
  const { east, north, up } = eastNorthUp(latitude, longitude, slot, height);
  return toDegrees(Math.atan2(up, Math.hypot(east, north)));
}
