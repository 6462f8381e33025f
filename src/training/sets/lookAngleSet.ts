/**
 * Look angles, compass bearing, clearance and tilt of one dish.
 *
 * Key: engine/sightline, on the WGS84 ellipsoid. The short form of the hints
 * (a sphere of 6371 km, after Roddy, Satellite Communications, 4th ed., ch. 3)
 * differs by at most 0.03 deg, inside the tolerance.
 */
import { isFault } from "../../engine/faults";
import { tanDeg, toRadians, wrap360 } from "../../engine/sightline/angles";
import { faceTilt } from "../../engine/sightline/faceTilt";
import { lookAngles } from "../../engine/sightline/lookAngles";
import { magneticField } from "../../engine/sightline/magneticField";
import { offsetAngle } from "../../engine/sightline/offsetAngle";
import { rayHeight } from "../../engine/sightline/rayHeight";
import { setback } from "../../engine/sightline/setback";
import { arithmetic, Working } from "../../engine/working/steps";
import { ROOF_CAUTION } from "../cautionLines";
import { trainingSet, type Family, type Given } from "../exercise";
import { azimuthSlips, elevationSlips, shortAzimuth, shortElevation } from "../slips/lookAngles";
import { raySlips, rimSlips, setbackSlips } from "../slips/obstacles";
import { added, eastOrWest, northOrSouth, takenOff } from "../slips/terms";
import { workedBy } from "../workedBy";

interface Numbers {
  readonly latitude: number;
  readonly longitude: number;
  readonly slot: number;
  /** Degrees, east positive, as a chart would say. */
  readonly declination: number;
  readonly obstacle: number;
  readonly dish: number;
  readonly margin: number;
  readonly chimney: number;
  readonly rimWidth: number;
  readonly rimHeight: number;
}

/** The declination that is handed out; a fixed day, so that the sheets don't change with the calendar. */
const CHART_DAY = new Date(Date.UTC(2026, 6, 1));
const westOrEast = (label: string, degrees: number): Given => ({
  label,
  value: Math.abs(degrees),
  unit: degrees < 0 ? "deg west" : "deg east",
});

const site = ({ latitude, longitude, slot }: Numbers): Given[] => [
  {
    label: "Latitude",
    value: Math.abs(latitude),
    unit: latitude < 0 ? "deg south" : "deg north",
    of: "latitude",
    invites: [northOrSouth],
  },
  { ...westOrEast("Longitude", longitude), of: "longitude", invites: [eastOrWest] },
  { ...westOrEast("Orbital slot", slot), called: "slot", of: "slot", invites: [eastOrWest] },
];

const angles = ({ latitude, longitude, slot }: Numbers) => lookAngles(latitude, longitude, slot);

const OBSTACLE = (n: Numbers): Given => ({
  label: "Top of the wall above the ground",
  called: "height of the wall",
  value: n.obstacle,
  unit: "m",
  of: "obstacle",
});
const DISH = (n: Numbers, invites: readonly Family[]): Given => ({
  label: "Middle of the dish above the ground",
  called: "height of the dish",
  value: n.dish,
  unit: "m",
  of: "dish",
  invites,
});
const MARGIN = (n: Numbers): Given => ({
  label: "Margin to keep below the ray",
  called: "margin",
  value: n.margin,
  unit: "deg",
  of: "margin",
  invites: [takenOff],
});

