/** A conductor's resistance at another temperature (IEC 60028, copper's coefficient). */
import type { Celsius, Ohms } from "../quantity";
import { CONDUCTOR_REFERENCE_C, COPPER_PER_C } from "./constants";

/**
 * @param ohmsAt20 ohms at 20 °C
 * @param temperature degrees Celsius
 * @returns ohms
 */
export const atTemperature = (ohmsAt20: Ohms, temperature: Celsius): Ohms =>
  ohmsAt20 * (1 + COPPER_PER_C * (temperature - CONDUCTOR_REFERENCE_C));
