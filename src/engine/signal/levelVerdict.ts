/**
 * Whether a value lies in a window, both ends included. Made for levels, and
 * as good for volts, tuners or degrees.
 *
 * Source: the window is the user's; EN 60728-1 has 47 to 77 dBµV at an outlet
 *   in the satellite intermediate-frequency band.
 */
import { faults, type Fault } from "../faults";

export type LevelVerdict = "low" | "ok" | "high";

/** A level summed from many losses may miss the window's edge by a rounding error. */
const ROUNDING = 1e-9;

/**
 * @param level dBµV, or any unit that all three share
 * @param low least level allowed
 * @param high greatest level allowed
 * @returns "low", "ok" or "high"; a fault when the window is upside down
 */
export function levelVerdict(level: number, low: number, high: number): LevelVerdict | Fault {
  if (low > high) return faults.lowAboveHigh("low", low, "high", high);
  if (level < low - ROUNDING) return "low";
  return level > high + ROUNDING ? "high" : "ok";
}
