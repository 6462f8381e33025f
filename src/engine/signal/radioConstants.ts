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

/** @returns wavelength in metres, from megahertz */
export const wavelengthM = (frequencyMHz: number): number => LIGHT_M_PER_S / (frequencyMHz * 1e6);
