import { isFault } from "../../engine/faults";
import { treeLoss } from "../../engine/signal/treeLoss";
import { isBlank } from "../core/cells";
import { declare } from "../core/declare";
import { number, table } from "../core/parameters";
import { lengthFault } from "./lists";
import { fedFrom, ids, tops, TREE_FAULTS, treeOf } from "./treeArguments";

const ownLoss = number({ name: "own_losses", help: "", unit: "dB", min: -200, max: 1000 });

export const treeloss = declare({
  name: "TREELOSS",
  group: "Signal",
  summary: "Loss from the top of a distribution to every one of its rows, in one call.",
  parameters: [
    ids,
    fedFrom,
    table({
      name: "own_losses",
      help: "Loss of each row by itself in dB, its cable and device together; several columns are summed side by side. A gain is negative.",
      wanted: "one or more columns of losses in dB, as long as ids",
    }),
    tops,
  ],
  result: {
    shape: "table",
    unit: "dB",
    help: "For each row the loss so far, in as many columns as own_losses has; blank for a blank row.",
  },
  equation: "Loss so far = own loss + loss so far of the row that feeds it; 0 at the top.",
  source: "Decibels along a path add.",
  accuracy: "Exact; reflections between the parts are left out.",
  tasks: [
    "Will the far bedroom have enough signal?",
    "What has each outlet lost since the head unit?",
    "How much is lost down to each splitter, at the lowest and the highest frequency?",
  ],
  examples: [
    {
      formula: 'RIG.TREELOSS({"S1";"S2";"Room 1"},{"";"S1";"S2"},{7.5;5;3})',
      result: [[7.5], [12.5], [15.5]],
      tolerance: 1e-9,
      source: "7.5, 7.5 + 5, 7.5 + 5 + 3, worked by hand",
    },
  ],
  seeAlso: ["TREEROOT", "CABLELOSS", "SPLITLOSS"],
  faultsWhen: [...TREE_FAULTS, "A row has no own loss, or one that is not a number."],
  compute: (ids, fedFrom, ownLosses, tops) => {
    const tree = treeOf(ids, fedFrom, tops);
    if (isFault(tree)) return tree;
    const uneven = lengthFault("ids", ids.length, "own_losses", ownLosses.length);
    if (uneven) return uneven;
    return treeLoss(
      tree,
      ids,
      ownLosses.map((row) => row.map((cell) => (isBlank(cell) ? null : ownLoss.read(cell)))),
    );
  },
});
