import { setback as leastSetback } from "../../engine/sightline/setback";
import { declare } from "../core/declare";
import { dishHeight, marginDeg, obstacleHeight, rayElevation } from "./parameters";

export const setback = declare({
  name: "SETBACK",
  group: "Sightline",
  summary: "Least level distance from dish to obstacle at which the dish looks over it.",
  parameters: [rayElevation, obstacleHeight, dishHeight, marginDeg],
  result: {
    shape: "cell",
    help: "Distance in the unit of the heights given; 0 when the obstacle is no higher than the dish.",
  },
  equation: "distance = (obstacle_height - dish_height) / tan(elevation - margin_deg)",
  source: "plane geometry",
  accuracy:
    "Exact for a straight ray. Trees grow: measure them in leaf, add the years of the contract, and check the lower slot of a pair along both azimuths.",
  tasks: ["How far from the building must the dish stand?"],
  examples: [
    {
      formula: "RIG.SETBACK(40,6,2)",
      result: 4.767,
      tolerance: 0.001,
      source: "geometry, worked by hand",
    },
  ],
  seeAlso: ["RAYHEIGHT", "ELEVATION", "SUNCHECK"],
  faultsWhen: ["The margin is not less than the elevation."],
  caution:
    "Measure from the ground where you can. Work on a roof or a ladder only with fall protection as the local rules ask, and away from power lines.",
  compute: leastSetback,
});
