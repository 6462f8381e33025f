/** Constants of the Earth and the geostationary orbit. */

/** Equatorial radius of the WGS84 ellipsoid (NGA.STND.0036). */
export const WGS84_A_KM = 6378.137;
/** Flattening of the WGS84 ellipsoid (NGA.STND.0036). */
export const WGS84_F = 1 / 298.257223563;
/** Square of the first eccentricity, e² = f(2 − f). */
export const WGS84_E2 = WGS84_F * (2 - WGS84_F);
/** Radius of the geostationary orbit; textbooks round it to 42 164 km. */
export const GSO_RADIUS_KM = 42_164.17;

/** First day of WMM2025: its epoch, 2025.0. */
export const MAGNETIC_MODEL_FIRST_DAY = "2025-01-01";
/** Last whole day that the geomagnetism 0.2.0 package answers from WMM2025; the model itself runs to 2030.0. */
export const MAGNETIC_MODEL_LAST_DAY = "2029-11-12";
/** Horizontal field below which a compass is useless (WMM2025 report, blackout zone; from memory). */
export const COMPASS_BLACKOUT_NT = 2000;
/** Horizontal field below which a compass is doubtful (WMM2025 report, caution zone; from memory). */
export const COMPASS_CAUTION_NT = 6000;

/** Beamwidth in degrees = this times wavelength / diameter (Maral and Bousquet, from memory). */
export const BEAMWIDTH_FACTOR_DEG = 70;
/** Wavelength in metres times frequency in MHz: the speed of light. */
export const LIGHT_MHZ_M = 299.792458;
/** Mean radius of the sun's disc. */
export const SUN_RADIUS_DEG = 0.267;
/** Widest step of peaking by equal drops, in beamwidths (rule of the derivation: the parabola holds to about −6 dB). */
export const WIDEST_STEP_BEAMWIDTHS = 0.8;
/**
 * Farthest peak that readings a step to either side can place, in steps: half a beamwidth off at the least useful
 * step of 0.2 beamwidths. Beyond, an error of 0.1 dB moves the answer by half of it and more (derivation from the
 * spread in equalDrops.ts; the figure itself is ours, no source).
 */
export const FARTHEST_PEAK_STEPS = 2.5;
/**
 * The width that equal drops show, as a share of the dish's: outside of it they are not the main lobe's.
 * Between the 0.55 of a side lobe and the main lobe's 0.75, and above 1.05, with room for the beamwidth's own 10 %.
 */
export const LEAST_WIDTH_SHARE = 0.65;
export const MOST_WIDTH_SHARE = 1.5;
/** Years in which the low-precision sun is used. */
export const SUN_FIRST_YEAR = 1950;
export const SUN_LAST_YEAR = 2100;
