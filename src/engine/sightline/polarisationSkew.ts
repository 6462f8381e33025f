/**
 * Turn of a linear polarisation at the site, for setting the feed.
 *
 * The polarisation vector at the slot (V: along the Earth's axis, H: along the
 * orbit) is projected square to the line of sight and compared with the level
 * and the upright of a person at the dish.
 *
 * Source: Roddy, Satellite Communications, 4th ed., ch. 5, eqs. 5.9–5.16, here
 *   on WGS84; "simple" is ψ = atan(sin(λ_site − λ_slot) / tan φ) (Kurek, 1991
 *   handbook, as quoted).
 * Accuracy: V, H and simple lie within 0.6 deg of each other at usual sites;
 *   a real transponder may be skewed by design, which no formula knows.
 * Range: any slot that the site sees, except straight overhead. On the equator
 *   the answer is ±90, with the sign of a site just north of it.
 */
import { faults, isFault, type Fault } from "../faults";
import type { Degrees } from "../quantity";
import { cosDeg, sinDeg, tanDeg, toDegrees } from "./angles";
import { leanOfLine, opposite, pictureAlong } from "./boresight";
import type { Vector } from "./vectors";
import { visibleSlot } from "./visibleSlot";

export type Plane = "V" | "H" | "simple";

/**
 * @param latitude geodetic latitude in degrees, north positive
 * @param longitude degrees, east positive
 * @param slot orbital slot in degrees east
 * @param plane V, H, or simple for the handbook formula
 * @returns degrees, clockwise positive for a person at the dish facing the slot
 */
export function polarisationSkew(
  latitude: Degrees,
  longitude: Degrees,
  slot: Degrees,
  plane: Plane = "V",
): Degrees | Fault {
  const aim = visibleSlot(latitude, longitude, slot, 0);
  if (isFault(aim)) return aim;
  const picture = pictureAlong(aim);
  if (!picture) return faults.underTheSlot(latitude, slot);
  const { right, up } = picture;
  switch (plane) {
    case "V":
      return leanOfLine(earthAxis(latitude), up, right);
    case "H":
      return leanOfLine(westAtSlot(latitude, longitude, slot), right, opposite(up));
    case "simple": {
      const across = sinDeg(longitude - slot);
      if (latitude === 0) return across > 0 ? 90 : -90;
      return toDegrees(Math.atan(across / tanDeg(latitude)));
    }
  }
}

/** The Earth's axis northwards, at the site. */
const earthAxis = (latitude: Degrees): Vector => ({
  east: 0,
  north: cosDeg(latitude),
  up: sinDeg(latitude),
});

/** The orbit's tangent at the slot, westwards, as the site's east, north and up see it. */
function westAtSlot(latitude: Degrees, longitude: Degrees, slot: Degrees): Vector {
  const gap = slot - longitude;
  return {
    east: -cosDeg(gap),
    north: -sinDeg(latitude) * sinDeg(gap),
    up: cosDeg(latitude) * sinDeg(gap),
  };
}