export const lookAngleSet = trainingSet<Numbers>({
  id: "look-angles",
  title: "Look angles and compass",
  about: "Where a dish points, what the compass shows, what stands in the way, and how the face leans.",
  cautions: [
    ROOF_CAUTION,
    "Iron on a roof or mast turns a compass by degrees: take the bearing away from it, twice.",
  ],
  draw: (random) => {
    const latitude = random.stepped(33, 58, 0.1) * random.pick([1, 1, -1]);
    const longitude = random.stepped(-122, 150, 0.1);
    const slot = Math.round(longitude) + random.whole(-32, 32);
    const dish = random.stepped(1, 3, 0.5);
    const rimWidth = random.stepped(600, 1200, 10);
    const field = magneticField(latitude, longitude, CHART_DAY);
    return {
      latitude,
      longitude,
      slot,
      declination: isFault(field) ? 0 : Number(field.declination.toFixed(1)),
      dish,
      obstacle: dish + random.stepped(3, 12, 0.5),
      margin: random.whole(2, 5),
      chimney: random.stepped(6, 30, 0.5),
      rimWidth,
      rimHeight: rimWidth + 10 * random.whole(Math.ceil(rimWidth * 0.005), Math.floor(rimWidth * 0.011)),
    };
  },
  plausible: ({ longitude, slot, declination }, { azimuth, elevation, compass }) =>
    Math.abs(slot - longitude) > 3 &&
    Math.abs(declination) >= 3 &&
    Math.abs(declination) <= 25 &&
    Number(elevation) >= 18 &&
    Number(elevation) <= 55 &&
    [azimuth, compass].every((angle) => Number(angle) > 4 && Number(angle) < 356),
  questions: [
    {
      key: "azimuth",
      heading: "True azimuth",
      task: "Which way does the dish point, in degrees clockwise from true north?",
      given: site,
      answer: { kind: "number", unit: "deg", decimals: 1, direction: true },
      needs: [],
      solve: (n) => {
        const found = angles(n);
        return isFault(found) ? found : found.azimuth;
      },
      formula: (n) => shortAzimuth(n),
      slips: azimuthSlips,
      hints: [
        "North and east count positive. With D = slot - site longitude: azimuth = atan2(sin D, -sin(latitude)·cos D), 360 added if negative.",
        "A spreadsheet's ATAN2 takes the second of the two first, and its sines take radians.",
      ],
      example: ({ latitude, longitude, slot }) => workedBy("AZIMUTH", [latitude, longitude, slot, 0]),
    },
    {
      key: "elevation",
      heading: "Elevation",
      task: "How high above the horizontal does the slot stand, seen from the same site?",
      given: site,
      answer: { kind: "number", unit: "deg", decimals: 1 },
      needs: [],
      solve: (n) => {
        const found = angles(n);
        return isFault(found) ? found : found.elevation;
      },
      formula: shortElevation,
      slips: elevationSlips,
      hints: [
        "With cos b = cos D·cos(latitude): elevation = atan((cos b - 0.1511)/sin b). 0.1511 is the Earth's radius over the orbit's.",
      ],
      example: ({ latitude, longitude, slot }) => workedBy("ELEVATION", [latitude, longitude, slot, 0], "u"),
    },
    {
      key: "compass",
      heading: "Compass bearing",
      task: "What does a magnetic compass show in that direction? Use your answer to 1.",
      given: ({ declination }) => [
        {
          ...westOrEast("Declination on the chart", declination),
          called: "declination",
          of: "declination",
          invites: [takenOff],
        },
      ],
      answer: { kind: "number", unit: "deg", decimals: 0, direction: true },
      needs: ["azimuth"],
      solve: ({ declination }, { azimuth }) => wrap360(azimuth! - declination),
      slips: [
        {
          name: "half a turn off",
          wrong: ({ declination }, { azimuth }) => wrap360(azimuth! - declination + 180),
          seldom: true,
        },
        {
          name: "counted anticlockwise",
          wrong: ({ declination }, { azimuth }) => wrap360(declination - azimuth!),
          seldom: true,
        },
      ],
      hints: ["Compass bearing = true azimuth - declination, with the declination positive to the east."],
      example: ({ declination }, { azimuth }) => {
        const work = new Working();
        const az = work.given("Az", "true azimuth", azimuth!, "deg");
        const d = work.given("D", "declination, east positive", declination, "deg");
        const turn = az - d < 0 ? " + 360" : az - d >= 360 ? " − 360" : "";
        work.worked(
          "M",
          "compass bearing, Az − D",
          wrap360(az - d),
          "deg",
          arithmetic`${az} − ${d}` + turn,
          "Definition of the declination",
        );
        return work.steps;
      },
    },
    {
      key: "setback",
      heading: "Distance from obstacle",
      task: "How far must the dish stand back, level, from a wall in its direction? Use your answer to 2.",
      given: (n) => [OBSTACLE(n), DISH(n, [takenOff]), MARGIN(n)],
      answer: { kind: "number", unit: "m", decimals: 1 },
      needs: ["elevation"],
      solve: ({ obstacle, dish, margin }, { elevation }) => setback(elevation!, obstacle, dish, margin),
      formula: ({ obstacle, dish, margin }, { elevation }) => (obstacle - dish) / tanDeg(elevation! - margin),
      slips: setbackSlips,
      hints: ["Distance = (wall - dish)/tan(elevation - margin)."],
      example: ({ obstacle, dish, margin }, { elevation }) => {
        const work = new Working();
        const ho = work.given("Ho", "top of the wall", obstacle, "m");
        const hd = work.given("Hd", "middle of the dish", dish, "m");
        const el = work.given("El", "elevation", elevation!, "deg");
        const m = work.given("m", "margin", margin, "deg");
        const free = work.worked("E", "elevation less margin", el - m, "deg", arithmetic`${el} − ${m}`, "");
        work.worked(
          "x",
          "distance, (Ho − Hd)/tan E",
          setback(el, ho, hd, m) as number,
          "m",
          arithmetic`(${ho} − ${hd})/tan(${free})`,
          "Plane geometry",
        );
        return work.steps;
      },
    },
    {
      key: "ray",
      heading: "Height of the ray",
      task: "How high above the ground does the middle of the beam pass over a chimney? Use your answer to 2; the dish stands as in 4.",
      given: ({ chimney }) => [
        {
          label: "Level distance to the chimney",
          called: "distance",
          value: chimney,
          unit: "m",
          of: "chimney",
        },
      ],
      before: (n) => [DISH(n, [added])],
      answer: { kind: "number", unit: "m", decimals: 1 },
      needs: ["elevation"],
      solve: ({ chimney, dish }, { elevation }) => rayHeight(elevation!, chimney, dish),
      formula: ({ chimney, dish }, { elevation }) => dish + chimney * tanDeg(elevation!),
      slips: raySlips,
      hints: ["Height = height of the dish + distance·tan(elevation)."],
      example: ({ chimney, dish }, { elevation }) => {
        const work = new Working();
        const hd = work.given("Hd", "middle of the dish", dish, "m");
        const d = work.given("d", "distance", chimney, "m");
        const el = work.given("El", "elevation", elevation!, "deg");
        work.worked(
          "h",
          "height of the ray, Hd + d·tan El",
          rayHeight(el, d, hd) as number,
          "m",
          arithmetic`${hd} + ${d}·tan(${el})`,
          "Plane geometry",
        );
        return work.steps;
      },
    },
    {
      key: "offset",
      heading: "Offset angle of the dish",
      task: "The rim of an offset dish is taller than wide. What is its offset angle?",
      given: ({ rimWidth, rimHeight }) => [
        { label: "Width of the rim", value: rimWidth, unit: "mm", of: "rimWidth" },
        { label: "Height of the rim", value: rimHeight, unit: "mm", of: "rimHeight" },
      ],
      answer: { kind: "number", unit: "deg", decimals: 1 },
      needs: [],
      solve: ({ rimWidth, rimHeight }) => offsetAngle(rimWidth, rimHeight),
      slips: rimSlips,
      hints: ["Offset angle = arccos(width/height). A spreadsheet's ACOS answers in radians."],
      example: ({ rimWidth, rimHeight }) => {
        const work = new Working();
        const w = work.given("w", "width of the rim", rimWidth, "mm");
        const h = work.given("h", "height of the rim", rimHeight, "mm");
        const ratio = work.worked("c", "width over height", w / h, "", arithmetic`${w}/${h}`, "");
        work.worked(
          "O",
          "offset angle, arccos c",
          offsetAngle(w, h) as number,
          "deg",
          arithmetic`arccos(${ratio})`,
          "Wade, ch. 5",
        );
        return work.steps;
      },
    },
    {
      key: "tilt",
      heading: "Lean of the face",
      task: "How far does the face of that dish lean back from the vertical? Use your answers to 2 and 6.",
      given: () => [],
      answer: { kind: "number", unit: "deg", decimals: 1 },
      needs: ["elevation", "offset"],
      solve: (_, { elevation, offset }) => faceTilt(elevation!, offset!),
      uses: { offset: [takenOff] },
      slips: [
        {
          name: "taken from the horizontal",
          wrong: (_, { elevation, offset }) => 90 - (elevation! - offset!),
          seldom: true,
        },
        {
          name: "half of the offset taken",
          wrong: (_, { elevation, offset }) => elevation! - offset! / 2,
          seldom: true,
        },
        {
          name: "margin taken off as well",
          wrong: ({ margin }, { elevation, offset }) => elevation! - offset! - margin,
          seldom: true,
        },
        {
          name: "offset left in radians",
          wrong: (_, { elevation, offset }) => elevation! - toRadians(offset!),
        },
        {
          name: "mean of the two taken",
          wrong: (_, { elevation, offset }) => (elevation! + offset!) / 2,
          seldom: true,
        },
      ],
      hints: [
        "Face tilt = elevation of the beam - offset angle. Below zero the face leans forward.",
        "Most mounts' scales include the offset already: read the mount's own drawing.",
      ],
      example: (_, { elevation, offset }) => {
        const work = new Working();
        const el = work.given("El", "elevation", elevation!, "deg");
        const o = work.given("O", "offset angle", offset!, "deg");
        work.worked(
          "t",
          "lean of the face, El − O",
          faceTilt(el, o),
          "deg",
          arithmetic`${el} − ${o}`,
          "Geometry of an offset dish",
        );
        return work.steps;
      },
    },
  ],
});
