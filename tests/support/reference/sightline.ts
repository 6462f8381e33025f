/**
 * Site, Sightline and Alignment a second time, on the ellipsoid and by vectors (../referenceSight.ts); the magnetic
 * model is the library magvar (rounds to 0.01 deg), the sun astronomy-engine: both of the tests only. Skew: Roddy,
 * Satellite Communications, 4th ed., ch. 5, upright polarisation. A sun check ends where the angle from sun to slot
 * passes 35 wavelengths over the diameter + 0.267 deg (help page of SUNCHECK).
 */
import { magneticField } from "magvar";
import { referenceAngles, referencePair } from "../referenceSight";
import { isBookError, type BookResult } from "../../../src/workbooks/book";
import { cornerOf } from "./cables";
import {
  corners,
  eachRow,
  field,
  figure,
  filledRows,
  isFilled,
  orNought,
  plain,
  rowsOf,
  type Cells,
  type Expected,
  type Job,
  type Row,
  type Value,
} from "./job";
import { keyOf } from "./keys";
import { slotName } from "./slotName";
import { sunChecks } from "./sun";
import { settingsIn } from "./tablesOf";

const RAD = Math.PI / 180;
/** Sheet dates count days from 1899-12-30. */
export const dayOf = (sheetDate: number): Date => new Date(Date.UTC(1899, 11, 30) + sheetDate * 86_400_000);
const wrap360 = (degrees: number): number => ((degrees % 360) + 360) % 360;

/** Degrees east, from such as 97W or a number. */
export function slotEast(slot: Value | undefined): number {
  if (typeof slot === "number") return slot;
  const read = /^\s*(\d+(?:\.\d+)?)\s*°?\s*([EW])\s*$/i.exec(slot ?? "");
  if (!read) return NaN;
  const east = Number(read[1]) * (read[2]!.toUpperCase() === "W" ? -1 : 1);
  return Math.abs(east) <= 180 ? east : NaN;
}

const place = (job: Job): [number, number] => [field(job, "site_latitude"), field(job, "site_longitude")];
const anglesTo = (job: Job, slot: Value | undefined) =>
  referenceAngles(...place(job), slotEast(slot), field(job, "site_height"));
const declination = (job: Job): number =>
  magneticField(...place(job), field(job, "site_height") / 1000, dayOf(field(job, "site_date"))).declination;

type Vector = [number, number, number];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** k from slot to site, r upright, e the polarisation: p = (k×e)×k against f = k×r. Clockwise facing the slot is positive. */
function skewOf(job: Job, slot: Value | undefined): number {
  const [latitude, longitude] = place(job).map((degrees) => degrees * RAD) as [number, number];
  const s = slotEast(slot) * RAD;
  const e2 = (1 / 298.257223563) * (2 - 1 / 298.257223563);
  const n = 6378.137 / Math.sqrt(1 - e2 * Math.sin(latitude) ** 2);
  const up: Vector = [
    Math.cos(latitude) * Math.cos(longitude),
    Math.cos(latitude) * Math.sin(longitude),
    Math.sin(latitude),
  ];
  const site: Vector = [n * up[0], n * up[1], n * (1 - e2) * up[2]];
  const k: Vector = [site[0] - 42164.17 * Math.cos(s), site[1] - 42164.17 * Math.sin(s), site[2]];
  const f = cross(k, up);
  const h = cross(cross(k, [0, 0, 1]), k);
  const sine = dot(h, f) / Math.hypot(...h) / Math.hypot(...f);
  // The turn of a plane goes round every 180 degrees.
  const angle = Math.asin(Math.min(1, Math.abs(sine))) / RAD;
  return angle * Math.sign(Math.sin(longitude - s) / Math.tan(latitude));
}

export const slotRows = (job: Job): readonly Row[] => filledRows(job, "slots", "slot");

const isClear = (job: Job, over: number): Value =>
  Number.isNaN(over) ? NaN : over < field(job, "site_clearance") - 1e-9 ? "low" : "ok";

