import { isFault } from "../../engine/faults";
import { cableSlope } from "../../engine/signal/cableSlope";
import { findCable } from "../../engine/signal/findCable";
import { toMetres } from "../../engine/signal/lengthUnits";
import { cableSlopeSteps } from "../../engine/working/cableSteps";
import { declare } from "../core/declare";
import { cable, cables, highFrequency, length, lowFrequency, temperatureC, unit } from "./parameters";

export const cableslope = declare({
  name: "CABLESLOPE",
  group: "Signal",
  summary: "How much more a length of cable loses at the highest frequency than at the lowest.",
  parameters: [cable, length, lowFrequency, highFrequency, temperatureC, unit, cables],
  result: { shape: "cell", unit: "dB", help: "Loss at the high frequency less loss at the low one." },
  equation: "CABLELOSS at high − CABLELOSS at low.",
  source: "As CABLELOSS.",
  accuracy: "As CABLELOSS; the two ends' errors may add.",
  tasks: [
    "How uneven is the level over the band at the end of this run?",
    "Does this run need a slope equaliser?",
  ],
  examples: [
    {
      formula: 'RIG.CABLESLOPE("series 6",100,950,2150,20,"ft")',
      result: 3.3,
      tolerance: 0.2,
      source: "Published typical values of generic series 6 cable: 9.7 dB at 2150 MHz, 6.4 dB at 950 MHz",
    },
  ],
  seeAlso: ["CABLELOSS", "WINDOW"],
  faultsWhen: [
    "The low frequency is above the high one.",
    "The cable is unknown or its row in the table is at fault.",
  ],
  compute: (name, length, low, high, temperature, unit, own) => {
    const cable = findCable(name, own);
    return isFault(cable) ? cable : cableSlope(cable, toMetres(length, unit), low, high, temperature);
  },
  working: (name, length, low, high, temperature, unit, own) => {
    const cable = findCable(name, own);
    return isFault(cable) ? cable : cableSlopeSteps(cable, length, low, high, temperature, unit);
  },
});
