/** Constants of conductors. */

/** Resistivity of annealed copper at 20 °C, 100 % IACS (IEC 60028, from memory). */
export const COPPER_OHM_MM2_PER_M = 0.017241;
/** Temperature coefficient of copper's resistance at 20 °C (IEC 60028, from memory). */
export const COPPER_PER_C = 0.00393;
/** Temperature to which conductor figures refer. */
export const CONDUCTOR_REFERENCE_C = 20;
/** Conductivity of copper-clad steel wire of the 21 % class, % IACS (ASTM B869, from memory). */
export const COPPER_CLAD_STEEL_IACS_PCT = 21;
