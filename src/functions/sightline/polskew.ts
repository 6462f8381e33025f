import { polarisationSkew } from "../../engine/sightline/polarisationSkew";
import { declare } from "../core/declare";
import { choice, optional } from "../core/parameters";
import { latitude, longitude, orbitalSlot } from "./parameters";

export const polskew = declare({
  name: "POLSKEW",
  group: "Sightline",
  summary: "Turn of the feed for linear polarisation, clockwise positive at the dish facing the slot.",
  parameters: [
    latitude,
    longitude,
    orbitalSlot,
    optional(
      choice({
        name: "plane",
        help: "V or H for the exact turn of that polarisation, simple for the handbook formula.",
        choices: ["V", "H", "simple"],
      }),
      "V",
    ),
  ],
  result: {
    shape: "cell",
    unit: "deg",
    help: "Turn from -90 to 90; clockwise is positive for a person at the dish facing the slot.",
  },
  equation:
    "The slot's polarisation vector, projected square to the line of sight, against level and upright; simple: atan(sin(site - slot) / tan latitude).",
  source:
    "Roddy, Satellite Communications, 4th ed., ch. 5, on WGS84; simple: Kurek, 1991 handbook, as quoted",
  accuracy:
    "0.002 deg of an independent calculation; V, H and simple differ by up to 0.6 deg. A satellite may be skewed by design: its operator's figure goes first. Circular polarisation needs no turn.",
  tasks: ["How far do I turn the feed?"],
  examples: [
    {
      formula: "RIG.POLSKEW(40,-75,-97)",
      result: 24.223,
      tolerance: 0.002,
      source: "vector method of Roddy, ch. 5, on WGS84, computed apart from this project",
    },
    {
      formula: 'RIG.POLSKEW(50,10,19,"simple")',
      result: -7.478,
      tolerance: 0.002,
      source: "Kurek, 1991 handbook formula",
    },
  ],
  seeAlso: ["PAIRTILT", "LOOKANGLES"],
  faultsWhen: ["The slot lies below the horizon.", "The site lies straight under the slot."],
  compute: polarisationSkew,
});
