import { markupOfMargin } from "../../engine/estimate/markupOfMargin";
import { markupSteps } from "../../engine/working/priceSteps";
import { declare } from "../core/declare";
import { margin } from "./parameters";

export const markup = declare({
  name: "MARKUP",
  group: "Estimate",
  summary: "The markup on cost that gives a margin on the price.",
  parameters: [margin],
  result: { shape: "cell", help: "Markup as a share of the cost: 0.25 is 25 %." },
  equation: "markup = margin ÷ (1 − margin).",
  source: "Definitions of markup and margin",
  accuracy: "Exact; the nearest number is given.",
  tasks: ["What do I add to cost to make my margin?", "Is 30 per cent markup a margin of 30 per cent?"],
  examples: [
    {
      formula: "RIG.MARKUP(0.2)",
      result: 0.25,
      tolerance: 1e-12,
      source: "by hand: 20 on a price of 100 is 25 % of a cost of 80",
    },
  ],
  seeAlso: ["MARGIN", "SELLPRICE"],
  faultsWhen: ["The margin is 1 or more: 20 is not twenty per cent, write 0.2 or 20%."],
  compute: markupOfMargin,
  working: markupSteps,
});
