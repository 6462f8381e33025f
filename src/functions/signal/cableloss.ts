import { isFault } from "../../engine/faults";
import { cableLoss } from "../../engine/signal/cableLoss";
import { findCable } from "../../engine/signal/findCable";
import { toMetres } from "../../engine/signal/lengthUnits";
import { cableLossSteps } from "../../engine/working/cableSteps";
import { declare } from "../core/declare";
import { cable, cables, frequency, length, temperatureC, unit } from "./parameters";

export const cableloss = declare({
  name: "CABLELOSS",
  group: "Signal",
  summary: "Loss of a length of coaxial cable at one frequency and temperature.",
  parameters: [cable, length, frequency, temperatureC, unit, cables],
  result: { shape: "cell", unit: "dB", help: "Loss, positive. Connectors are not in it." },
  equation: "(k1·√f + k2·f + k0) per 100 m at 20 °C, times length, times 1 + 0.00198·(T − 20); f in MHz.",
  source:
    "Built-in types: fitted to maximum attenuation of the ANSI/SCTE 74 kind of table (from memory, the upper rows of series 6 and 11 also seen printed); temperature rule of 0.0011 per °F from a published drop-cable note.",
  accuracy:
    "Built-in types within 0.06 dB (series 7: 0.1 dB) per 100 ft of that table at 5 to 1000 MHz; 5 % from 1000 to 3000 MHz, where it is extrapolated. A maker's own figures in the cable table are better.",
  tasks: [
    "How much does this run of cable lose?",
    "What is left of the level at the end of a long run on the hottest day?",
  ],
  examples: [
    {
      formula: 'RIG.CABLELOSS("series 6",100,950,20,"ft")',
      result: 6.4,
      tolerance: 0.15,
      source: "Published typical values of generic series 6 cable, 950 MHz",
    },
    {
      formula: 'RIG.CABLELOSS("series 11",100,1000,20,"ft")',
      result: 4.35,
      tolerance: 0.06,
      source: "Published drop-cable table, 1000 MHz",
    },
  ],
  seeAlso: ["CABLESLOPE", "LOOPOHMS", "TREELOSS"],
  faultsWhen: [
    "The cable is neither in the cable table nor a built-in type.",
    "The cable's name stands twice in the table, or its figures are incomplete or not numbers.",
    "The table's coefficients give a loss below 0 dB at this frequency.",
  ],
  compute: (name, length, frequency, temperature, unit, own) => {
    const cable = findCable(name, own);
    return isFault(cable) ? cable : cableLoss(cable, toMetres(length, unit), frequency, temperature);
  },
  working: (name, length, frequency, temperature, unit, own) => {
    const cable = findCable(name, own);
    return isFault(cable) ? cable : cableLossSteps(cable, length, frequency, temperature, unit);
  },
});
