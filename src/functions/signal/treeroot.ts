import { isFault } from "../../engine/faults";
import { declare } from "../core/declare";
import { fedFrom, ids, tops, TREE_FAULTS, treeOf } from "./treeArguments";

export const treeroot = declare({
  name: "TREEROOT",
  group: "Signal",
  summary: "The name at the top of every row's path through the distribution, such as its head unit.",
  parameters: [ids, fedFrom, tops],
  result: {
    shape: "column",
    help: "For each row the top that feeds it, or the id at the head of its path where that is fed from nothing; blank for a blank row.",
  },
  equation: "Follow fed_from from row to row until a top or a blank.",
  source: "The tree as given.",
  accuracy: "Exact.",
  tasks: ["Which head unit does each outlet hang on?"],
  examples: [
    {
      formula: 'RIG.TREEROOT({"S1";"S2";"Room 1"},{"Head unit A";"S1";"S2"},{"Head unit A";"Head unit B"})',
      result: [["Head unit A"], ["Head unit A"], ["Head unit A"]],
      source: "Followed by hand",
    },
  ],
  seeAlso: ["TREELOSS"],
  faultsWhen: TREE_FAULTS,
  compute: (ids, fedFrom, tops) => {
    const tree = treeOf(ids, fedFrom, tops);
    if (isFault(tree)) return tree;
    return tree.rows.map((row) => (row === null || isFault(row) ? row : row.root));
  },
});
