import { isFault } from "../../engine/faults";
import { sumLevels } from "../../engine/signal/sumLevels";
import { declare } from "../core/declare";
import { list } from "../core/parameters";
import { firstFault } from "./lists";
import { level } from "./parameters";

export const sumlevel = declare({
  name: "SUMLEVEL",
  group: "Signal",
  summary: "Level of several carriers together.",
  parameters: [list(level("levels", "A list of levels. Blanks are passed over."))],
  result: { shape: "cell", unit: "dBµV", help: "Level of all carriers together; blank for a blank list." },
  equation: "10·log10(Σ 10^(level/10)).",
  source: "The powers of carriers that are not in step add.",
  accuracy: "Exact; not for one carrier that arrives by two ways.",
  tasks: [
    "What does an amplifier get from all carriers together?",
    "By how much must each carrier be lower when there are many?",
  ],
  examples: [
    {
      formula: "RIG.SUMLEVEL({80;80})",
      result: 83.0103,
      tolerance: 1e-4,
      source: "80 + 10·log10(2), worked by hand",
    },
    {
      formula: "RIG.SUMLEVEL({70;70;70;70;70;70;70;70;70;70})",
      result: 80,
      tolerance: 1e-9,
      source: "70 + 10·log10(10), worked by hand",
    },
  ],
  seeAlso: ["LEVEL", "WINDOW"],
  compute: (entries) => {
    const levels = firstFault(entries);
    if (isFault(levels)) return levels;
    const given = levels.filter((one) => one !== null);
    return given.length === 0 ? "" : sumLevels(given);
  },
});
