/** The arguments that the signal and power functions share. */
import { CABLE_HIGH_MHZ, CABLE_LOW_MHZ, CABLE_REFERENCE_C } from "../../engine/signal/constants";
import { LEVEL_UNITS, type LevelUnit } from "../../engine/signal/convertLevel";
import { LENGTH_UNITS } from "../../engine/signal/lengthUnits";
import { choice, number, optional, text, type EachParameter } from "../core/parameters";

export { cables } from "./cableTable";

export const cable = text({
  name: "cable",
  help: "A built-in type (series 59, series 6, series 7, series 11, each also with “, copper” or “, copper-clad steel”), or a name in the cable table.",
  wanted: "a cable's name",
});

export const length = number({
  name: "length",
  help: "Length of the cable, one way.",
  min: 0,
  max: 100_000,
  advice: "Check the length and its unit",
});

const frequencyNamed = (name: string, help: string): EachParameter<number> =>
  number({ name, help, unit: "MHz", min: CABLE_LOW_MHZ, max: CABLE_HIGH_MHZ, advice: "Give MHz, not GHz" });

export const frequency = frequencyNamed("frequency", "Frequency in the cable.");
export const lowFrequency = frequencyNamed("low", "Lowest frequency in the cable.");
export const highFrequency = frequencyNamed("high", "Highest frequency in the cable.");

export const temperatureC = optional(
  number({
    name: "temperature_c",
    help: "Temperature of the cable.",
    unit: "°C",
    min: -60,
    max: 90,
    advice: "Give degrees Celsius, not Fahrenheit",
  }),
  CABLE_REFERENCE_C,
);

export const unit = optional(
  choice({ name: "unit", help: "Unit of the length.", choices: LENGTH_UNITS }),
  "m",
) as EachParameter<(typeof LENGTH_UNITS)[number]>;

export const excess = optional(
  number({ name: "excess", help: "Loss beyond the ideal.", unit: "dB", min: 0, max: 30 }),
  0,
);

export const ways = number({
  name: "ways",
  help: "Number of equal outputs.",
  min: 1,
  max: 256,
  integer: true,
});

const GREEK_MU = /\u03BC/g;
const MICRO_SIGN = "\u00B5";

/** A unit of level; keyboards give the Greek letter as often as the micro sign. */
export function levelUnit(name: string, help: string): EachParameter<LevelUnit> {
  const word = choice({ name, help, choices: LEVEL_UNITS });
  return {
    ...word,
    read: (cell) => word.read(typeof cell === "string" ? cell.replace(GREEK_MU, MICRO_SIGN) : cell),
  };
}

export const level = (name: string, help: string): EachParameter<number> =>
  number({ name, help, unit: "dBµV", min: -200, max: 300 });
