import { isFault } from "../../engine/faults";
import { loopOhms } from "../../engine/power/loopOhms";
import { findCable } from "../../engine/signal/findCable";
import { toMetres } from "../../engine/signal/lengthUnits";
import { loopOhmsSteps } from "../../engine/working/cableSteps";
import { declare } from "../core/declare";
import { cable, cables, length, temperatureC, unit } from "../signal/parameters";

export const loopohms = declare({
  name: "LOOPOHMS",
  group: "Power",
  summary: "Resistance of a cable's loop: centre conductor out, shield back.",
  parameters: [cable, length, temperatureC, unit, cables],
  result: { shape: "cell", unit: "ohm", help: "Resistance of centre conductor and shield in series." },
  equation: "Loop ohms per 100 m at 20 °C, times length, times 1 + 0.00393·(T − 20).",
  source:
    "Built-in types: solid wire after ASTM B258, copper or copper-clad steel of 21 % conductivity, plus a shield's resistance from memory; temperature coefficient of copper, IEC 60028.",
  accuracy:
    "Built-in types within some 30 %: shields differ. Without “, copper” in its name a built-in type has a copper-clad steel centre, with 2.5 times copper's loop resistance and the same RF loss. Put the maker's figure in the cable table.",
  tasks: [
    "What resistance does the head unit's supply see?",
    "Copper or copper-clad steel: what difference does it make?",
  ],
  examples: [
    {
      formula: 'RIG.LOOPOHMS("series 6",1000,20,"ft")',
      result: 39,
      tolerance: 1,
      source: "38 to 40 ohm per 1000 ft for series 6 with a copper-clad steel centre, from memory",
    },
    {
      formula: 'RIG.LOOPOHMS("series 6, copper",1000,20,"ft")',
      result: 15,
      tolerance: 1,
      source: "About 15 ohm per 1000 ft for series 6 with a copper centre, from memory",
    },
  ],
  seeAlso: ["LOADVOLTS", "LONGESTRUN", "WIREOHMS"],
  faultsWhen: ["The cable is unknown, or its row in the table is at fault or lacks a loop resistance."],
  compute: (name, length, temperature, unit, own) => {
    const cable = findCable(name, own);
    return isFault(cable) ? cable : loopOhms(cable, toMetres(length, unit), temperature);
  },
  working: (name, length, temperature, unit, own) => {
    const cable = findCable(name, own);
    return isFault(cable) ? cable : loopOhmsSteps(cable, length, temperature, unit);
  },
});
