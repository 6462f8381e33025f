import { isFault } from "../../engine/faults";
import { threePoint } from "../../engine/estimate/threePoint";
import { declare } from "../core/declare";
import { number } from "../core/parameters";

const estimate = (name: string, help: string) =>
  number({ name, help, min: -1e12, max: 1e12, advice: "Use one unit for all three" });

export const threepoint = declare({
  name: "THREEPOINT",
  group: "Estimate",
  summary: "Mean and deviation from a low, a likely and a high estimate.",
  parameters: [
    estimate("low", "The figure of a good day: hours, money or lengths."),
    estimate("likely", "The figure to expect, in the same unit."),
    estimate("high", "The figure of a bad day, in the same unit."),
  ],
  result: {
    shape: "row",
    help: "Two cells: mean and standard deviation, in the unit of the estimates.",
    columns: ["mean", "standard deviation"],
  },
  equation: "mean = (low + 4 likely + high) ÷ 6; deviation = (high − low) ÷ 6.",
  source: "Malcolm, Roseboom, Clark & Fazar, Operations Research 7 (1959) 646-669 (from memory)",
  accuracy:
    "An approximation. Means of several lines add up; deviations add as the root of their squares, and only for lines that don't go wrong together.",
  tasks: ["How many hours do I allow for a job I can't be sure of?", "How much contingency is reasonable?"],
  examples: [
    {
      formula: "RIG.THREEPOINT(2,3,10)",
      result: [[4, 1.3333]],
      tolerance: 1e-4,
      source: "by hand from the equation: 24 ÷ 6 and 8 ÷ 6",
    },
  ],
  seeAlso: ["SELLPRICE"],
  faultsWhen: ["low, likely and high are not in rising order."],
  compute: (low, likely, high) => {
    const found = threePoint(low, likely, high);
    return isFault(found) ? found : [found.mean, found.deviation];
  },
});
