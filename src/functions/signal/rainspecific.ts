import { rainSpecific } from "../../engine/signal/rainSpecific";
import { declare } from "../core/declare";
import { number } from "../core/parameters";
import { radioFrequency, rainRate, tilt } from "./radioParameters";

export const rainspecific = declare({
  name: "RAINSPECIFIC",
  group: "Signal",
  summary: "Attenuation of rain per kilometre of path.",
  parameters: [
    radioFrequency(1000, 1_000_000),
    rainRate,
    number({ name: "elevation", help: "Elevation of the path.", unit: "deg", min: 0, max: 90 }),
    tilt,
  ],
  result: { shape: "cell", unit: "dB/km", help: "Attenuation per kilometre in this rain." },
  equation: "k·R^α, k and α combined for elevation and polarisation.",
  source: "ITU-R P.838-3.",
  accuracy: "ITU Study Group 3's examples to 1e-6. Textbooks before 2005 use older constants.",
  tasks: ["How much does a downpour take from the signal?"],
  examples: [
    {
      formula: "RIG.RAINSPECIFIC(14250,26.48052,31.07699124,0)",
      result: 1.58130839,
      tolerance: 2e-6,
      source: "ITU-R Study Group 3 validation examples, P.838-3",
    },
  ],
  seeAlso: ["RAINFADE"],
  compute: (frequency, rain, elevation, tilt) => rainSpecific(frequency / 1000, rain, elevation, tilt),
});
