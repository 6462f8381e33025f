import { dishGain } from "../../engine/signal/dishGain";
import { dishGainSteps } from "../../engine/working/dishSteps";
import { declare } from "../core/declare";
import { diameterM, dishFrequency, efficiency } from "./radioParameters";

export const dishgain = declare({
  name: "DISHGAIN",
  group: "Signal",
  summary: "Gain of a dish.",
  parameters: [diameterM, dishFrequency, efficiency],
  result: { shape: "cell", unit: "dBi", help: "Gain over an isotropic antenna." },
  equation: "10·log10(efficiency·(π·D/λ)²).",
  source: "Roddy, Satellite Communications, 4th ed., ch. 12.",
  accuracy: "That of the efficiency, which runs from 0.55 (taken when left out) to 0.7: 1 dB.",
  tasks: ["What does a larger dish bring?"],
  examples: [
    {
      formula: "RIG.DISHGAIN(3,12000)",
      result: 48.9,
      tolerance: 0.06,
      source: "Roddy, Satellite Communications, 4th ed., example 12.2 (efficiency 0.55)",
    },
  ],
  seeAlso: ["BEAMWIDTH", "CARRIERNOISE"],
  faultsWhen: ["The dish is smaller than a wavelength."],
  compute: dishGain,
  working: dishGainSteps,
});
