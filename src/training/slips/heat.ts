/** What a temperature invites by which something grows: the factor 1 + k·(T − 20). */
import type { Family } from "../exercise";

const BASE_C = 20;
const KELVIN = 273.15;

/**
 * @param k growth for each °C
 * @param other that of the other quantity on the course, and its name
 */
export const heat =
  (k: number, other: { readonly k: number; readonly of: string }): Family =>
  (celsius) => {
    const rise = celsius - BASE_C;
    // As the temperature that would give the factor.
    const as = (name: string, factor: number, seldom = false) => ({
      name,
      as: BASE_C + (factor - 1) / k,
      seldom,
    });
    const at = (name: string, temperature: number, seldom = false) => ({ name, as: temperature, seldom });
    return [
      at("heat left out", BASE_C),
      as("the whole temperature taken instead of what it is above 20 °C", 1 + k * celsius),
      as("heat subtracted instead of added", 1 - k * rise),
      at("cold taken for hot", -celsius),
      at("Kelvin taken for degrees Celsius", celsius + KELVIN),
      as(`factor of ${other.of} taken`, 1 + other.k * rise),
      at("Fahrenheit taken for degrees Celsius", 32 + 1.8 * celsius, true),
      as("divided by the heat's factor instead of multiplied", 1 / (1 + k * rise), true),
      as("percent of the heat taken as a share", 1 + 100 * k * rise, true),
      as("growth in heat ten times too large", 1 + 10 * k * rise, true),
      as("growth in heat ten times too small", 1 + (k * rise) / 10, true),
      as("only what heat adds given", k * rise, true),
      as("1 left out of the heat's factor, with the whole temperature", k * celsius, true),
      as("one degree only", 1 + k, true),
      at("25 °C taken as the base", celsius - 5, true),
      as("heat reckoned twice", (1 + k * rise) ** 2, true),
      as("temperature over 20 taken as the factor", celsius / BASE_C, true),
    ];
  };
