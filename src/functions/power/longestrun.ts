import { isFault } from "../../engine/faults";
import { longestRun } from "../../engine/power/longestRun";
import { findCable } from "../../engine/signal/findCable";
import { fromMetres } from "../../engine/signal/lengthUnits";
import { declare } from "../core/declare";
import { number } from "../core/parameters";
import { cable, cables, temperatureC, unit } from "../signal/parameters";
import { kind, POWER_CAUTION, supply } from "./parameters";

export const longestrun = declare({
  name: "LONGESTRUN",
  group: "Power",
  summary: "The longest cable that still leaves a load its minimum voltage.",
  parameters: [
    supply,
    number({
      name: "least_volts",
      help: "Least voltage that the load needs.",
      unit: "V",
      min: 0,
      aboveMin: true,
      max: 1000,
    }),
    number({
      name: "load",
      help: "What the load draws: amperes, or watts when kind is W.",
      min: 0,
      aboveMin: true,
      max: 1000,
      advice: "Give amperes or watts, not milliamperes",
    }),
    cable,
    kind,
    temperatureC,
    unit,
    cables,
  ],
  result: { shape: "cell", help: "Length of cable, one way, in the unit asked for (m when left out)." },
  equation:
    "Constant current: (Vs − Vmin)/(I·r). Constant power: (Vs − V)·V/(P·r), V the greater of Vmin and Vs/2, below which such a load has no stable operating point.",
  source: "LOADVOLTS solved for the length.",
  accuracy: "That of the loop resistance, within some 30 % for built-in types; give the hottest temperature.",
  tasks: [
    "How far from what feeds it may the head unit be?",
    "How long may this run be before it needs an inserter?",
  ],
  examples: [
    {
      formula: 'RIG.LONGESTRUN(13,10.5,0.25,"series 6","A",20,"ft")',
      result: 256.4,
      tolerance: 5,
      source: "2.5/(0.25·0.039) with 39 ohm per 1000 ft, worked by hand",
    },
    {
      formula: 'RIG.LONGESTRUN(13,10.5,2.6,"series 6","W",20,"ft")',
      result: 258.9,
      tolerance: 5,
      source: "2.5·10.5/(2.6·0.039) with 39 ohm per 1000 ft, worked by hand",
    },
  ],
  seeAlso: ["LOADVOLTS", "LOOPOHMS"],
  faultsWhen: [
    "The minimum voltage is above the supply.",
    "The cable is unknown, or its row in the table is at fault.",
  ],
  caution: POWER_CAUTION,
  compute: (supply, leastVolts, load, name, kind, temperature, unit, own) => {
    const cable = findCable(name, own);
    if (isFault(cable)) return cable;
    const metres = longestRun(supply, leastVolts, load, cable, kind, temperature);
    return isFault(metres) ? metres : fromMetres(metres, unit);
  },
});
