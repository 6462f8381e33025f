import { isFault } from "../../engine/faults";
import { elevation } from "../../engine/sightline/elevation";
import { lookAngles } from "../../engine/sightline/lookAngles";
import { slantRange } from "../../engine/sightline/slantRange";
import { lookAngleSteps } from "../../engine/working/sightSteps";
import { declare } from "../core/declare";
import { heightM, latitude, longitude, orbitalSlot } from "./parameters";

export const lookangles = declare({
  name: "LOOKANGLES",
  group: "Sightline",
  summary: "Azimuth, elevation and slant range from a site to an orbital slot, side by side.",
  parameters: [latitude, longitude, orbitalSlot, heightM],
  result: {
    shape: "row",
    help: "Three cells: azimuth (deg), elevation (deg), slant range (km).",
    columns: ["azimuth, deg", "elevation, deg", "slant range, km"],
  },
  equation:
    "Site on WGS84 and slot at 42164.17 km in Earth-centred axes, their difference turned into east, north and up.",
  source: "WGS84 (NGA.STND.0036); method after Roddy, Satellite Communications, 4th ed., ch. 3",
  accuracy:
    "1e-5 deg and 1 m against a reference library; refraction is left out (less than 0.1 deg above 10 deg).",
  tasks: ["Where does the dish point, all three figures at once?"],
  examples: [
    {
      formula: "RIG.LOOKANGLES(-18,178,-175,10)",
      result: [[21.688964, 67.413966, 36202.0552]],
      tolerance: 0.001,
      source: "satellite.js 7.1.0, ecfToLookAngles on WGS84",
    },
  ],
  seeAlso: ["AZIMUTH", "ELEVATION", "SLANTRANGE"],
  faultsWhen: ["The site lies straight under the slot: then the azimuth alone is a fault."],
  compute: (latitude, longitude, slot, height) => {
    const angles = lookAngles(latitude, longitude, slot, height);
    // Under the slot only the azimuth has no meaning; the other two cells keep their values.
    return [
      isFault(angles) ? angles : angles.azimuth,
      elevation(latitude, longitude, slot, height),
      slantRange(latitude, longitude, slot, height),
    ];
  },
  working: lookAngleSteps,
});
