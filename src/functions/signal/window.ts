import { levelVerdict } from "../../engine/signal/levelVerdict";
import { declare } from "../core/declare";
import { level } from "./parameters";

export const window = declare({
  name: "WINDOW",
  group: "Signal",
  summary: "Whether a level lies in the window allowed: low, ok or high.",
  parameters: [
    level("level", "Level to judge."),
    level("low", "Least level allowed; itself ok."),
    level("high", "Greatest level allowed; itself ok."),
  ],
  result: { shape: "cell", help: "The word low, ok or high." },
  equation:
    "low when level < low; high when level > high; else ok. A difference below 1e-9 dB counts as equal.",
  source: "EN 60728-1 has 47 to 77 dBµV at an outlet in the satellite band; the limits are yours to give.",
  accuracy: "Exact; a meter is good to 1 or 2 dB (from memory), so keep a margin.",
  tasks: ["Does this outlet get enough level?", "Does this outlet get too much?"],
  examples: [
    { formula: "RIG.WINDOW(46,47,77)", result: "low", source: "EN 60728-1, 47 to 77 dBµV" },
    { formula: "RIG.WINDOW(60,47,77)", result: "ok", source: "EN 60728-1, 47 to 77 dBµV" },
    { formula: "RIG.WINDOW(78,47,77)", result: "high", source: "EN 60728-1, 47 to 77 dBµV" },
  ],
  seeAlso: ["LEVEL", "CABLELOSS"],
  faultsWhen: ["The low limit is above the high one."],
  compute: levelVerdict,
});
