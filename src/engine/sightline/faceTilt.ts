/**
 * Lean of an offset dish's rim: the beam leaves it higher than square.
 *
 * Source: plane geometry, elevation − offset; a published table for 22 deg
 *   agrees in every row seen.
 * Accuracy: exact on a plumb mast. Most mounts' scales include the offset
 *   already: set those to the elevation itself. This angle is for a plumb line
 *   or an inclinometer laid on the rim; to mix the two is 22 to 26 deg wrong.
 * Range: any; negative when the rim leans forward.
 */
import type { Degrees } from "../quantity";

/**
 * @param elevation of the beam, in degrees
 * @param offset angle of the dish, in degrees
 * @returns degrees that the rim leans back from the vertical; negative when it leans forward
 */
export function faceTilt(elevation: Degrees, offset: Degrees): Degrees {
  return elevation - offset;
}
