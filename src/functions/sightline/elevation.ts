import { elevation as slotElevation } from "../../engine/sightline/elevation";
import { elevationSteps } from "../../engine/working/sightSteps";
import { declare } from "../core/declare";
import { heightM, latitude, longitude, orbitalSlot } from "./parameters";

export const elevation = declare({
  name: "ELEVATION",
  group: "Sightline",
  summary: "Angle of an orbital slot above the horizontal at a site.",
  parameters: [latitude, longitude, orbitalSlot, heightM],
  result: {
    shape: "cell",
    unit: "deg",
    help: "Elevation above the horizontal; below 0 the Earth is in the way.",
  },
  equation:
    "Site on WGS84 and slot at 42164.17 km in Earth-centred axes; elevation = atan(up / level) of their difference.",
  source: "WGS84 (NGA.STND.0036); method after Roddy, Satellite Communications, 4th ed., ch. 3",
  accuracy:
    "1e-5 deg against a reference library; refraction is left out (less than 0.1 deg above 10 deg: see REFRACTION).",
  tasks: ["How high does the dish look?", "Is the slot above the horizon here?"],
  examples: [
    {
      formula: "RIG.ELEVATION(35,-100,-90)",
      result: 48,
      tolerance: 0.5,
      source: "Roddy, Satellite Communications, 4th ed., example 3.2 (sphere, rounded)",
    },
    {
      formula: "RIG.ELEVATION(61,-150,-97,30)",
      result: 8.381032,
      tolerance: 1e-5,
      source: "satellite.js 7.1.0, ecfToLookAngles on WGS84",
    },
  ],
  seeAlso: ["AZIMUTH", "LOOKANGLES", "REFRACTION", "SETBACK"],
  compute: slotElevation,
  working: elevationSteps,
});
