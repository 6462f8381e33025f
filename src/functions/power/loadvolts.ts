import { loadVolts } from "../../engine/power/loadVolts";
import { loadVoltsSteps } from "../../engine/working/supplySteps";
import { declare } from "../core/declare";
import { kind, load, ohms, POWER_CAUTION, supply } from "./parameters";

export const loadvolts = declare({
  name: "LOADVOLTS",
  group: "Power",
  summary: "Voltage that is left at a load at the end of a cable.",
  parameters: [supply, load, ohms, kind],
  result: { shape: "cell", unit: "V", help: "Voltage at the load." },
  equation: "Constant current: Vs − I·R. Constant power: (Vs + √(Vs² − 4·P·R))/2.",
  source: "Ohm's and Kirchhoff's laws.",
  accuracy:
    "Exact for the load described; a real head unit lies between constant current and constant power, and W is the more cautious. Receivers give about 13 V at rest and head units that they feed need about 10.5 V (EN 50494, EN 50607: from memory); other kinds need more: use your own unit's figure.",
  tasks: ["Does the head unit get its voltage down this cable?", "Is a power inserter needed on this run?"],
  examples: [
    {
      formula: "RIG.LOADVOLTS(13,0.25,5.85)",
      result: 11.5375,
      tolerance: 1e-9,
      source: "150 ft of 39 ohm per 1000 ft: 13 − 0.25·5.85, worked by hand",
    },
    {
      formula: 'RIG.LOADVOLTS(13,2.6,5.85,"W")',
      result: 11.7,
      tolerance: 1e-4,
      source: "(13 + √(169 − 60.84))/2 = (13 + 10.4)/2, worked by hand",
    },
  ],
  seeAlso: ["VOLTDROP", "LOOPOHMS", "LONGESTRUN"],
  faultsWhen: ["There is no operating point: the resistance is too great for the load."],
  caution: POWER_CAUTION,
  compute: loadVolts,
  working: loadVoltsSteps,
});