/** Each row of Dishes with the first two of its slots; the dish of Site where there is none. */
interface Aim {
  readonly dish: Value;
  readonly a: Value;
  readonly b: Value;
  readonly further: string;
  readonly row: Row;
}
function aimsIn(job: Job): (Aim | undefined)[] {
  const rows = rowsOf(job, "dishes");
  const { a, b } = pairOf(job);
  if (!rows.some((row) => isFilled(row, "name")))
    return a === "" ? [] : [{ dish: "dish", a, b, further: "", row: {} }];
  return rows.map((row) => {
    if (!isFilled(row, "name")) return undefined;
    const words = String(row.slots ?? "")
      .split(/[ ,]+/)
      .filter(Boolean);
    const further = words.slice(1).join(" ");
    return words.length === 0
      ? { dish: row.name!, a, b, further, row }
      : { dish: row.name!, a: words[0]!, b: words[1] ?? "", further, row };
  });
}

const isSlot = (slot: Value | undefined, other: Value): boolean =>
  plain(slotName(slot)) !== "" && plain(slotName(slot)) === plain(other);
/** Dishes with an obstacle of their own that have a slot among their first two. */
const ownObstacles = (job: Job, slot: Value | undefined): number[] =>
  aimsIn(job).flatMap((aim) =>
    aim && isFilled(aim.row, "obstacle") && (isSlot(slot, aim.a) || isSlot(slot, aim.b))
      ? [figure(aim.row, "obstacle")]
      : [],
  );
function obstacleOf(job: Job, row: Row): number {
  const own = ownObstacles(job, row.slot);
  return own.length === 0 ? orNought(row, "obstacle") : own.reduce((x, y) => x + y, 0) / own.length;
}
const overOf = (job: Job, row: Row): number => anglesTo(job, row.slot).elevation - obstacleOf(job, row);

/** Of a dish, over its own obstacle or that of Site, the less of its two slots; nothing where a slot is not on Site. */
function clearanceOf(job: Job, { a, b, row }: Aim): Value {
  const over = [a, b]
    .filter((slot) => slot !== "")
    .map((slot) => {
      const known = slotRows(job).find((one) => isSlot(one.slot, slot));
      return known
        ? anglesTo(job, known.slot).elevation -
            (isFilled(row, "obstacle") ? figure(row, "obstacle") : orNought(known, "obstacle"))
        : NaN;
    });
  const least = Math.min(...over);
  return over.length === 0 || Number.isNaN(least) ? "" : least;
}

function pairOf(job: Job) {
  const [a, b] = rowsOf(job, "slots")
    .slice(0, 2)
    .map((row) => slotName(row.slot)) as [Value?, Value?];
  const isPair = (a ?? "") !== "" && (b ?? "") !== "";
  return { a: a ?? "", b: b ?? "", isPair };
}

export function siteSheet(job: Job): Cells {
  return {
    corner_frequency: [corners((corner) => cornerOf(job, corner).mhz)],
    corner_temperature: [corners((corner) => cornerOf(job, corner).celsius)],
    diagnosis_band: [[field(job, "site_low"), field(job, "site_high")]],
    setting_values: settingsIn(job).map((value) => [value]),
  };
}

/** A dish looks at the middle of its pair, or at its only slot. */
function aimOf(
  job: Job,
  { a, b }: Pick<Aim, "a" | "b">,
): { azimuth: Value; elevation: Value; tilt: Value; apart: Value } {
  if (b !== "") {
    const [one, other] = [anglesTo(job, a), anglesTo(job, b)];
    const [e1, e2] = [one.elevation * RAD, other.elevation * RAD];
    const apart =
      Math.acos(
        Math.sin(e1) * Math.sin(e2) +
          Math.cos(e1) * Math.cos(e2) * Math.cos((one.azimuth - other.azimuth) * RAD),
      ) / RAD;
    return { ...referencePair(...place(job), [slotEast(a), slotEast(b)], field(job, "site_height")), apart };
  }
  const only = slotRows(job).find((row) => isSlot(row.slot, a));
  if (!only) return { azimuth: "", elevation: "", tilt: "", apart: "" };
  const { azimuth, elevation } = anglesTo(job, only.slot);
  return { azimuth, elevation, tilt: "", apart: "" };
}

