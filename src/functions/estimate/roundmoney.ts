import { ROUNDING_RULES, roundMoney } from "../../engine/estimate/roundMoney";
import { declare } from "../core/declare";
import { choice, number, optional } from "../core/parameters";

const value = number({ name: "value", help: "The amount to round.", unit: "money", min: -1e15, max: 1e15 });

const decimals = number({
  name: "decimals",
  help: "Places kept after the decimal point.",
  integer: true,
  min: 0,
  max: 6,
});

const rule = choice({
  name: "rule",
  help: 'Where a tie goes: "half away" from zero, or "half even" to the even digit.',
  choices: ROUNDING_RULES,
});

export const roundmoney = declare({
  name: "ROUNDMONEY",
  group: "Estimate",
  summary: "Rounds an amount by its decimal digits, ties away from zero or to the even digit.",
  parameters: [value, optional(decimals, 2), optional(rule, "half away")],
  result: { shape: "cell", unit: "money", help: "The rounded amount." },
  equation:
    "The shortest decimal text of the value is cut after the decimals; the rest against a half decides, a tie by the rule.",
  source: "ISO 80000-1 Annex B, rules A and B (from memory); IEEE 754 roundTiesToEven and roundTiesToAway",
  accuracy:
    "Exact in decimal arithmetic: 1.005 gives 1.01. Round once, where it is printed; lines rounded one by one need not add up to the rounded total.",
  tasks: ["How do I round the price on the quote?", "Why is my total a cent off?"],
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
  ],
  seeAlso: ["SELLPRICE"],
  compute: roundMoney,
});
