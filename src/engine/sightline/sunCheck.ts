/**
 * The two seasons of a year in which the sun passes behind an orbital slot, its
 * noise drowns the signal, and an obstacle's shadow on the dish shows what the
 * slot would see.
 *
 * Day after day the instant of least separation is followed; the outage lasts
 * while the separation is at most half the beamwidth plus the sun's radius.
 *
 * Source: limit after ITU-R S.1525-1 and published outage pages; beamwidth
 *   70 λ/D (Maral and Bousquet, from memory); the sun after Meeus, ch. 25.
 * Accuracy: 30 s and 0.01 deg against astronomy-engine 2.1.19; first and last
 *   day within a day, since the limit itself is a rule.
 * Range: years 1950 to 2100, slots above the horizon; days are those of UTC.
 */
import { isFault, type Fault } from "../faults";
import type { Degrees, Megahertz, Metres } from "../quantity";
import { BEAMWIDTH_FACTOR_DEG, LIGHT_MHZ_M, SUN_RADIUS_DEG } from "./constants";
import { sunDirection } from "./sunPosition";
import { add, angleBetween, dot, type Vector } from "./vectors";
import { visibleSlot } from "./visibleSlot";

export interface SunSeason {
  /** Instant of least separation on the peak day, milliseconds since 1970 in UTC. */
  readonly peakMs: number;
  readonly leastSeparation: Degrees;
  /** Transit of the first and of the last day with an outage, milliseconds since 1970 in UTC. */
  readonly firstMs: number;
  readonly lastMs: number;
  /** Outage on the peak day, in seconds. */
  readonly seconds: number;
}

interface Transit {
  readonly instantMs: number;
  readonly separation: Degrees;
}

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;
/** Middles of the two seasons, near the equinoxes: month from 0, day. */
const EQUINOXES = [
  [2, 20],
  [8, 22],
] as const;
/** From the middle of a season to its edge: the sun is then 20 deg and more from the equator. */
const HALF_SEASON_DAYS = 62;
const SCAN_MS = 10 * MINUTE_MS;
/** Between the three instants of a parabola; the transit drifts by half a minute a day at the most. */
const STEP_MS = 2 * MINUTE_MS;
/** A quarter of a turn of the sun: farther than any outage lasts. */
const LONGEST_HALF_OUTAGE_MS = 6 * 60 * MINUTE_MS;
const RESOLUTION_MS = 50;

/**
 * @param latitude geodetic latitude in degrees, north positive
 * @param longitude degrees, east positive
 * @param slot orbital slot in degrees east
 * @param year calendar year
 * @param dish diameter in metres
 * @param frequency in MHz
 * @param height metres above the ellipsoid
 * @returns the season near March and the one near September; a fault for a slot below the horizon
 */
export function sunCheck(
  latitude: Degrees,
  longitude: Degrees,
  slot: Degrees,
  year: number,
  dish: Metres,
  frequency: Megahertz,
  height: Metres = 0,
): readonly SunSeason[] | Fault {
  const target = visibleSlot(latitude, longitude, slot, height);
  if (isFault(target)) return target;
  const beamwidth = (BEAMWIDTH_FACTOR_DEG * LIGHT_MHZ_M) / frequency / dish;
  const limit = beamwidth / 2 + SUN_RADIUS_DEG;
  const sun = (instantMs: number): Vector => sunDirection(latitude, longitude, instantMs);
  return EQUINOXES.map(([month, day]) =>
    season(transitsAround(Date.UTC(year, month, day), target, sun), target, sun, limit),
  );
}

function season(
  transits: readonly Transit[],
  target: Vector,
  sun: (instantMs: number) => Vector,
  limit: Degrees,
): SunSeason {
  const peak = transits.reduce((a, b) => (b.separation < a.separation ? b : a));
  const hit = transits.filter(({ separation }) => separation <= limit);
  const edge = (direction: 1 | -1): number => {
    let inside = 0;
    let outside = LONGEST_HALF_OUTAGE_MS;
    while (outside - inside > RESOLUTION_MS) {
      const middle = (inside + outside) / 2;
      if (angleBetween(target, sun(peak.instantMs + direction * middle)) <= limit) inside = middle;
      else outside = middle;
    }
    return inside;
  };
  return {
    peakMs: peak.instantMs,
    leastSeparation: peak.separation,
    firstMs: hit[0]!.instantMs,
    lastMs: hit[hit.length - 1]!.instantMs,
    seconds: (edge(1) + edge(-1)) / 1000,
  };
}

/** One transit a day through a season: the first is searched for, the next ones follow it a day later. */
function transitsAround(
  middleMs: number,
  target: Vector,
  sun: (instantMs: number) => Vector,
): readonly Transit[] {
  const squaredChord = (instantMs: number): number => {
    const chord = add(sun(instantMs), target, -1);
    return dot(chord, chord);
  };
  const startMs = middleMs - HALF_SEASON_DAYS * DAY_MS;
  let guess = startMs;
  let least = Infinity;
  for (let instant = startMs; instant < startMs + DAY_MS; instant += SCAN_MS) {
    const here = squaredChord(instant);
    if (here < least) [guess, least] = [instant, here];
  }
  // From ten minutes away two parabolas find it; a day later it has drifted so little that one does.
  guess = leastNear(squaredChord, guess);
  return Array.from({ length: 2 * HALF_SEASON_DAYS }, () => {
    const instantMs = leastNear(squaredChord, guess);
    guess = instantMs + DAY_MS;
    return { instantMs, separation: angleBetween(target, sun(instantMs)) };
  });
}

/** Bottom of the parabola through three instants: near a transit the squared chord is one. */
function leastNear(of: (instantMs: number) => number, middle: number): number {
  const [before, here, after] = [of(middle - STEP_MS), of(middle), of(middle + STEP_MS)];
  return middle + ((STEP_MS / 2) * (before - after)) / (before - 2 * here + after);
}
