/**
 * What the short forms of azimuth and elevation invite (a sphere of 6371 km,
 * after Roddy, Satellite Communications, 4th ed., ch. 3).
 */
import { cosDeg, sinDeg, toDegrees, toRadians, wrap360 } from "../../engine/sightline/angles";
import type { Slip } from "../exercise";

export interface Sight {
  /** Degrees, north and east positive. */
  readonly latitude: number;
  readonly longitude: number;
  readonly slot: number;
}

/** Radius of the Earth over that of the orbit. */
const RADII = 6371 / 42164.17;
const DEGREES_A_GRAD = 0.9;
const tanDeg = (degrees: number): number => Math.tan(toRadians(degrees));
const grad = (of: (radians: number) => number) => (degrees: number) => of((degrees * Math.PI) / 200);
const atan = (tangent: number): number => toDegrees(Math.atan(tangent));
const atan2 = (y: number, x: number): number => wrap360(toDegrees(Math.atan2(y, x)));

type Wave = (angle: number) => number;

/** In degrees, with the sines and cosines that it is given. */
export const shortAzimuth = (
  { latitude, longitude, slot }: Sight,
  sin: Wave = sinDeg,
  cos: Wave = cosDeg,
): number => atan2(sin(slot - longitude), -sin(latitude) * cos(slot - longitude));

/** Cosine of the angle between site and slot at the Earth's centre. */
const centralCosine = ({ latitude, longitude, slot }: Sight, cos: Wave = cosDeg): number =>
  cos(slot - longitude) * cos(latitude);
const elevationOf = (cosine: number, ratio = RADII): number =>
  atan((cosine - ratio) / Math.sqrt(1 - cosine * cosine));
export const shortElevation = (sight: Sight): number => elevationOf(centralCosine(sight));

const RADIANS_TAKEN = "degrees used as radians";
const RADIANS_GIVEN = "answer left in radians";
const GRADIANS = "calculator set to gradians";

export const azimuthSlips: readonly Slip<Sight>[] = [
  { name: RADIANS_TAKEN, wrong: (n) => shortAzimuth(n, Math.sin, Math.cos) },
  {
    name: "east and west exchanged",
    wrong: ({ latitude, longitude, slot }) => shortAzimuth({ latitude, longitude: slot, slot: longitude }),
  },
  { name: "half a turn left out", wrong: (n) => wrap360(shortAzimuth(n) + 180) },
  { name: RADIANS_GIVEN, wrong: (n) => toRadians(shortAzimuth(n)) },
  {
    name: "arctangent without its quadrant",
    wrong: ({ latitude, longitude, slot }) => atan(tanDeg(slot - longitude) / -sinDeg(latitude)),
  },
  {
    name: "angle off the meridian given",
    wrong: ({ latitude, longitude, slot }) => Math.abs(atan(tanDeg(slot - longitude) / sinDeg(latitude))),
    seldom: true,
  },
  {
    name: "360 not added",
    wrong: (n) => (shortAzimuth(n) > 180 ? shortAzimuth(n) - 360 : undefined),
  },
  {
    name: "cosine of the difference left out",
    wrong: ({ latitude, longitude, slot }) => atan2(sinDeg(slot - longitude), -sinDeg(latitude)),
  },
  {
    name: GRADIANS,
    wrong: (n) => {
      const degrees = shortAzimuth(n, grad(Math.sin), grad(Math.cos));
      return wrap360((degrees > 180 ? degrees - 360 : degrees) / DEGREES_A_GRAD);
    },
  },
  {
    name: "latitude and longitude exchanged",
    wrong: ({ latitude, longitude, slot }) =>
      shortAzimuth({ latitude: longitude, longitude: latitude, slot }),
    seldom: true,
  },
  {
    name: "the two figures of ATAN2 exchanged",
    wrong: ({ latitude, longitude, slot }) =>
      atan2(-sinDeg(latitude) * cosDeg(slot - longitude), sinDeg(slot - longitude)),
  },
  {
    name: "cosine taken for the sine of the latitude",
    wrong: ({ latitude, longitude, slot }) =>
      atan2(sinDeg(slot - longitude), -cosDeg(latitude) * cosDeg(slot - longitude)),
    seldom: true,
  },
  {
    name: "latitude left out",
    wrong: ({ longitude, slot }) => wrap360(180 - (slot - longitude)),
    seldom: true,
  },
  {
    name: "latitude and difference of longitudes exchanged",
    wrong: ({ latitude, longitude, slot }) =>
      atan2(sinDeg(latitude), -sinDeg(slot - longitude) * cosDeg(latitude)),
    seldom: true,
  },
  { name: "counted from east", wrong: (n) => wrap360(shortAzimuth(n) - 90), seldom: true },
];

/** In the cosine and the sine of the angle at the Earth's centre. */
const BY_CENTRAL: readonly (readonly [string, (cos: number, sin: number) => number, boolean?])[] = [
  ["0.1511 added instead of subtracted", (c, s) => atan((c + RADII) / s)],
  ["Earth's radius left out", (c) => 90 - toDegrees(Math.acos(c))],
  ["taken from the vertical", (c) => 90 - elevationOf(c)],
  [RADIANS_GIVEN, (c) => toRadians(elevationOf(c))],
  ["cosine taken for the sine of b", (c) => atan((c - RADII) / c), true],
  ["not divided by the sine of b", (c) => atan(c - RADII), true],
  ["brackets left out", (c, s) => atan(c - RADII / s), true],
  ["arcsine for arctangent", (c, s) => toDegrees(Math.asin((c - RADII) / s)), true],
  ["arctangent left out", (c, s) => (c - RADII) / s, true],
  ["decimal point of 0.1511 misplaced", (c) => elevationOf(c, RADII / 10), true],
  ["orbit over Earth taken for Earth over orbit", (c) => elevationOf(c, 1 / RADII), true],
  ["angle b given", (c) => toDegrees(Math.acos(c)), true],
];

export const elevationSlips: readonly Slip<Sight>[] = [
  { name: RADIANS_TAKEN, wrong: (n) => elevationOf(centralCosine(n, Math.cos)) },
  { name: "latitude left out", wrong: (n) => elevationOf(cosDeg(n.slot - n.longitude)) },
  { name: "difference of longitudes left out", wrong: (n) => elevationOf(cosDeg(n.latitude)) },
  ...BY_CENTRAL.map(([name, wrong, seldom = false]): Slip<Sight> => ({
    name,
    wrong: (n) => wrong(centralCosine(n), Math.sqrt(1 - centralCosine(n) ** 2)),
    seldom,
  })),
  {
    name: GRADIANS,
    wrong: (n) => {
      const cosine = centralCosine(n, grad(Math.cos));
      return elevationOf(cosine) / DEGREES_A_GRAD;
    },
  },
  {
    name: "latitude and longitude exchanged",
    wrong: ({ latitude, longitude, slot }) =>
      shortElevation({ latitude: longitude, longitude: latitude, slot }),
    seldom: true,
  },
  {
    name: "sine taken for the cosine of the latitude",
    wrong: (n) => elevationOf(cosDeg(n.slot - n.longitude) * sinDeg(n.latitude)),
    seldom: true,
  },
  {
    name: "sine taken for the cosine of the difference",
    wrong: (n) => elevationOf(sinDeg(n.slot - n.longitude) * cosDeg(n.latitude)),
    seldom: true,
  },
  { name: "90 less the latitude given", wrong: (n) => 90 - Math.abs(n.latitude), seldom: true },
];
