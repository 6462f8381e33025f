/**
 * Look angles and slant range, line by line: the steps of lookAngles, with its
 * sources, accuracy and range.
 */
import { isFault, type Fault } from "../faults";
import type { Degrees, Metres } from "../quantity";
import { toDegrees } from "../sightline/angles";
import { GSO_RADIUS_KM, WGS84_A_KM, WGS84_E2, WGS84_F } from "../sightline/constants";
import { earthCentred, eastNorthUp, lookAngles, type EastNorthUp } from "../sightline/lookAngles";
import { refraction } from "../sightline/refraction";
import { arithmetic, Working, type Step } from "./steps";

const WGS84 = "WGS84 (NGA.STND.0036)";
const TURN = "Rotation into the site's axes, after Roddy, Satellite Communications, 4th ed., ch. 3";
const PLANE = "Trigonometry";

/** From the site and the slot to the east, north and up parts of the line between them. */
function sight(
  work: Working,
  latitude: Degrees,
  longitude: Degrees,
  slot: Degrees,
  height: Metres,
): EastNorthUp {
  const φ = work.given("φ", "latitude of the site, north positive", latitude, "deg");
  const λ = work.given("λ", "longitude of the site, east positive", longitude, "deg");
  const s = work.given("λs", "orbital slot, degrees east", slot, "deg");
  const h = work.given("h", "height of the site", height, "m") / 1000;
  const a = work.taken("a", "radius of the Earth at the equator", WGS84_A_KM, "km", WGS84);
  const r = work.taken(
    "r",
    "radius of the geostationary orbit",
    GSO_RADIUS_KM,
    "km",
    "orbit of one sidereal day",
  );
  const e2 = work.worked(
    "e²",
    "square of the ellipsoid's eccentricity, f·(2 − f)",
    WGS84_E2,
    "",
    arithmetic`1/${1 / WGS84_F}·(2 − 1/${1 / WGS84_F})`,
    WGS84,
  );
  const { normal, x, y, z } = earthCentred(latitude, longitude, slot, height);
  work.worked(
    "N",
    "radius of curvature, a/√(1 − e²·sin²φ)",
    normal,
    "km",
    arithmetic`${a}/√(1 − ${e2}·sin(${φ})^2)`,
    WGS84,
  );
  work.worked(
    "x",
    "slot less site towards 0° E, r·cos λs − (N + h)·cos φ·cos λ",
    x,
    "km",
    arithmetic`${r}·cos(${s}) − (${normal} + ${h})·cos(${φ})·cos(${λ})`,
    WGS84,
  );
  work.worked(
    "y",
    "slot less site towards 90° E, r·sin λs − (N + h)·cos φ·sin λ",
    y,
    "km",
    arithmetic`${r}·sin(${s}) − (${normal} + ${h})·cos(${φ})·sin(${λ})`,
    WGS84,
  );
  work.worked(
    "z",
    "slot less site towards the pole, −(N·(1 − e²) + h)·sin φ",
    z,
    "km",
    arithmetic`0 − (${normal}·(1 − ${e2}) + ${h})·sin(${φ})`,
    WGS84,
  );
  const parts = eastNorthUp(latitude, longitude, slot, height);
  work.worked(
    "e",
    "eastward part, −sin λ·x + cos λ·y",
    parts.east,
    "km",
    arithmetic`cos(${λ})·${y} − sin(${λ})·${x}`,
    TURN,
  );
  work.worked(
    "n",
    "northward part, −sin φ·cos λ·x − sin φ·sin λ·y + cos φ·z",
    parts.north,
    "km",
    arithmetic`cos(${φ})·${z} − sin(${φ})·cos(${λ})·${x} − sin(${φ})·sin(${λ})·${y}`,
    TURN,
  );
  work.worked(
    "u",
    "upward part, cos φ·cos λ·x + cos φ·sin λ·y + sin φ·z",
    parts.up,
    "km",
    arithmetic`cos(${φ})·cos(${λ})·${x} + cos(${φ})·sin(${λ})·${y} + sin(${φ})·${z}`,
    TURN,
  );
  return parts;
}

