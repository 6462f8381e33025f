/** What the room before an obstacle, the height of a ray and the rim of a dish invite beyond their figures. */
import { cosDeg, tanDeg, toDegrees } from "../../engine/sightline/angles";
import type { Slip } from "../exercise";
import { tangentSlips } from "./tangents";

interface Scene {
  readonly obstacle: number;
  readonly dish: number;
  readonly margin: number;
  readonly chimney: number;
}

interface Rim {
  readonly rimWidth: number;
  readonly rimHeight: number;
}

export const setbackSlips: readonly Slip<Scene>[] = [
  ...tangentSlips<Scene>(
    ({ obstacle, dish, margin }, { elevation }, tan) => (obstacle - dish) / tan(elevation! - margin),
  ),
  {
    name: "tangents subtracted instead of angles",
    wrong: ({ obstacle, dish, margin }, { elevation }) =>
      (obstacle - dish) / (tanDeg(elevation!) - tanDeg(margin)),
    seldom: true,
  },
  {
    name: "margin taken off the metres instead of the angle",
    wrong: ({ obstacle, dish, margin }, { elevation }) => (obstacle - dish) / tanDeg(elevation!) - margin,
    seldom: true,
  },
  {
    name: "margin taken for the elevation",
    wrong: ({ obstacle, dish, margin }) => (obstacle - dish) / tanDeg(margin),
    seldom: true,
  },
];

export const raySlips: readonly Slip<Scene>[] = [
  ...tangentSlips<Scene>(({ chimney, dish }, { elevation }, tan) => dish + chimney * tan(elevation!)),
  {
    name: "margin taken off the elevation",
    wrong: ({ chimney, dish, margin }, { elevation }) => dish + chimney * tanDeg(elevation! - margin),
    seldom: true,
  },
  {
    name: "margin added to the elevation",
    wrong: ({ chimney, dish, margin }, { elevation }) => dish + chimney * tanDeg(elevation! + margin),
    seldom: true,
  },
  {
    name: "height and distance added before the multiplication",
    wrong: ({ chimney, dish }, { elevation }) => (dish + chimney) * tanDeg(elevation!),
    seldom: true,
  },
  {
    name: "distance of 4 taken",
    wrong: ({ dish }, e) => (e.setback === undefined ? undefined : dish + e.setback * tanDeg(e.elevation!)),
    seldom: true,
  },
  {
    name: "distance of 4 taken and height of the dish left out",
    wrong: (_, e) => (e.setback === undefined ? undefined : e.setback * tanDeg(e.elevation!)),
    seldom: true,
  },
  {
    name: "length along the ray taken",
    wrong: ({ chimney, dish }, { elevation }) => dish + chimney / cosDeg(elevation!),
    seldom: true,
  },
];

/** In the width and the height of the rim. */
const RIMS: readonly (readonly [string, (width: number, height: number) => number, boolean?])[] = [
  ["sine for cosine", (w, h) => toDegrees(Math.asin(w / h))],
  ["answer left in radians", (w, h) => Math.acos(w / h)],
  ["answer in gradians", (w, h) => toDegrees(Math.acos(w / h)) / 0.9],
  ["arccosine left out", (w, h) => w / h],
  ["arctangent for arccosine", (w, h) => toDegrees(Math.atan(w / h))],
  ["arctangent of height over width", (w, h) => toDegrees(Math.atan(h / w)), true],
  ["cosine for arccosine", (w, h) => cosDeg(w / h), true],
  ["arcsine of the difference over the height", (w, h) => toDegrees(Math.asin((h - w) / h)), true],
  ["difference of width and height given", (w, h) => h - w, true],
];

export const rimSlips: readonly Slip<Rim>[] = RIMS.map(([name, wrong, seldom = false]) => ({
  name,
  wrong: ({ rimWidth, rimHeight }: Rim) => wrong(rimWidth, rimHeight),
  seldom,
}));