/** A value for each row of Dishes, blank where it has none. */
const eachAim = <T>(job: Job, of: (aim: Aim) => T, blank: T): T[] => {
  const aims = aimsIn(job);
  const rows = Math.max(1, rowsOf(job, "dishes").length);
  return Array.from({ length: rows }, (_, at) => (aims[at] ? of(aims[at]) : blank));
};

export function sightlineSheet(job: Job): Cells {
  const rows = rowsOf(job, "slots");
  const column = (of: (row: Row) => Value): Value[] => eachRow<Value>(rows, "slot", of, "");
  const { a, b } = pairOf(job);
  const year = dayOf(field(job, "site_date")).getUTCFullYear();
  const sun = (slot: Value): Expected[][] =>
    slot === ""
      ? [1, 2].map(() => ["", "", "", "", ""])
      : sunChecks(...place(job), field(job, "site_height"), slotEast(slot), year, field(job, "site_dish"));
  return {
    sight_slot: column((row) => slotName(row.slot)),
    sight_angles: eachRow<Value[]>(
      rows,
      "slot",
      (row) => {
        const { azimuth, elevation, range } = anglesTo(job, row.slot);
        return [azimuth, elevation, range];
      },
      ["", "", ""],
    ),
    sight_compass: column((row) => wrap360(anglesTo(job, row.slot).azimuth - declination(job))),
    sight_skew: column((row) => skewOf(job, row.slot)),
    sight_obstacle: column((row) => obstacleOf(job, row)),
    sight_clearance: column((row) => overOf(job, row)),
    sight_verdict: column((row) => isClear(job, overOf(job, row))),
    sight_own: column((row) => ownObstacles(job, row.slot).length),
    sight_declination: slotRows(job).length > 0 ? declination(job) : "",
    pair_a: a,
    pair_b: b,
    aims_dish: eachAim<Value>(job, ({ dish }) => dish, ""),
    aims_a: eachAim<Value>(job, (aim) => aim.a, ""),
    aims_b: eachAim<Value>(job, (aim) => aim.b, ""),
    aims_to: eachAim<Value[]>(
      job,
      (aim) => {
        const { azimuth, elevation } = aimOf(job, aim);
        return [azimuth, elevation];
      },
      ["", ""],
    ),
    aims_tilt: eachAim<Value>(job, (aim) => aimOf(job, aim).tilt, ""),
    aims_separation: eachAim<Value>(job, (aim) => aimOf(job, aim).apart, ""),
    aims_clearance: eachAim<Value>(job, (aim) => clearanceOf(job, aim), ""),
    aims_verdict: eachAim<Value>(
      job,
      (aim) => {
        const over = clearanceOf(job, aim);
        return typeof over === "number" ? isClear(job, over) : "";
      },
      "",
    ),
    aims_further: eachAim<Value>(job, ({ further }) => further, ""),
    aims_given: eachAim<Value>(job, ({ row }) => (isFilled(row, "obstacle") ? 1 : 0), ""),
    aims_a_key: eachAim<Value>(job, (aim) => keyOf(aim.a), ""),
    aims_b_key: eachAim<Value>(job, (aim) => keyOf(aim.b), ""),
    sun_a: sun(a),
    sun_b: sun(b),
  };
}

