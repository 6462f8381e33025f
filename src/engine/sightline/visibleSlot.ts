/**
 * Unit vector from a site on WGS84 to an orbital slot that the site can see.
 *
 * Source, accuracy: as for lookAngles.
 * Range: elevation 0 or more, without refraction; a fault below the horizon.
 */
import { faults, type Fault } from "../faults";
import type { Degrees, Metres } from "../quantity";
import { asinDeg } from "./angles";
import { eastNorthUp } from "./lookAngles";
import { unit, type Vector } from "./vectors";

/**
 * @param latitude geodetic latitude in degrees, north positive
 * @param longitude degrees, east positive
 * @param slot orbital slot in degrees east
 * @param height metres above the ellipsoid
 * @returns east, north and up parts of a vector of length 1
 */
export function visibleSlot(
  latitude: Degrees,
  longitude: Degrees,
  slot: Degrees,
  height: Metres,
): Vector | Fault {
  const sight = unit(eastNorthUp(latitude, longitude, slot, height));
  return sight.up < 0 ? faults.belowHorizon(slot, asinDeg(sight.up)) : sight;
}
