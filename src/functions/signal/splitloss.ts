import { splitterLoss } from "../../engine/signal/splitterLoss";
import { splitterSteps } from "../../engine/working/splitterSteps";
import { declare } from "../core/declare";
import { excess, ways } from "./parameters";

export const splitloss = declare({
  name: "SPLITLOSS",
  group: "Signal",
  summary: "Loss from a splitter's input to each of its equal outputs.",
  parameters: [ways, excess],
  result: {
    shape: "cell",
    unit: "dB",
    help: "Loss, positive. With no excess given it is the ideal splitter's, which no real one reaches.",
  },
  equation: "10·log10(ways) + excess; excess is 0 when left out.",
  source: "Equal division of power.",
  accuracy:
    "Exact for the ideal part. Published splitter figures below 1 GHz are 3.5, 7 and 10.5 dB for 2, 4 and 8 ways, that is an excess of 0.5, 1 and 1.5 dB; in the satellite band typically 5 to 6, 9 to 10 and 12 to 13 dB (from memory). Take the maker's figure.",
  tasks: ["What does a 4-way splitter cost in level?", "What is left after the splitter?"],
  examples: [
    { formula: "RIG.SPLITLOSS(4)", result: 6.0206, tolerance: 1e-4, source: "10·log10(4), worked by hand" },
    {
      formula: "RIG.SPLITLOSS(2,0.5)",
      result: 3.5,
      tolerance: 0.05,
      source: "Published splitter figure below 1 GHz",
    },
    {
      formula: "RIG.SPLITLOSS(8,1.5)",
      result: 10.5,
      tolerance: 0.05,
      source: "Published splitter figure below 1 GHz",
    },
  ],
  seeAlso: ["CASCADELOSS", "TAPTHROUGH", "TREELOSS"],
  compute: splitterLoss,
  working: splitterSteps,
});
