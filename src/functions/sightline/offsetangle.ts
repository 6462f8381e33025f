import { offsetAngle } from "../../engine/sightline/offsetAngle";
import { declare } from "../core/declare";
import { number } from "../core/parameters";

export const offsetangle = declare({
  name: "OFFSETANGLE",
  group: "Sightline",
  summary: "Offset angle of a dish from the width and height of its rim.",
  parameters: [
    number({
      name: "width",
      help: "Width of the rim; any unit, the same for both.",
      min: 0,
      max: 100000,
      aboveMin: true,
    }),
    number({
      name: "height",
      help: "Height of the rim along its long axis; any unit, the same for both.",
      min: 0,
      max: 100000,
      aboveMin: true,
    }),
  ],
  result: { shape: "cell", unit: "deg", help: "Angle between the beam and the square to the rim." },
  equation: "offset = acos(width / height)",
  source: "Wade, microwave antenna book, ch. 5",
  accuracy: "1 mm on the rim of a 0.6 m dish moves it by about 0.2 deg; the maker's figure goes first.",
  tasks: ["What is this dish's offset?"],
  examples: [
    {
      formula: "RIG.OFFSETANGLE(1.2,1.3)",
      result: 22.6,
      tolerance: 0.05,
      source: "Wade, microwave antenna book, ch. 5, worked value",
    },
  ],
  seeAlso: ["FACETILT"],
  faultsWhen: ["The rim is wider than tall."],
  compute: offsetAngle,
});
