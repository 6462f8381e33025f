import { isFault, type Fault } from "../../engine/faults";
import { cascadeLoss } from "../../engine/signal/cascadeLoss";
import { cascadeSteps } from "../../engine/working/splitterSteps";
import { declare } from "../core/declare";
import { list, number, optional, type ListEntry } from "../core/parameters";
import { firstFault, lengthFault } from "./lists";
import { ways } from "./parameters";

const excessList = optional(
  list(
    number({
      name: "excess",
      help: "Loss beyond the ideal: a list as long as ways, or one value for all.",
      unit: "dB",
      min: 0,
      max: 30,
    }),
  ),
);

export const cascadeloss = declare({
  name: "CASCADELOSS",
  group: "Signal",
  summary: "Loss of splitters one behind another.",
  parameters: [
    list({
      ...ways,
      help: "A list: the number of ways of each splitter on the path. Blanks are passed over.",
    }),
    excessList,
  ],
  result: {
    shape: "cell",
    unit: "dB",
    help: "Loss from the first input to the last output, positive; blank for a blank list.",
  },
  equation: "Σ (10·log10(ways) + excess); excess is 0 when left out.",
  source: "As SPLITLOSS; decibels along a path add.",
  accuracy: "As SPLITLOSS. Ripple from reflections between the parts is left out.",
  tasks: ["What do the splitters between head unit and outlet cost together?"],
  examples: [
    {
      formula: "RIG.CASCADELOSS({4;8})",
      result: 15.0515,
      tolerance: 1e-4,
      source: "10·log10(32), worked by hand",
    },
    {
      formula: "RIG.CASCADELOSS({2;4},{0.5;1})",
      result: 10.5,
      tolerance: 0.1,
      source: "Published splitter figures below 1 GHz: 3.5 dB and 7 dB",
    },
  ],
  seeAlso: ["SPLITLOSS", "TREELOSS"],
  faultsWhen: ["The two lists differ in length.", "An entry has an excess but no ways."],
  compute: (ways, given) => {
    const stages = readStages(ways, given);
    if (isFault(stages)) return stages;
    const blank = [...stages.ways, ...stages.excess].every((entry) => entry === null);
    return blank ? "" : cascadeLoss(stages.ways, stages.excess);
  },
  working: (ways, given) => {
    const stages = readStages(ways, given);
    return isFault(stages) ? stages : cascadeSteps(stages.ways, stages.excess);
  },
});

/** Two lists of one length; a single excess serves all splitters. */
function readStages(
  ways: readonly ListEntry<number>[],
  given: readonly ListEntry<number>[] = [null],
): { ways: (number | null)[]; excess: (number | null)[] } | Fault {
  const readWays = firstFault(ways);
  if (isFault(readWays)) return readWays;
  const readExcess = firstFault(given);
  if (isFault(readExcess)) return readExcess;
  const excess =
    readExcess.length === 1 && readWays.length > 1
      ? readWays.map((entry) => (entry === null ? null : readExcess[0]!))
      : readExcess;
  return lengthFault("ways", readWays.length, "excess", excess.length) ?? { ways: readWays, excess };
}
