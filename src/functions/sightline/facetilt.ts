import { faceTilt } from "../../engine/sightline/faceTilt";
import { declare } from "../core/declare";
import { number } from "../core/parameters";

export const facetilt = declare({
  name: "FACETILT",
  group: "Sightline",
  summary: "How far the rim of an offset dish leans back from the vertical.",
  parameters: [
    number({ name: "elevation", help: "Elevation of the beam.", unit: "deg", min: -5, max: 90 }),
    number({
      name: "offset_angle",
      help: "Offset angle of the dish, of the maker or from OFFSETANGLE.",
      unit: "deg",
      min: 0,
      max: 60,
    }),
  ],
  result: {
    shape: "cell",
    unit: "deg",
    help: "Face tilt back from the vertical, negative when the rim leans forward. It is not the beam elevation: most mounts' scales show that one.",
  },
  equation: "face tilt = beam elevation - offset angle",
  source: "plane geometry; a published table for an offset of 22 deg",
  accuracy: "Exact on a plumb mast. Face tilt and beam elevation, mixed up, are 22 to 26 deg apart.",
  tasks: ["What does an inclinometer on the rim show?"],
  examples: [
    {
      formula: "RIG.FACETILT(40,22)",
      result: 18,
      tolerance: 0.01,
      source: "published table for an offset of 22 deg",
    },
  ],
  seeAlso: ["OFFSETANGLE", "ELEVATION"],
  compute: faceTilt,
});
