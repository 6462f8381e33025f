import { sellPrice } from "../../engine/estimate/sellPrice";
import { sellPriceSteps } from "../../engine/working/priceSteps";
import { declare } from "../core/declare";
import { number, optional } from "../core/parameters";
import { cost, decimals, margin, rule } from "./parameters";

const contingency = number({
  name: "contingency",
  help: "Share of the cost that is added to it first: 0.03 or 3%.",
  min: 0,
  max: 10,
  advice: "Write 0.03 or 3% for three per cent",
});

const overhead = number({
  name: "overhead",
  help: "Share of cost and contingency that is added to them: 0.1 or 10%.",
  min: 0,
  max: 10,
  advice: "Write 0.1 or 10% for ten per cent",
});

export const sellprice = declare({
  name: "SELLPRICE",
  group: "Estimate",
  summary: "The price that leaves a margin on a cost.",
  parameters: [
    cost,
    margin,
    optional(contingency, 0),
    optional(overhead, 0),
    optional({
      ...decimals,
      help: "Places after the decimal point to round the price to; blank leaves it unrounded.",
    }),
    optional(rule, "half away"),
  ],
  result: {
    shape: "cell",
    unit: "money",
    help: "Price in the unit of the cost, rounded where decimals are given.",
  },
  equation:
    "price = cost·(1 + contingency)·(1 + overhead) ÷ (1 − margin). The margin is a share of the price, the markup a share of the cost.",
  source: "Definition of the margin",
  accuracy:
    "Exact before it is rounded: 2.01 at a margin of =1/3 is 3.015, and 3.02 with two decimals. Round once, where it is printed: here, or with ROUNDMONEY.",
  tasks: ["What do I sell this for at my margin?", "What price leaves 20 per cent?"],
  examples: [
    {
      formula: "RIG.SELLPRICE(80,0.2)",
      result: 100,
      tolerance: 1e-9,
      source: "by hand: 20 of a price of 100 is the margin on a cost of 80",
    },
    {
      formula: "RIG.SELLPRICE(100,0.2,0.03,0.1,2)",
      result: 141.63,
      tolerance: 0,
      source: "by hand: 100·1.03·1.1 is 113.3, which is 80 % of 141.625, a tie",
    },
  ],
  seeAlso: ["MARKUP", "MARGIN", "ROUNDMONEY", "ADDMONEY"],
  faultsWhen: ["The margin is 1 or more: 20 is not twenty per cent, write 0.2 or 20%."],
  compute: sellPrice,
  working: sellPriceSteps,
});
