import { mastStress } from "../../engine/bonding/mastStress";
import { declare } from "../core/declare";
import { number } from "../core/parameters";

export const maststress = declare({
  name: "MASTSTRESS",
  group: "Bonding and mounting",
  summary: "Bending stress in a round mast from a force at the end of an arm.",
  parameters: [
    number({
      name: "force_n",
      help: "Force across the mast, such as WINDLOAD gives.",
      unit: "N",
      min: 0,
      max: 1e6,
    }),
    number({
      name: "arm_m",
      help: "From the force down to the upper clamp.",
      unit: "m",
      min: 0,
      max: 30,
      advice: "Give metres",
    }),
    number({
      name: "outside_mm",
      help: "Outside diameter of the mast.",
      unit: "mm",
      min: 1,
      max: 1000,
      advice: "Give millimetres",
    }),
    number({
      name: "wall_mm",
      help: "Wall thickness of the mast.",
      unit: "mm",
      min: 0.1,
      max: 500,
      advice: "Give millimetres",
    }),
  ],
  result: {
    shape: "cell",
    unit: "MPa",
    help: "Greatest bending stress, to set against yield over a safety factor.",
  },
  equation: "stress = force · arm ÷ Z, Z = π(D⁴ − d⁴) ÷ (32 D), d = D − 2 wall.",
  source: "Elementary beam theory; section modulus of a tube",
  accuracy: "Exact for a straight tube without holes, within its elastic range.",
  tasks: ["Will this mast bend in a gale?", "Is a thicker tube needed?"],
  examples: [
    {
      formula: "RIG.MASTSTRESS(712.5,1.2,60.325,3.912)",
      result: 93,
      tolerance: 0.2,
      source:
        "by hand from the handbook's section modulus of a 2 in schedule 40 pipe, 0.561 in³ = 9193 mm³ (from memory): 855 N·m ÷ 9193 mm³",
    },
  ],
  seeAlso: ["WINDLOAD"],
  faultsWhen: ["The wall is more than half the outside diameter."],
  caution:
    "Screening only. Clamps, fixing, wall and roof are not looked at and often fail first: defer to the local code and an engineer.",
  compute: mastStress,
});