function azimuthLine(work: Working, { east, north }: EastNorthUp, azimuth: Degrees): void {
  const turn = Math.atan2(east, north) < 0 && azimuth > 0 ? " + 360" : "";
  work.worked(
    "Az",
    "azimuth, clockwise from true north: atan2(e, n), a whole turn added when it is negative",
    azimuth,
    "deg",
    arithmetic`atan2(${east}; ${north})` + turn,
    PLANE,
  );
}

function elevationLines(work: Working, { east, north, up }: EastNorthUp): void {
  const level = work.worked(
    "l",
    "level part, √(e² + n²)",
    Math.hypot(east, north),
    "km",
    arithmetic`√(${east}^2 + ${north}^2)`,
    PLANE,
  );
  work.worked(
    "El",
    "elevation above the horizontal, atan2(u, l)",
    toDegrees(Math.atan2(up, level)),
    "deg",
    arithmetic`atan2(${up}; ${level})`,
    PLANE,
  );
}

const rangeLine = (work: Working, { east, north, up }: EastNorthUp): number =>
  work.worked(
    "d",
    "slant range, √(e² + n² + u²)",
    Math.hypot(east, north, up),
    "km",
    arithmetic`√(${east}^2 + ${north}^2 + ${up}^2)`,
    PLANE,
  );

/** A calculation of a site's sight of a slot; parameters as for lookAngles. */
type SightSteps<R> = (latitude: Degrees, longitude: Degrees, slot: Degrees, height: Metres) => R;

export const azimuthSteps: SightSteps<readonly Step[] | Fault> = (...site) => {
  const angles = lookAngles(...site);
  if (isFault(angles)) return angles;
  const work = new Working();
  azimuthLine(work, sight(work, ...site), angles.azimuth);
  return work.steps;
};

export const elevationSteps: SightSteps<readonly Step[]> = (...site) => {
  const work = new Working();
  elevationLines(work, sight(work, ...site));
  return work.steps;
};

export const slantRangeSteps: SightSteps<readonly Step[]> = (...site) => {
  const work = new Working();
  rangeLine(work, sight(work, ...site));
  return work.steps;
};

/** Azimuth, elevation and range, each the last line of its own part. */
export const lookAngleSteps: SightSteps<readonly Step[] | Fault> = (...site) => {
  const angles = lookAngles(...site);
  if (isFault(angles)) return angles;
  const work = new Working();
  const parts = sight(work, ...site);
  azimuthLine(work, parts, angles.azimuth);
  elevationLines(work, parts);
  rangeLine(work, parts);
  return work.steps;
};

const P834 = "ITU-R P.834, approximation for a known true elevation";

/** @see refraction for the equation, its range and its accuracy */
export function refractionSteps(elevation: Degrees, height: Metres): readonly Step[] {
  const work = new Working();
  const θ = work.given("θ", "true elevation", elevation, "deg");
  const h = work.given("h", "height above sea level", height, "m") / 1000;
  const ground = work.worked(
    "g",
    "terms without the height",
    1.728 + 0.5411 * θ + 0.03723 * θ ** 2,
    "",
    arithmetic`1.728 + 0.5411·${θ} + 0.03723·${θ}^2`,
    P834,
  );
  const linear = work.worked(
    "h1",
    "terms with the height in km",
    h * (0.1815 + 0.06272 * θ + 0.01138 * θ ** 2),
    "",
    arithmetic`${h}·(0.1815 + 0.06272·${θ} + 0.01138·${θ}^2)`,
    P834,
  );
  const square = work.worked(
    "h2",
    "terms with the square of the height",
    h ** 2 * (0.01727 + 0.008288 * θ),
    "",
    arithmetic`${h}^2·(0.01727 + 0.008288·${θ})`,
    P834,
  );
  work.worked(
    "τ",
    "refraction, 1/(g + h1 + h2)",
    refraction(elevation, height),
    "deg",
    arithmetic`1/(${ground} + ${linear} + ${square})`,
    P834,
  );
  return work.steps;
}
