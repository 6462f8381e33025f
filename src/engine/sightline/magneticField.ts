/**
 * Declination and horizontal strength of the Earth's magnetic field after the
 * World Magnetic Model 2025.
 *
 * Source: WMM2025 (NOAA/NCEI and BGS, public domain), degree and order 12, by
 *   way of the geomagnetism package. It answers earlier dates from older
 *   models and counts every year as 365 days; dates outside WMM2025 are refused
 *   here, and the day count costs less than 0.003 of a year's change.
 * Accuracy: within 0.005 deg of the model's published test values. Against the
 *   real field, one sigma of √(0.26² + (5417/H)²) deg with H in nT (WMM2025
 *   report, from memory); iron on a roof or a mast disturbs a compass far more.
 * Range: 2025-01-01, the model's epoch, to 2029-11-12, the last whole day that
 *   the package answers.
 */
import { model } from "geomagnetism";
import { faults, type Fault } from "../faults";
import type { Degrees, Metres, Nanoteslas } from "../quantity";
import { MAGNETIC_MODEL_FIRST_DAY, MAGNETIC_MODEL_LAST_DAY } from "./constants";

export interface MagneticField {
  /** Degrees from true north to magnetic north, east positive. */
  readonly declination: Degrees;
  readonly horizontal: Nanoteslas;
}

const MS_PER_DAY = 86_400_000;
const BEGIN = Date.parse(MAGNETIC_MODEL_FIRST_DAY);
const END = Date.parse(MAGNETIC_MODEL_LAST_DAY) + MS_PER_DAY;

/**
 * @param latitude geodetic latitude in degrees, north positive
 * @param longitude degrees, east positive
 * @param date an instant in UTC
 * @param height metres above the ellipsoid
 * @returns declination in degrees and horizontal field in nT; a fault outside the model's dates
 */
export function magneticField(
  latitude: Degrees,
  longitude: Degrees,
  date: Date,
  height: Metres = 0,
): MagneticField | Fault {
  const instant = date.getTime();
  if (!(instant >= BEGIN && instant < END)) {
    return faults.outsideMagneticModel(date, MAGNETIC_MODEL_FIRST_DAY, MAGNETIC_MODEL_LAST_DAY);
  }
  const { decl, h } = model(date).point([latitude, longitude, height / 1000]);
  return { declination: decl, horizontal: h };
}
