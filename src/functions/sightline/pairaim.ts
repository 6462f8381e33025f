import { isFault } from "../../engine/faults";
import { pairAim } from "../../engine/sightline/pairAim";
import { declare } from "../core/declare";
import { heightM, latitude, longitude, slotA, slotB } from "./parameters";

export const pairaim = declare({
  name: "PAIRAIM",
  group: "Sightline",
  summary: "Azimuth and elevation at which a dish for two slots is aimed, side by side.",
  parameters: [latitude, longitude, slotA, slotB, heightM],
  result: {
    shape: "row",
    help: "Two cells: azimuth and elevation of the middle of the two directions, both in degrees.",
    columns: ["azimuth, deg", "elevation, deg"],
  },
  equation: "Direction of the sum of the two unit vectors from the site to the slots.",
  source: "derivation on WGS84 look angles; no published form",
  accuracy:
    "0.002 deg of an independent calculation; refraction is left out. Where a dish's maker gives an aim for unequal feeds, that goes first.",
  tasks: ["Where does a dish for two slots point?"],
  examples: [
    {
      formula: 'RIG.PAIRAIM(40,-75,"97W","113W")',
      result: [[221.865, 34.381]],
      tolerance: 0.002,
      source: "the same derivation on WGS84, worked apart from this project",
    },
  ],
  seeAlso: ["PAIRTILT", "SEPARATION", "LOOKANGLES"],
  faultsWhen: ["A slot lies below the horizon.", "The middle of the two lies straight overhead."],
  compute: (latitude, longitude, a, b, height) => {
    const aim = pairAim(latitude, longitude, a, b, height);
    return isFault(aim) ? aim : [aim.azimuth, aim.elevation];
  },
});
