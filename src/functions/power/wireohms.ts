import { wireOhms } from "../../engine/power/wireOhms";
import { toMetres } from "../../engine/signal/lengthUnits";
import { wireOhmsSteps } from "../../engine/working/supplySteps";
import { declare } from "../core/declare";
import { number, optional } from "../core/parameters";
import { length, temperatureC, unit } from "../signal/parameters";

export const wireohms = declare({
  name: "WIREOHMS",
  group: "Power",
  summary: "Resistance of one solid wire from end to end.",
  parameters: [
    number({
      name: "awg",
      help: "American wire gauge; 0 is 1/0, -1 is 2/0, -2 is 3/0.",
      min: -3,
      max: 40,
      integer: true,
    }),
    { ...length, help: "Length of the wire; for a pair, count it there and back." },
    optional(
      number({
        name: "conductivity_pct",
        help: "Conductivity, % of annealed copper's: copper 100, copper-clad steel 21 or 40.",
        unit: "% IACS",
        min: 1,
        max: 110,
        advice: "Give a percentage, not a fraction",
      }),
      100,
    ),
    temperatureC,
    unit,
  ],
  result: { shape: "cell", unit: "ohm", help: "Resistance of the single wire." },
  equation:
    "ρ·L/A with ρ = 0.017241 ohm·mm²/m and d = 0.127·92^((36 − n)/39) mm, times 1 + 0.00393·(T − 20).",
  source: "ASTM B258 for the diameter; IEC 60028 for copper (from memory).",
  accuracy: "0.4 % against NEC chapter 9 table 8 (solid, uncoated, 75 °C). Stranded wire has some 2 % more.",
  tasks: ["What resistance has the wire from the supply to the inserter?"],
  examples: [
    {
      formula: 'RIG.WIREOHMS(14,1000,,20,"ft")',
      result: 2.525,
      tolerance: 0.002,
      source: "ASTM B258 diameter and 100 % IACS copper, worked by hand",
    },
    {
      formula: 'RIG.WIREOHMS(18,1000,100,75,"ft")',
      result: 7.77,
      tolerance: 0.01,
      source: "NEC chapter 9 table 8, 18 AWG solid, uncoated",
    },
    {
      formula: 'RIG.WIREOHMS(10,1000,100,75,"ft")',
      result: 1.21,
      tolerance: 0.01,
      source: "NEC chapter 9 table 8, 10 AWG solid, uncoated",
    },
  ],
  seeAlso: ["LOOPOHMS", "LOADVOLTS"],
  compute: (awg, length, conductivityPct, temperature, unit) =>
    wireOhms(awg, toMetres(length, unit), conductivityPct, temperature),
  working: wireOhmsSteps,
});
