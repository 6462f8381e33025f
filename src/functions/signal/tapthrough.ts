import { tapThroughLoss } from "../../engine/signal/tapThroughLoss";
import { tapThroughSteps } from "../../engine/working/splitterSteps";
import { declare } from "../core/declare";
import { number } from "../core/parameters";
import { excess } from "./parameters";

export const tapthrough = declare({
  name: "TAPTHROUGH",
  group: "Signal",
  summary: "Loss on the way through a tap, past the branch that it feeds.",
  parameters: [
    number({
      name: "tap",
      help: "Tap value: loss from the input to the branch.",
      unit: "dB",
      min: 0,
      aboveMin: true,
      max: 60,
    }),
    excess,
  ],
  result: { shape: "cell", unit: "dB", help: "Loss from the tap's input to its output, positive." },
  equation: "−10·log10(1 − 10^(−tap/10)) + excess; excess is 0 when left out.",
  source: "What the branch takes is missing on the way through.",
  accuracy:
    "Exact for the ideal part; real taps lose 0.5 to 1.5 dB more (from memory). Take the maker's figure.",
  tasks: ["What does each tap on a trunk cost the outlets behind it?"],
  examples: [
    {
      formula: "RIG.TAPTHROUGH(6)",
      result: 1.2563,
      tolerance: 1e-4,
      source: "−10·log10(1 − 10^−0.6), worked by hand",
    },
    {
      formula: "RIG.TAPTHROUGH(12)",
      result: 0.283,
      tolerance: 1e-4,
      source: "−10·log10(1 − 10^−1.2), worked by hand",
    },
  ],
  seeAlso: ["SPLITLOSS", "CASCADELOSS"],
  compute: tapThroughLoss,
  working: tapThroughSteps,
});
