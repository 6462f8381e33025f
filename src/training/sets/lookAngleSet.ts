/**
 * Look angles, compass bearing, clearance and tilt of one dish.
 *
 * Key: engine/sightline, on the WGS84 ellipsoid. The short form of the hints
 * (a sphere of 6371 km, after Roddy, Satellite Communications, 4th ed., ch. 3)
 * differs by at most 0.03 deg, inside the tolerance.
 */
import { isFault } from "../../engine/faults";
import { cosDeg, sinDeg, tanDeg, toDegrees, toRadians, wrap360 } from "../../engine/sightline/angles";
import { faceTilt } from "../../engine/sightline/faceTilt";
import { lookAngles } from "../../engine/sightline/lookAngles";
import { magneticField } from "../../engine/sightline/magneticField";
import { offsetAngle } from "../../engine/sightline/offsetAngle";
import { rayHeight } from "../../engine/sightline/rayHeight";
import { setback } from "../../engine/sightline/setback";
import { arithmetic, Working } from "../../engine/working/steps";
import { ROOF_CAUTION } from "../cautionLines";
import { trainingSet, type Given } from "../exercise";
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
/** Radius of the Earth over that of the orbit, of the short form. */
const RADII = 6371 / 42164.17;

const westOrEast = (label: string, degrees: number): Given => ({
  label,
  value: Math.abs(degrees),
  unit: degrees < 0 ? "deg west" : "deg east",
});

const site = ({ latitude, longitude, slot }: Numbers): Given[] => [
  { label: "Latitude", value: Math.abs(latitude), unit: latitude < 0 ? "deg south" : "deg north" },
  westOrEast("Longitude", longitude),
  westOrEast("Orbital slot", slot),
];

const angles = ({ latitude, longitude, slot }: Numbers) => lookAngles(latitude, longitude, slot);

/** The short form of the azimuth, with the sines and cosines that it is given. */
const shortAzimuth = (
  { latitude, longitude, slot }: Numbers,
  sin: (x: number) => number,
  cos: (x: number) => number,
) => wrap360(toDegrees(Math.atan2(sin(slot - longitude), -sin(latitude) * cos(slot - longitude))));

/** Cosine of the angle between site and slot at the Earth's centre. */
const centralCosine = ({ latitude, longitude, slot }: Numbers, cos: (x: number) => number): number =>
  cos(slot - longitude) * cos(latitude);

const shortElevation = (cosine: number): number =>
  toDegrees(Math.atan2(cosine - RADII, Math.sqrt(1 - cosine * cosine)));

const radiansTaken = "degrees used as radians";
const radiansGiven = "answer left in radians";

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
      answer: { kind: "number", unit: "deg", decimals: 1 },
      needs: [],
      solve: (n) => {
        const found = angles(n);
        return isFault(found) ? found : found.azimuth;
      },
      slips: [
        { name: radiansTaken, wrong: (n) => shortAzimuth(n, Math.sin, Math.cos) },
        {
          name: "east and west exchanged",
          wrong: ({ latitude, longitude, slot }) =>
            shortAzimuth({ latitude, longitude: slot, slot: longitude } as Numbers, sinDeg, cosDeg),
        },
        {
          name: "half a turn left out",
          wrong: (n) => (n.latitude > 0 ? wrap360(shortAzimuth(n, sinDeg, cosDeg) - 180) : undefined),
        },
        { name: radiansGiven, wrong: (n) => toRadians(shortAzimuth(n, sinDeg, cosDeg)) },
      ],
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
      slips: [
        { name: radiansTaken, wrong: (n) => shortElevation(centralCosine(n, Math.cos)) },
        {
          name: "Earth's radius left out",
          wrong: (n) => 90 - toDegrees(Math.acos(centralCosine(n, cosDeg))),
        },
        {
          name: "taken from the vertical",
          wrong: (n) => 90 - shortElevation(centralCosine(n, cosDeg)),
        },
        { name: radiansGiven, wrong: (n) => toRadians(shortElevation(centralCosine(n, cosDeg))) },
      ],
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
          label: "Declination on the chart",
          value: Math.abs(declination),
          unit: declination < 0 ? "deg west" : "deg east",
        },
      ],
      answer: { kind: "number", unit: "deg", decimals: 0 },
      needs: ["azimuth"],
      solve: ({ declination }, { azimuth }) => wrap360(azimuth! - declination),
      slips: [
        {
          name: "declination added instead of subtracted",
          wrong: ({ declination }, { azimuth }) => wrap360(azimuth! + declination),
        },
        { name: "declination left out", wrong: (_, { azimuth }) => azimuth },
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
      heading: "Room before an obstacle",
      task: "How far must the dish stand back, level, from a wall in its direction? Use your answer to 2.",
      given: ({ obstacle, dish, margin }) => [
        { label: "Top of the wall above the ground", value: obstacle, unit: "m" },
        { label: "Middle of the dish above the ground", value: dish, unit: "m" },
        { label: "Margin to keep below the ray", value: margin, unit: "deg" },
      ],
      answer: { kind: "number", unit: "m", decimals: 1 },
      needs: ["elevation"],
      solve: ({ obstacle, dish, margin }, { elevation }) => setback(elevation!, obstacle, dish, margin),
      slips: [
        {
          name: "margin added instead of subtracted",
          wrong: ({ obstacle, dish, margin }, { elevation }) =>
            (obstacle - dish) / tanDeg(elevation! + margin),
        },
        {
          name: "margin left out",
          wrong: ({ obstacle, dish }, { elevation }) => setback(elevation!, obstacle, dish),
        },
        {
          name: "height of the dish left out",
          wrong: ({ obstacle, margin }, { elevation }) => setback(elevation!, obstacle, 0, margin),
        },
        {
          name: "multiplied by the tangent instead of divided",
          wrong: ({ obstacle, dish, margin }, { elevation }) =>
            (obstacle - dish) * tanDeg(elevation! - margin),
        },
      ],
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
      given: ({ chimney }) => [{ label: "Level distance to the chimney", value: chimney, unit: "m" }],
      answer: { kind: "number", unit: "m", decimals: 1 },
      needs: ["elevation"],
      solve: ({ chimney, dish }, { elevation }) => rayHeight(elevation!, chimney, dish),
      slips: [
        {
          name: "height of the dish left out",
          wrong: ({ chimney }, { elevation }) => rayHeight(elevation!, chimney),
        },
        {
          name: "divided by the tangent instead of multiplied",
          wrong: ({ chimney, dish }, { elevation }) => dish + chimney / tanDeg(elevation!),
        },
        {
          name: "sine for tangent",
          wrong: ({ chimney, dish }, { elevation }) => dish + chimney * sinDeg(elevation!),
        },
      ],
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
        { label: "Width of the rim", value: rimWidth, unit: "mm" },
        { label: "Height of the rim", value: rimHeight, unit: "mm" },
      ],
      answer: { kind: "number", unit: "deg", decimals: 1 },
      needs: [],
      solve: ({ rimWidth, rimHeight }) => offsetAngle(rimWidth, rimHeight),
      slips: [
        {
          name: "sine for cosine",
          wrong: ({ rimWidth, rimHeight }) => toDegrees(Math.asin(rimWidth / rimHeight)),
        },
        { name: radiansGiven, wrong: ({ rimWidth, rimHeight }) => Math.acos(rimWidth / rimHeight) },
      ],
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
      slips: [
        {
          name: "offset added instead of subtracted",
          wrong: (_, { elevation, offset }) => elevation! + offset!,
        },
        { name: "offset left out", wrong: (_, { elevation }) => elevation },
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
