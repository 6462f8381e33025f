/**
 * Resistance of one solid wire, from end to end (not the loop there and back).
 *
 * d = 0.127·92^((36 − n)/39) mm; R = ρ/A at 20 °C, divided by the conductivity
 * as a fraction of annealed copper's; R(T) = R20·[1 + 0.00393·(T − 20)].
 *
 * Source: diameter ASTM B258; ρ and its temperature coefficient IEC 60028.
 * Accuracy: 0.4 % against NEC chapter 9 table 8 (solid, uncoated, 75 °C); the
 *   standard rounds diameters to 0.1 mil.
 * Range: 4/0 (−3) to 40 AWG, −60 to 90 °C.
 */
import type { Celsius, Metres, Ohms } from "../quantity";
import { COPPER_OHM_MM2_PER_M } from "./constants";
import { atTemperature } from "./atTemperature";

/**
 * @param awg American wire gauge; 0 is 1/0, −1 is 2/0 and so on
 * @param length metres of wire
 * @param conductivityPct conductivity in % IACS; 100 is annealed copper
 * @param temperature degrees Celsius
 * @returns ohms
 */
export function wireOhms(awg: number, length: Metres, conductivityPct: number, temperature: Celsius): Ohms {
  const diameterMm = 0.127 * 92 ** ((36 - awg) / 39);
  const areaMm2 = (Math.PI / 4) * diameterMm * diameterMm;
  const at20 = (COPPER_OHM_MM2_PER_M / areaMm2) * length * (100 / conductivityPct);
  return atTemperature(at20, temperature);
}
