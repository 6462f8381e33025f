import { noiseTemperature } from "../../engine/signal/noiseTemperature";
import { declare } from "../core/declare";
import { number } from "../core/parameters";

export const noisetemp = declare({
  name: "NOISETEMP",
  group: "Signal",
  summary: "Noise temperature of a part with a given noise figure.",
  parameters: [
    number({ name: "noise_figure", help: "Noise figure of the part.", unit: "dB", min: 0, max: 50 }),
  ],
  result: { shape: "cell", unit: "K", help: "Noise temperature." },
  equation: "290·(10^(NF/10) − 1).",
  source: "Definition of the noise figure, reference 290 K (IEEE).",
  accuracy: "Exact. The dish adds some 20 to 60 K under a clear sky (from memory).",
  tasks: ["The head unit's data sheet says 0.3 dB: how many kelvin?"],
  examples: [
    {
      formula: "RIG.NOISETEMP(0.7)",
      result: 50.72,
      tolerance: 0.01,
      source: "290·(10^0.07 − 1), worked by hand",
    },
  ],
  seeAlso: ["CARRIERNOISE"],
  compute: noiseTemperature,
});
