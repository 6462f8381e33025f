import { isFault } from "../../engine/faults";
import { loadVolts } from "../../engine/power/loadVolts";
import { voltDropSteps } from "../../engine/working/supplySteps";
import { declare } from "../core/declare";
import { kind, load, ohms, POWER_CAUTION, supply } from "./parameters";

export const voltdrop = declare({
  name: "VOLTDROP",
  group: "Power",
  summary: "Voltage that a cable takes between the supply and its load.",
  parameters: [supply, load, ohms, kind],
  result: { shape: "cell", unit: "V", help: "Supply voltage less voltage at the load." },
  equation: "Vs − LOADVOLTS.",
  source: "Ohm's and Kirchhoff's laws.",
  accuracy: "As LOADVOLTS.",
  tasks: ["How many volts are lost in this cable?"],
  examples: [
    {
      formula: "RIG.VOLTDROP(24,0.25,5.85)",
      result: 1.4625,
      tolerance: 1e-9,
      source: "150 ft of 39 ohm per 1000 ft: 0.25·5.85, worked by hand",
    },
  ],
  seeAlso: ["LOADVOLTS", "LOOPOHMS"],
  faultsWhen: ["There is no operating point: the resistance is too great for the load."],
  caution: POWER_CAUTION,
  compute: (supply, load, ohms, kind) => {
    const left = loadVolts(supply, load, ohms, kind);
    return isFault(left) ? left : supply - left;
  },
  working: voltDropSteps,
});
