import { sellPrice } from "../../engine/estimate/sellPrice";
import { sellPriceSteps } from "../../engine/working/priceSteps";
import { declare } from "../core/declare";
import { cost, margin } from "./parameters";

export const sellprice = declare({
  name: "SELLPRICE",
  group: "Estimate",
  summary: "The price that leaves a margin on a cost.",
  parameters: [cost, margin],
  result: { shape: "cell", unit: "money", help: "Price in the unit of the cost, not rounded." },
  equation:
    "price = cost ÷ (1 − margin). The margin is a share of the price, the markup a share of the cost.",
  source: "Definition of the margin",
  accuracy:
    "Exact; the nearest number is given: 2.01 at a margin of =1/3 is 3.015. Round once, where it is printed, with ROUNDMONEY.",
  tasks: ["What do I sell this for at my margin?", "What price leaves 20 per cent?"],
  examples: [
    {
      formula: "RIG.SELLPRICE(80,0.2)",
      result: 100,
      tolerance: 1e-9,
      source: "by hand: 20 of a price of 100 is the margin on a cost of 80",
    },
  ],
  seeAlso: ["MARKUP", "MARGIN", "ROUNDMONEY", "ADDMONEY"],
  faultsWhen: ["The margin is 1 or more: 20 is not twenty per cent, write 0.2 or 20%."],
  compute: sellPrice,
  working: sellPriceSteps,
});
