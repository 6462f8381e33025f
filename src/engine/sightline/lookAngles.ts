/**
 * Look angles and slant range from a site on the WGS84 ellipsoid to a
 * geostationary orbital slot.
 *
 * The site and the slot are put into Earth-centred coordinates, and their
 * difference is turned into east, north and up at the site, with the geodetic
 * latitude for the vertical.
 *
 * Source: WGS84 (NGA.STND.0036); orbit radius 42 164.17 km; the rotation as in
 *   Roddy, Satellite Communications, 4th ed., ch. 3, without its sphere.
 * Accuracy: agrees with satellite.js 7.1.0 to 1e-5 deg and 1 m. The slot is
 *   taken as perfectly geostationary and the path as straight (no refraction).
 * Range: any site; an elevation below 0 means below the horizon. At the point
 *   under the slot the azimuth has no meaning.
 */
import { faults, type Fault } from "../faults";
import type { Degrees, Kilometres, Metres } from "../quantity";
import { cosDeg, sinDeg, toDegrees, wrap360 } from "./angles";
import { GSO_RADIUS_KM, WGS84_A_KM, WGS84_E2 } from "./constants";

export interface LookAngles {
  /** Degrees clockwise from true north, 0 to 360. */
  readonly azimuth: Degrees;
  /** Degrees above the horizontal; negative below it. */
  readonly elevation: Degrees;
  readonly range: Kilometres;
}

/** The direction as a vector of east, north and up parts in km. */
export interface EastNorthUp {
  readonly east: Kilometres;
  readonly north: Kilometres;
  readonly up: Kilometres;
}

/** How near to the zenith an azimuth stops having a meaning. */
const ZENITH_KM = 1e-6;

/**
 * @param latitude geodetic latitude in degrees, north positive
 * @param longitude degrees, east positive
 * @param slot orbital slot in degrees east
 * @param height metres above the ellipsoid
 * @returns azimuth and elevation in degrees, range in km; a fault straight under the slot
 */
export function lookAngles(
  latitude: Degrees,
  longitude: Degrees,
  slot: Degrees,
  height: Metres = 0,
): LookAngles | Fault {
  const { east, north, up } = eastNorthUp(latitude, longitude, slot, height);
  const level = Math.hypot(east, north);
  if (level < ZENITH_KM) return faults.underTheSlot(latitude, slot);
  return {
    azimuth: wrap360(toDegrees(Math.atan2(east, north))),
    elevation: toDegrees(Math.atan2(up, level)),
    range: Math.hypot(level, up),
  };
}

/** The site and the way to the slot in Earth-centred axes, in km. */
export interface EarthCentred {
  /** Radius of curvature in the prime vertical, from the site down to the Earth's axis. */
  readonly normal: Kilometres;
  /** Slot less site, towards longitude 0 on the equator. */
  readonly x: Kilometres;
  /** Slot less site, towards longitude 90 E on the equator. */
  readonly y: Kilometres;
  /** Slot less site, towards the north pole. */
  readonly z: Kilometres;
}

/** Parameters as for {@link lookAngles}. */
export function earthCentred(
  latitude: Degrees,
  longitude: Degrees,
  slot: Degrees,
  height: Metres,
): EarthCentred {
  const sinφ = sinDeg(latitude);
  const cosφ = cosDeg(latitude);
  const h = height / 1000;
  const normal = WGS84_A_KM / Math.sqrt(1 - WGS84_E2 * sinφ * sinφ);
  return {
    normal,
    x: GSO_RADIUS_KM * cosDeg(slot) - (normal + h) * cosφ * cosDeg(longitude),
    y: GSO_RADIUS_KM * sinDeg(slot) - (normal + h) * cosφ * sinDeg(longitude),
    z: -(normal * (1 - WGS84_E2) + h) * sinφ,
  };
}

/** The vector from the site to the slot, in km; parameters as for {@link lookAngles}. */
export function eastNorthUp(
  latitude: Degrees,
  longitude: Degrees,
  slot: Degrees,
  height: Metres,
): EastNorthUp {
  const { x, y, z } = earthCentred(latitude, longitude, slot, height);
  const sinφ = sinDeg(latitude);
  const cosφ = cosDeg(latitude);
  const sinλ = sinDeg(longitude);
  const cosλ = cosDeg(longitude);
  return {
    east: -sinλ * x + cosλ * y,
    north: -sinφ * cosλ * x - sinφ * sinλ * y + cosφ * z,
    up: cosφ * cosλ * x + cosφ * sinλ * y + sinφ * z,
  };
}
