import { AIR_DENSITY_KG_M3, DISH_FORCE_COEFFICIENT } from "../../engine/bonding/constants";
import { windLoad } from "../../engine/bonding/windLoad";
import { declare } from "../core/declare";
import { number, optional } from "../core/parameters";

const speed = number({
  name: "speed_m_s",
  help: "Wind speed at the dish, gusts included, as the local wind code gives it.",
  unit: "m/s",
  min: 0,
  max: 100,
  advice: "Give metres per second: 100 mph are 44.7",
});

const diameter = number({
  name: "diameter_m",
  help: "Diameter of the dish.",
  unit: "m",
  min: 0,
  aboveMin: true,
  max: 10,
  advice: "Give metres, not centimetres",
});

const coefficient = number({
  name: "coefficient",
  help: "Force coefficient of the dish face-on; published values lie from 1.2 to 1.4.",
  min: 0.1,
  max: 3,
});

const density = number({
  name: "air_density",
  help: "Density of the air: 1.225 is the standard atmosphere at sea level, 1.25 the value of EN 1991-1-4.",
  unit: "kg/m³",
  min: 0.5,
  max: 1.6,
});

export const windload = declare({
  name: "WINDLOAD",
  group: "Bonding and mounting",
  summary: "Wind force on a dish that faces the wind.",
  parameters: [
    speed,
    diameter,
    optional(coefficient, DISH_FORCE_COEFFICIENT),
    optional(density, AIR_DENSITY_KG_M3),
  ],
  result: { shape: "cell", unit: "N", help: "Force along the wind." },
  equation: "F = ½ · density · speed² · coefficient · π · diameter² ÷ 4.",
  source:
    "Velocity pressure as in EN 1991-1-4, 4.5 (secondary sources) and ASCE 7 (from memory); air of ISO 2533",
  accuracy:
    "Screening only: the coefficient alone leaves about 10 %. Terrain, height and roof edges belong in the speed.",
  tasks: ["How hard does the wind push on this dish?", "Is the mount worth an engineer's look?"],
  examples: [
    {
      formula: "RIG.WINDLOAD(42,1.2)",
      result: 1588,
      tolerance: 2,
      source: "a published dish example: 1.2 m, 42 m/s, coefficient 1.3, air 1.225 kg/m³",
    },
  ],
  seeAlso: ["MASTSTRESS", "BONDCHECK"],
  caution:
    "Screening only. Fixing, wall and roof are not looked at: defer to the local wind code and an engineer. Falls kill: plan the way up before the job.",
  compute: windLoad,
});
