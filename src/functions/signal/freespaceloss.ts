import { freeSpaceLoss } from "../../engine/signal/freeSpaceLoss";
import { freeSpaceSteps } from "../../engine/working/dishSteps";
import { declare } from "../core/declare";
import { dishFrequency, rangeKm } from "./radioParameters";

export const freespaceloss = declare({
  name: "FREESPACELOSS",
  group: "Signal",
  summary: "Loss of free space on the way from the satellite.",
  parameters: [rangeKm, dishFrequency],
  result: { shape: "cell", unit: "dB", help: "Loss between isotropic antennas, positive." },
  equation: "20·log10(4π·d/λ), that is 32.45 + 20·log10(km) + 20·log10(MHz).",
  source: "ITU-R P.525.",
  accuracy: "Exact in a vacuum. Textbooks round the constant to 32.4.",
  tasks: ["What is lost between satellite and dish?"],
  examples: [
    {
      formula: "RIG.FREESPACELOSS(42000,6000)",
      result: 200.4,
      tolerance: 0.1,
      source: "Roddy, Satellite Communications, 4th ed., example 12.3 (constant rounded to 32.4)",
    },
  ],
  seeAlso: ["CARRIERNOISE", "SLANTRANGE"],
  compute: freeSpaceLoss,
  working: freeSpaceSteps,
});
