/**
 * Peaking by equal drops from three readings of one meter: how far to turn, how
 * sure that is, and the beamwidth that the readings show, which tells a side
 * lobe or a scale that is not in decibels.
 *
 * Source: as peakOffset.ts, with d± = here − reading±. The spread of the turn is
 *   the first-order propagation of three independent reading errors of standard
 *   deviation s: var = (Δ/2)² (s/S)² (2 + 24 (ε/Δ)²), S = d₊ + d₋. (derivation)
 * Accuracy: against the patterns of evenly lit and tapered round apertures the
 *   peak is found to 0.11 beamwidth from up to half a beamwidth away, which
 *   leaves less than 0.14 dB; a second round finds it to 0.02.
 * Range: as peakOffset.ts. A first side lobe of those patterns shows at most 0.55
 *   of the main lobe's width at steps up to 0.4 beamwidth, and the main lobe
 *   0.75 to 1.05 of it; a wider step reaches across a side lobe, which then passes.
 */
import { faults, isFault, type Fault } from "../faults";
import type { Decibels, DecibelMicrovolts, Degrees } from "../quantity";
import { cosDeg } from "./angles";
import { LEAST_WIDTH_SHARE, MOST_WIDTH_SHARE } from "./constants";
import { peakOffset } from "./peakOffset";

/** `peaked`: the turn is smaller than its doubt. `again`: turn, and repeat from there. `unsure`: too small a drop for the meter. */
export type PeakVerdict = "peaked" | "turn" | "again" | "unsure";

export interface EqualDrops {
  /** Towards + when positive, in degrees turned. */
  readonly turn: Degrees;
  /** Two standard deviations of the turn. */
  readonly doubt: Degrees;
  /** Width of the beam between its half-power points, as the readings show it. */
  readonly width: Degrees;
  readonly verdict: PeakVerdict;
}

/**
 * What was turned. An azimuth turn of the mast moves the beam by the turn times
 * cos(elevation); a turn of the tilt moves it along an arc of another length, so
 * that its width is not compared.
 */
export interface Turned {
  readonly axis: "azimuth" | "elevation" | "tilt";
  readonly elevation: Degrees;
}

/**
 * @param plus reading after a step to +, dBµV or dB
 * @param here reading at the present setting
 * @param minus reading after a step to −
 * @param step degrees turned to either side
 * @param turned axis, and the beam's elevation in degrees
 * @param readingError two readings of one level differ from it by at most ± this, dB
 * @param expected width of the dish's beam in degrees, where it is known
 */
export function equalDrops(
  plus: DecibelMicrovolts,
  here: DecibelMicrovolts,
  minus: DecibelMicrovolts,
  step: Degrees,
  { axis, elevation }: Turned,
  readingError: Decibels,
  expected?: Degrees,
): EqualDrops | Fault {
  const sum = 2 * here - plus - minus;
  const turn = peakOffset(here - plus, here - minus, step);
  if (isFault(turn)) return turn;
  const moved = axis === "azimuth" ? step * cosDeg(elevation) : step;
  const width = moved * Math.sqrt(24 / sum);
  // An error spread evenly over ± e has the standard deviation e / √3.
  const spread = readingError / Math.sqrt(3);
  const sumSpread = spread * Math.sqrt(6);
  const doubt = step * (spread / sum) * Math.sqrt(2 + 24 * (turn / step) ** 2);
  if (sum < 3 * sumSpread) return { turn, doubt, width, verdict: "unsure" };
  const share = expected === undefined || axis === "tilt" ? 1 : width / expected;
  if (share < LEAST_WIDTH_SHARE || share > MOST_WIDTH_SHARE) {
    return faults.notTheMainLobe(width, expected!, LEAST_WIDTH_SHARE, MOST_WIDTH_SHARE);
  }
  const verdict = Math.abs(turn) <= doubt ? "peaked" : Math.abs(turn) > step / 2 ? "again" : "turn";
  return { turn, doubt, width, verdict };
}
