import { isFault } from "../../engine/faults";
import { lookAngles } from "../../engine/sightline/lookAngles";
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
      formula: 'RIG.LOOKANGLES(45,-90,"101W")',
      result: [[195.4, 37, 38020]],
      tolerance: 2,
      source: "Roddy, Satellite Communications, 4th ed., example 16.1 (sphere, rounded)",
    },
  ],
  seeAlso: ["AZIMUTH", "ELEVATION", "SLANTRANGE"],
  compute: (latitude, longitude, slot, height) => {
    const angles = lookAngles(latitude, longitude, slot, height);
    return isFault(angles) ? angles : [angles.azimuth, angles.elevation, angles.range];
  },
});
