import { refraction as refractionOf } from "../../engine/sightline/refraction";
import { refractionSteps } from "../../engine/working/sightSteps";
import { declare } from "../core/declare";
import { number } from "../core/parameters";
import { heightM } from "./parameters";

export const refraction = declare({
  name: "REFRACTION",
  group: "Sightline",
  summary: "How much the air lifts the apparent elevation above the true one.",
  parameters: [
    number({
      name: "elevation",
      help: "True elevation, as ELEVATION gives it.",
      unit: "deg",
      min: 0,
      max: 90,
      advice: "Below the horizon there is nothing to receive",
    }),
    heightM,
  ],
  result: { shape: "cell", unit: "deg", help: "Degrees to add to the true elevation." },
  equation:
    "1 / (1.728 + 0.5411 e + 0.03723 e^2 + h (0.1815 + 0.06272 e + 0.01138 e^2) + h^2 (0.01727 + 0.008288 e)), e in deg, h in km",
  source: "ITU-R P.834, approximation for a known true elevation",
  accuracy: "0.035 deg against an optical table; below 0.1 deg above 10 deg, where aiming may leave it out.",
  tasks: ["The slot is only just above the horizon: how much higher does it look?"],
  examples: [
    {
      formula: "RIG.REFRACTION(2,8848)",
      result: 0.11458177523385392,
      tolerance: 1e-12,
      source: "ITU-R P.834 as implemented and tested in a public flight-dynamics library",
    },
  ],
  seeAlso: ["ELEVATION"],
  compute: refractionOf,
  working: refractionSteps,
});
