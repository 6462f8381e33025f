/** Constants of the Earth and the geostationary orbit. */

/** Equatorial radius of the WGS84 ellipsoid (NGA.STND.0036). */
export const WGS84_A_KM = 6378.137;
/** Flattening of the WGS84 ellipsoid (NGA.STND.0036). */
export const WGS84_F = 1 / 298.257223563;
/** Square of the first eccentricity, e² = f(2 − f). */
export const WGS84_E2 = WGS84_F * (2 - WGS84_F);
/** Radius of the geostationary orbit; textbooks round it to 42 164 km. */
export const GSO_RADIUS_KM = 42_164.17;
