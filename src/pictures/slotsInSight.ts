/**
 * Slots and obstacles as the site sees them: the belt of geostationary slots, the
 * slots wanted with the highest obstacle given on each bearing, and the sun's
 * way past each slot on its next day of check. Angles and verdicts of the slots
 * are the workbook's own; the belt and the sun come from the engine.
 */
import { isFault } from "../engine/faults";
import type { Degrees } from "../engine/quantity";
import { wrap180, wrap360 } from "../engine/sightline/angles";
import { SUN_FIRST_YEAR, SUN_LAST_YEAR } from "../engine/sightline/constants";
import { lookAngles } from "../engine/sightline/lookAngles";
import { sunCheck } from "../engine/sightline/sunCheck";
import { sunPosition } from "../engine/sightline/sunPosition";
import { orbitalSlot } from "../functions/sightline/parameters";
import { isBookError, type Book } from "../workbooks/book";
import { estimate } from "../workbooks/multiRoom/names";
import { namedValue } from "../workbooks/named";
import { isoDate } from "../workbooks/sheetDate";
import { filledRows, numberOf, textOf } from "./columns";

export interface Direction {
  readonly azimuth: Degrees;
  readonly elevation: Degrees;
}

export interface SunPass {
  /** The sun stands behind the slot, in milliseconds since 1970. */
  readonly peakMs: number;
  /** From half an hour before to half an hour after it. */
  readonly track: readonly Direction[];
}

export interface SlotSight {
  readonly name: string;
  readonly service: string;
  /** Absent when the workbook has none, or the slot lies below the horizon. */
  readonly sight: Direction | undefined;
  readonly compass: Degrees | undefined;
  readonly obstacle: Degrees | undefined;
  readonly clearance: Degrees | undefined;
  /** "clear", or the word for what is wrong. */
  readonly verdict: string;
  readonly failing: boolean;
  readonly sun: SunPass | undefined;
}

export interface SlotsInSight {
  /** Azimuth of the belt's middle: 180 from the north, 0 from the south. */
  readonly middle: Degrees;
  /** Every degree of the belt that stands above the horizon, from east to west. */
  readonly belt: readonly Direction[];
  readonly slots: readonly SlotSight[];
  /** Degrees wanted between obstacle and beam. */
  readonly wanted: Degrees;
}

const HALF_BELT_DEG = 90;
const HALF_TRACK_MINUTES = 30;
const TRACK_STEP_MINUTES = 2;
const MINUTE_MS = 60_000;
/** They set how long an outage lasts, not when it peaks. */
const ANY_DISH_M = 0.75;
const ANY_MHZ = 12_450;
/** 9999-12-31, the last that a sheet knows. */
const LAST_SHEET_DATE = 2_958_465;

/** @returns nothing while the site has no position */
export function slotsInSight(book: Book): SlotsInSight | undefined {
  const [latitude, longitude] = (["latitude", "longitude"] as const).map((key) =>
    numberOf(namedValue(book, estimate.site[key].name)),
  );
  if (latitude === undefined || longitude === undefined || Math.abs(latitude) > 90) return undefined;
  const height = numberOf(namedValue(book, estimate.site.height.name)) ?? 0;
  const belt = Array.from({ length: 2 * HALF_BELT_DEG + 1 }, (_, step) =>
    lookAngles(latitude, longitude, wrap180(longitude + HALF_BELT_DEG - step), height),
  ).flatMap((angles) => (isFault(angles) || angles.elevation < 0 ? [] : [angles]));
  const slots = filledRows(book, "slots", "slot");
  const sights = filledRows(book, "sight", "slot");
  return {
    middle: latitude < 0 ? 0 : 180,
    belt,
    wanted: numberOf(namedValue(book, estimate.site.clearance.name)) ?? 0,
    slots: slots.map(({ at }, index): SlotSight => {
      const of = sights[index]?.at ?? (() => undefined);
      const [azimuth, elevation] = [numberOf(of("angles_azimuth")), numberOf(of("angles_elevation"))];
      const verdict = of("verdict");
      const word = isBookError(verdict) || verdict === undefined ? "unknown" : textOf(verdict);
      const below = elevation !== undefined && elevation < 0;
      const degrees = orbitalSlot.read((at("slot") as string | number | undefined) ?? null);
      return {
        name: textOf(at("slot")),
        service: textOf(at("service")),
        sight:
          azimuth !== undefined && elevation !== undefined && !below ? { azimuth, elevation } : undefined,
        compass: numberOf(of("compass")),
        // That of a dish goes before that of Site.
        obstacle: (numberOf(of("own")) ?? 0) > 0 ? numberOf(of("obstacle")) : numberOf(at("obstacle")),
        clearance: numberOf(of("clearance")),
        verdict: below ? "below the horizon" : word === "ok" ? "clear" : word,
        failing: below || word !== "ok",
        sun: isFault(degrees) || below ? undefined : nextPass(book, latitude, longitude, degrees, height),
      };
    }),
  };
}

/** The first peak on or after the day of the quote. */
function nextPass(
  book: Book,
  latitude: Degrees,
  longitude: Degrees,
  slot: Degrees,
  height: number,
): SunPass | undefined {
  const date = numberOf(namedValue(book, estimate.site.date.name));
  if (date === undefined || !(date >= 1 && date <= LAST_SHEET_DATE)) return undefined;
  const fromMs = Date.parse(isoDate(date));
  const year = new Date(fromMs).getUTCFullYear();
  const seasons = [year, year + 1]
    .filter((one) => one >= SUN_FIRST_YEAR && one <= SUN_LAST_YEAR)
    .flatMap((one) => {
      const found = sunCheck(latitude, longitude, slot, one, ANY_DISH_M, ANY_MHZ, height);
      return isFault(found) ? [] : found;
    });
  const next = seasons.find(({ peakMs }) => peakMs >= fromMs);
  if (!next) return undefined;
  const minutes = Array.from(
    { length: (2 * HALF_TRACK_MINUTES) / TRACK_STEP_MINUTES + 1 },
    (_, step) => step * TRACK_STEP_MINUTES - HALF_TRACK_MINUTES,
  );
  const track = minutes.flatMap((minute) => {
    const sun = sunPosition(latitude, longitude, new Date(next.peakMs + minute * MINUTE_MS));
    return isFault(sun) || sun.elevation < 0 ? [] : [sun];
  });
  return { peakMs: next.peakMs, track };
}

/** Degrees to the right of the belt's middle, as a person facing it sees it. */
export const offsetFrom = (middle: Degrees, azimuth: Degrees): Degrees => wrap180(azimuth - middle);
export const azimuthAt = (middle: Degrees, offset: Degrees): Degrees => wrap360(middle + offset);
