import { beamwidth as beamwidthOf } from "../../engine/signal/beamwidth";
import { beamwidthSteps } from "../../engine/working/dishSteps";
import { declare } from "../core/declare";
import { diameterM, dishFrequency } from "./radioParameters";

export const beamwidth = declare({
  name: "BEAMWIDTH",
  group: "Signal",
  summary: "Width of a dish's beam between its half-power points.",
  parameters: [diameterM, dishFrequency],
  result: { shape: "cell", unit: "deg", help: "Angle between the half-power points." },
  equation: "70·λ/D degrees.",
  source: "Maral & Bousquet, Satellite Communications Systems (from memory).",
  accuracy: "10 %: the factor runs from 58 to 75 with the illumination of the rim.",
  tasks: ["How exactly must this dish be aimed?"],
  examples: [
    {
      formula: "RIG.BEAMWIDTH(1.2,12450)",
      result: 1.405,
      tolerance: 0.001,
      source: "70·λ/D, worked by hand",
    },
  ],
  seeAlso: ["POINTLOSS", "DISHGAIN"],
  faultsWhen: ["The dish is smaller than two wavelengths: the formula is for small angles."],
  compute: beamwidthOf,
  working: beamwidthSteps,
});
