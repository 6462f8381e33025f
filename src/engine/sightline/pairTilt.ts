/**
 * Tilt of a dish that receives two slots: how far the line between them leans,
 * turned about the aim.
 *
 * Source: derivation; the same as sin(tilt) = (sin E_left − sin E_right) /
 *   (2 sin(γ/2) cos E_aim), γ the separation as seen from the site.
 * Accuracy: that of the look angles; held to an independent derivation within 0.002 deg.
 * Range: two slots above the horizon whose middle is not straight overhead.
 *   The order of the slots does not matter: the dish leans one way. On the
 *   equator the line may stand upright; then the sign is that of a site just
 *   north of it.
 */
import { faults, isFault, type Fault } from "../faults";
import type { Degrees, Metres } from "../quantity";
import { wrap180 } from "./angles";
import { leanOfLine, opposite, pictureAlong } from "./boresight";
import { add, lengthOf, unit } from "./vectors";
import { visibleSlot } from "./visibleSlot";

/** Directions closer than this, or sums shorter than this, have no line or no middle. */
const COINCIDENT = 1e-9;

/**
 * @param latitude geodetic latitude in degrees, north positive
 * @param longitude degrees, east positive
 * @param slotA one slot in degrees east
 * @param slotB the other
 * @param height metres above the ellipsoid
 * @returns degrees, positive = clockwise for a person facing the slots, the right end lower
 */
export function pairTilt(
  latitude: Degrees,
  longitude: Degrees,
  slotA: Degrees,
  slotB: Degrees,
  height: Metres = 0,
): Degrees | Fault {
  const a = visibleSlot(latitude, longitude, slotA, height);
  if (isFault(a)) return a;
  const b = visibleSlot(latitude, longitude, slotB, height);
  if (isFault(b)) return b;
  const line = wrap180(slotB - slotA) < 0 ? add(b, a, -1) : add(a, b, -1);
  if (lengthOf(line) < COINCIDENT) return faults.sameSlots(slotA);
  const sum = add(a, b);
  const picture = lengthOf(sum) < COINCIDENT ? undefined : pictureAlong(unit(sum));
  if (!picture) return faults.noPairAim(latitude);
  // `line` runs westwards, as a site in the north sees the arc from left to right.
  return leanOfLine(line, picture.right, opposite(picture.up));
}