export function alignmentSheet(job: Job): Cells {
  const rows = rowsOf(job, "slots");
  const column = (of: (row: Row) => Value): Value[] => eachRow<Value>(rows, "slot", of, "");
  const offset = field(job, "site_offset");
  const less = (value: Value, other: number): Value => (typeof value === "number" ? value - other : "");
  const bearing = (value: Value): Value =>
    // Declination is told beside the first slot.
    typeof value === "number" && slotRows(job).length > 0 ? wrap360(value - declination(job)) : "";
  return {
    align_slot: column((row) => slotName(row.slot)),
    align_azimuth: column((row) => anglesTo(job, row.slot).azimuth),
    align_compass: column((row) => bearing(anglesTo(job, row.slot).azimuth)),
    align_elevation: column((row) => anglesTo(job, row.slot).elevation),
    align_face: column((row) => anglesTo(job, row.slot).elevation - offset),
    align_skew: column((row) => skewOf(job, row.slot)),
    align_date: field(job, "site_date"),
    align_declination: slotRows(job).length > 0 ? declination(job) : "",
    aimed_dish: eachAim<Value>(job, ({ dish }) => dish, ""),
    aimed_a: eachAim<Value>(job, (aim) => aim.a, ""),
    aimed_b: eachAim<Value>(job, (aim) => aim.b, ""),
    aimed_azimuth: eachAim<Value>(job, (aim) => aimOf(job, aim).azimuth, ""),
    aimed_compass: eachAim<Value>(job, (aim) => bearing(aimOf(job, aim).azimuth), ""),
    aimed_elevation: eachAim<Value>(job, (aim) => aimOf(job, aim).elevation, ""),
    aimed_face: eachAim<Value>(job, (aim) => less(aimOf(job, aim).elevation, offset), ""),
    aimed_tilt: eachAim<Value>(job, (aim) => aimOf(job, aim).tilt, ""),
    peaks_elevation: peakElevation(job),
    peaks_found: peaks(job),
  };
}

/** Of the first dish. */
function peakElevation(job: Job): Value {
  const [first] = aimsIn(job);
  return first ? aimOf(job, first).elevation : "";
}

/** What a reading may be off by, and how wide the beam of a dish is against 70 wavelengths over its diameter. */
const READING_DB = 0.3;
const NARROWEST = 0.65;
const WIDEST = 1.5;
const LIGHT_M_MHZ = 299.792458;

/** Small drops are unsure, and then no width of a beam is held against the dish's. */
const ERROR_OR_UNSURE: Expected = {
  about: "an error, or a figure beside unsure",
  holds: (got) => isBookError(got as BookResult) || typeof got === "number" || got === "unsure",
};

/**
 * Equal drops (help page of EQUALDROPS): turn = (step/2)(d- - d+)/S, doubt 2·(step/2)(s/S)·√(2 + 24(turn/step)²) with
 * s = reading error/√3, beam = step·√(24/S), times cos(elevation) in azimuth. No answer in percent, without a peak
 * between, beyond 15.36 dB, beyond 2.5 steps or 0.7 beams, or of a beam that is not the dish's (bounds: its message).
 */
function peaks(job: Job): Expected[][] {
  return eachRow<Expected[]>(
    rowsOf(job, "peaks"),
    "what",
    (row) => {
      const [step, here] = [figure(row, "step"), figure(row, "here")];
      const [up, down] = [here - figure(row, "plus"), here - figure(row, "minus")];
      const total = up + down;
      const none = [NaN, NaN, NaN, NaN];
      if (row.kind === "percent" || !(total > 1e-9) || total > 15.36) return none;
      const turn = ((step / 2) * (down - up)) / total;
      const sky = row.axis === "azimuth" ? Math.cos(Number(peakElevation(job)) * RAD) : 1;
      const width = step * Math.sqrt(24 / total);
      if (Math.abs(turn) > 2.5 * step || Math.abs(turn) > 0.7 * width) return none;
      const dish = (70 * LIGHT_M_MHZ) / field(job, "site_downlink") / field(job, "site_dish");
      // A turn of the tilt is about the boresight: it shows no beam of the sky.
      if (row.axis !== "tilt" && (width * sky < NARROWEST * dish || width * sky > WIDEST * dish))
        return Array.from({ length: 4 }, () => ERROR_OR_UNSURE);
      const doubt = step * (READING_DB / Math.sqrt(3) / total) * Math.sqrt(2 + 24 * (turn / step) ** 2);
      return [
        turn,
        doubt,
        width * sky,
        Math.abs(turn) > step / 2 + 1e-9 && Math.abs(turn) > doubt
          ? /^(again|unsure)$/
          : /^(peaked|turn|unsure)$/,
      ];
    },
    ["", "", "", ""],
  );
}
