import { compassBearing } from "../../engine/sightline/compassBearing";
import {
  COMPASS_BLACKOUT_NT,
  COMPASS_CAUTION_NT,
  MAGNETIC_MODEL_FIRST_DAY,
  MAGNETIC_MODEL_LAST_DAY,
} from "../../engine/sightline/constants";
import { declare } from "../core/declare";
import { heightM, latitude, longitude, onDate, orbitalSlot } from "./parameters";

export const compass = declare({
  name: "COMPASS",
  group: "Sightline",
  summary: "Bearing to an orbital slot as a magnetic compass shows it, clockwise from magnetic north.",
  parameters: [latitude, longitude, orbitalSlot, onDate, heightM],
  result: {
    shape: "cell",
    unit: "deg",
    help: "Compass bearing from 0 to 360. Read it well away from the mast, vehicles and steel.",
  },
  equation: "Compass bearing = azimuth - declination, east declination positive.",
  source: "WGS84 look angle and WMM2025 (NOAA/NCEI and BGS); zones of the WMM2025 report, from memory",
  accuracy: `About 0.4 deg at middle latitudes before local iron. Caution zone: where the horizontal field is below ${COMPASS_CAUTION_NT} nT, towards the magnetic poles, a compass may be off by several degrees; below ${COMPASS_BLACKOUT_NT} nT there is no answer.`,
  tasks: ["What bearing do I look for on the compass?"],
  examples: [
    {
      formula: 'RIG.COMPASS(40,-75,"97W","2026-07-04",30)',
      result: 224.073,
      tolerance: 0.01,
      source: "satellite.js 7.1.0 azimuth 212.173 less the declination of -11.90 by magvar 2.2.0 (WMM2025)",
    },
  ],
  seeAlso: ["DECLINATION", "AZIMUTH", "SUNPOSITION"],
  faultsWhen: [
    "The site lies straight under the slot.",
    `The date lies outside the magnetic model: ${MAGNETIC_MODEL_FIRST_DAY} to ${MAGNETIC_MODEL_LAST_DAY}.`,
    `The horizontal field is below ${COMPASS_BLACKOUT_NT} nT, around the magnetic poles.`,
  ],
  compute: compassBearing,
});
