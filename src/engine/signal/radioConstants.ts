/** Constants of free space, dishes and noise. */

/** Speed of light in vacuum, exact (SI). */
export const LIGHT_M_PER_S = 299_792_458;
/** Boltzmann's constant, exact (SI, 2019). */
export const BOLTZMANN_J_PER_K = 1.380649e-23;
/** Temperature to which noise figures refer (IEEE definition). */
export const NOISE_REFERENCE_K = 290;
/** Aperture efficiency of a plain dish, as Roddy, Satellite Communications, 4th ed., ch. 12 uses it. */
export const DISH_EFFICIENCY = 0.55;
/** Half-power beamwidth in degrees, times diameter in wavelengths (Maral & Bousquet, from memory). */
export const BEAMWIDTH_DEG = 70;

/**
 * Diameter in wavelengths from which 70·λ/D is the beam's width: the angle is taken for small there. At two it is
 * 1.6 % off the angle whose half has the sine 35°·(π/180)·λ/D, at one 7.6 %, near the factor's own 10 % (derivation).
 */
export const LEAST_BEAM_WAVELENGTHS = 2;
/** Diameter in wavelengths below which there is no dish to speak of, only its feed (common practice, no source). */
export const LEAST_DISH_WAVELENGTHS = 1;

/** @returns wavelength in metres, from megahertz */
export const wavelengthM = (frequencyMHz: number): number => LIGHT_M_PER_S / (frequencyMHz * 1e6);
