import { levelVerdict } from "../../engine/signal/levelVerdict";
import { declare } from "../core/declare";
import { number } from "../core/parameters";

export const window = declare({
  name: "WINDOW",
  group: "Signal",
  summary: "Whether a level, or any other value, lies in the window allowed: low, ok or high.",
  parameters: [
    number({
      name: "level",
      help: "Level to judge, in dBµV or any unit that all three share: volts, tuners, degrees.",
    }),
    number({ name: "low", help: "Least level allowed; itself ok." }),
    number({ name: "high", help: "Greatest level allowed; itself ok." }),
  ],
  result: { shape: "cell", help: "The word low, ok or high." },
  equation: "low when level < low; high when level > high; else ok. A difference below 1e-9 counts as equal.",
  source: "EN 60728-1 has 47 to 77 dBµV at an outlet in the satellite band; the limits are yours to give.",
  accuracy: "Exact; a meter is good to 1 or 2 dB (from memory), so keep a margin.",
  tasks: [
    "Will the far bedroom have enough signal?",
    "Does this outlet get enough level?",
    "Does this outlet get too much?",
    "Has the head unit a user band for every tuner?",
  ],
  examples: [
    { formula: "RIG.WINDOW(46,47,77)", result: "low", source: "EN 60728-1, 47 to 77 dBµV" },
    { formula: "RIG.WINDOW(60,47,77)", result: "ok", source: "EN 60728-1, 47 to 77 dBµV" },
    { formula: "RIG.WINDOW(78,47,77)", result: "high", source: "EN 60728-1, 47 to 77 dBµV" },
  ],
  seeAlso: ["LEVEL", "CABLELOSS"],
  faultsWhen: ["The low limit is above the high one."],
  compute: levelVerdict,
});
