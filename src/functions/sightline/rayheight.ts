import { rayHeight } from "../../engine/sightline/rayHeight";
import { declare } from "../core/declare";
import { dishHeight, distance, marginDeg, rayElevation } from "./parameters";

export const rayheight = declare({
  name: "RAYHEIGHT",
  group: "Sightline",
  summary: "Greatest height at a distance in front of the dish that still leaves the ray free.",
  parameters: [rayElevation, distance, dishHeight, marginDeg],
  result: { shape: "cell", help: "Height in the unit of the lengths given, from the same level." },
  equation: "height = dish_height + distance x tan(elevation - margin_deg)",
  source: "plane geometry",
  accuracy:
    "Exact for a straight ray. Trees grow: measure them in leaf, add the years of the contract, and check the lower slot of a pair along both azimuths.",
  tasks: ["How tall may the tree become before it is in the way?"],
  examples: [
    {
      formula: "RIG.RAYHEIGHT(40,10,2)",
      result: 10.391,
      tolerance: 0.001,
      source: "geometry, worked by hand",
    },
  ],
  seeAlso: ["SETBACK", "ELEVATION", "SUNCHECK"],
  faultsWhen: ["The margin is not less than the elevation."],
  caution:
    "Measure from the ground where you can. Work on a roof or a ladder only with fall protection as the local rules ask, and away from power lines.",
  compute: rayHeight,
});
