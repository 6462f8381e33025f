import { headUnits } from "../../engine/tuners/headUnits";
import { headUnitsSteps } from "../../engine/working/tunerSteps";
import { declare } from "../core/declare";
import { capacity, tuners } from "./parameters";

export const headunits = declare({
  name: "HEADUNITS",
  group: "Tuners",
  summary: "The least number of head units for a number of tuners.",
  parameters: [tuners, capacity],
  result: { shape: "cell", unit: "head units", help: "Whole number of head units; 0 for no tuner." },
  equation: "head units = tuners ÷ capacity, rounded up.",
  source: "One tuner takes one user band; 8 bands on one output (EN 50494), 32 (EN 50607:2015, scope)",
  accuracy: "Exact. It splits tuners at will: ALLOT, which keeps rooms together, can need more.",
  tasks: ["How many head units do I need?", "Does one more room need another head unit?"],
  examples: [
    {
      formula: "RIG.HEADUNITS(9,8)",
      result: 2,
      source: "by hand: nine tuners, eight user bands on a head unit of the basic kind (EN 50494)",
    },
  ],
  seeAlso: ["TUNERCOUNT", "ALLOT"],
  compute: headUnits,
  working: headUnitsSteps,
});
