import { roundMoney } from "../../engine/estimate/roundMoney";
import { declare } from "../core/declare";
import { number, optional } from "../core/parameters";
import { decimals, rule } from "./parameters";

const value = number({ name: "value", help: "The amount to round.", unit: "money", min: -1e15, max: 1e15 });

const times = number({
  name: "times",
  help: "What the amount is multiplied by before it is rounded: a share such as 20%, or a count.",
  min: -1e9,
  max: 1e9,
});

const dividedBy = number({
  name: "divided_by",
  help: "What it is divided by before it is rounded.",
  min: 0,
  aboveMin: true,
  max: 1e9,
  advice: "An amount cannot be shared among none",
});

export const roundmoney = declare({
  name: "ROUNDMONEY",
  group: "Estimate",
  summary:
    "Rounds an amount, or a share of it, by its decimal digits; ties away from zero or to the even digit.",
  parameters: [
    value,
    optional(decimals, 2),
    optional(rule, "half away"),
    optional(times, 1),
    optional(dividedBy, 1),
  ],
  result: { shape: "cell", unit: "money", help: "The rounded amount." },
  equation:
    "value × times ÷ divided_by, in fractions of whole numbers, is cut after the decimals; the rest against a half decides, a tie by the rule.",
  source: "ISO 80000-1 Annex B, rules A and B (from memory); IEEE 754 roundTiesToEven and roundTiesToAway",
  accuracy:
    "Exact: 1.005 gives 1.01, and a tax of 10 % on 5855.65 is 585.57, where 5855.65*0.1 is 585.5649999999999 in binary. A number of up to 15 digits is taken as typed; a longer one was worked out, and is read as the simplest fraction within 16 roundings of it, =1/3 as a third. Round once, where it is printed; lines rounded one by one need not add up to the rounded total.",
  tasks: [
    "How do I round the price on the quote?",
    "What is the tax to the cent?",
    "Why is my total a cent off?",
  ],
  examples: [
    {
      formula: "RIG.ROUNDMONEY(1.005)",
      result: 1.01,
      tolerance: 0,
      source: "ISO 80000-1 Annex B rule B (from memory)",
    },
    {
      formula: 'RIG.ROUNDMONEY(2.345,2,"half even")',
      result: 2.34,
      tolerance: 0,
      source: "ISO 80000-1 Annex B rule A (from memory)",
    },
    {
      formula: 'RIG.ROUNDMONEY(5855.65,2,"half away",0.1)',
      result: 585.57,
      tolerance: 0,
      source: "by hand: a tenth of 5855.65 is 585.565, a tie",
    },
  ],
  seeAlso: ["ADDMONEY", "SELLPRICE"],
  compute: roundMoney,
});
