import { marginOfMarkup } from "../../engine/estimate/marginOfMarkup";
import { marginSteps } from "../../engine/working/priceSteps";
import { declare } from "../core/declare";
import { number } from "../core/parameters";

const markup = number({
  name: "markup",
  help: "Markup as a share of the cost: 0.25 or 25%.",
  min: 0,
  max: 10,
  advice: "Write 0.25 or 25% for twenty-five per cent",
});

export const margin = declare({
  name: "MARGIN",
  group: "Estimate",
  summary: "The margin on the price that a markup on cost leaves.",
  parameters: [markup],
  result: { shape: "cell", help: "Margin as a share of the price: 0.2 is 20 %." },
  equation: "margin = markup ÷ (1 + markup).",
  source: "Definitions of markup and margin",
  accuracy: "Exact; the nearest number is given.",
  tasks: ["What margin does my usual markup leave?"],
  examples: [
    {
      formula: "RIG.MARGIN(0.25)",
      result: 0.2,
      tolerance: 1e-12,
      source: "by hand: a cost of 80 marked up by 25 % sells at 100 and leaves 20",
    },
  ],
  seeAlso: ["MARKUP", "SELLPRICE"],
  compute: marginOfMarkup,
  working: marginSteps,
});
