import { isFault } from "../../engine/faults";
import {
  COMPASS_CAUTION_NT,
  MAGNETIC_MODEL_FIRST_DAY,
  MAGNETIC_MODEL_LAST_DAY,
} from "../../engine/sightline/constants";
import { magneticField } from "../../engine/sightline/magneticField";
import { declare } from "../core/declare";
import { heightM, latitude, longitude, onDate } from "./parameters";

export const declination = declare({
  name: "DECLINATION",
  group: "Sightline",
  summary: "Angle from true north to magnetic north at a site on a date, east positive.",
  parameters: [latitude, longitude, onDate, heightM],
  result: {
    shape: "cell",
    unit: "deg",
    help: "Declination, positive where the compass points east of true north.",
  },
  equation: "World Magnetic Model 2025, degree and order 12; declination = atan2(east, north) of its field.",
  source: "WMM2025 (NOAA/NCEI and BGS)",
  accuracy: `0.005 deg of the model's test values; against the real field about 0.4 deg at middle latitudes, several degrees where the horizontal field is below ${COMPASS_CAUTION_NT} nT near the magnetic poles, and more beside iron.`,
  tasks: ["By how much is my compass off here?"],
  examples: [
    {
      formula: "RIG.DECLINATION(80,0,2025)",
      result: 1.28,
      tolerance: 0.005001,
      source: "WMM2025 report, table 6",
    },
    {
      formula: 'RIG.DECLINATION(0,120,"2025-01-01")',
      result: -0.16,
      tolerance: 0.005001,
      source: "WMM2025 report, table 6",
    },
  ],
  seeAlso: ["COMPASS", "AZIMUTH"],
  faultsWhen: [
    `The date lies outside the magnetic model: ${MAGNETIC_MODEL_FIRST_DAY} to ${MAGNETIC_MODEL_LAST_DAY}.`,
  ],
  compute: (latitude, longitude, date, height) => {
    const field = magneticField(latitude, longitude, date, height);
    return isFault(field) ? field : field.declination;
  },
});
