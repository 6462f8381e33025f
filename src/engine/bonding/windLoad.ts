/**
 * Wind force on a dish that faces the wind.
 *
 * Source: F = ½ρV²·C·A, velocity pressure as in EN 1991-1-4, 4.5 (secondary
 *   sources) and ASCE 7 (from memory).
 * Accuracy: screening only. The force coefficient of a dish face-on is 1.2 to
 *   1.4 in published values; gusts, terrain, height and roof edges belong in
 *   the speed that is put in.
 * Range: steady wind speed up to 100 m/s.
 */
import { AIR_DENSITY_KG_M3, DISH_FORCE_COEFFICIENT } from "./constants";
import type { KilogramsPerCubicMetre, Metres, MetresPerSecond, Newtons } from "../quantity";

/**
 * @param speed wind speed in m/s
 * @param diameter of the dish in metres
 * @param coefficient force coefficient of the dish
 * @param density of the air in kg/m³
 * @returns force in newtons, along the wind
 */
export const windLoad = (
  speed: MetresPerSecond,
  diameter: Metres,
  coefficient = DISH_FORCE_COEFFICIENT,
  density: KilogramsPerCubicMetre = AIR_DENSITY_KG_M3,
): Newtons => ((density * speed ** 2) / 2) * coefficient * ((Math.PI * diameter ** 2) / 4);
