import { isFault } from "../../engine/faults";
import { lookAngles } from "../../engine/sightline/lookAngles";
import { azimuthSteps } from "../../engine/working/sightSteps";
import { declare } from "../core/declare";
import { heightM, latitude, longitude, orbitalSlot } from "./parameters";

export const azimuth = declare({
  name: "AZIMUTH",
  group: "Sightline",
  summary: "True bearing from a site to an orbital slot, clockwise from true north.",
  parameters: [latitude, longitude, orbitalSlot, heightM],
  result: { shape: "cell", unit: "deg", help: "Azimuth from 0 to 360, clockwise from true north." },
  equation:
    "Site on WGS84 and slot at 42164.17 km in Earth-centred axes; azimuth = atan2(east, north) of their difference.",
  source: "WGS84 (NGA.STND.0036); method after Roddy, Satellite Communications, 4th ed., ch. 3",
  accuracy:
    "1e-5 deg against a reference library; a slot within its station-keeping box moves it by up to 0.1 deg.",
  tasks: ["Which way does the dish point?", "What is the true bearing to the slot?"],
  examples: [
    {
      formula: "RIG.AZIMUTH(35,-100,-90)",
      result: 162.9,
      tolerance: 0.05,
      source: "Roddy, Satellite Communications, 4th ed., example 3.1 (sphere)",
    },
  ],
  seeAlso: ["ELEVATION", "LOOKANGLES", "COMPASS"],
  faultsWhen: ["The site lies straight under the slot, where an azimuth has no meaning."],
  compute: (latitude, longitude, slot, height) => {
    const angles = lookAngles(latitude, longitude, slot, height);
    return isFault(angles) ? angles : angles.azimuth;
  },
  working: azimuthSteps,
});
