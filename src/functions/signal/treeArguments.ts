/** The arguments that describe a distribution tree, and the tree made of them. */
import { isFault, type Fault } from "../../engine/faults";
import { distributionTree, type DistributionTree } from "../../engine/signal/distributionTree";
import { list, optional, text, type ListEntry } from "../core/parameters";
import { firstFault, lengthFault } from "./lists";

export const ids = list(
  text({
    name: "ids",
    help: "The name of each row, as a list; compared without case and surplus blanks.",
    wanted: "a name for every row",
  }),
);

export const fedFrom = list(
  text({
    name: "fed_from",
    help: "The id of the row that feeds each row, as a list; blank, or one of the tops, for a row fed straight from the top.",
    wanted: "a list as long as ids",
  }),
);

export const tops = optional(
  list(
    text({
      name: "tops",
      help: "Names outside the tree from which rows may be fed, such as the head units.",
      wanted: "a list of names",
    }),
  ),
);

export const TREE_FAULTS = [
  "A row is fed from something that is neither an id nor a top.",
  "An id stands twice, or is also the name of a top.",
  "Rows feed each other in a loop.",
  "A row hangs below a row that has a fault.",
] as const;

/** The tree, or a fault that lies in the arguments as a whole. */
export function treeOf(
  ids: readonly ListEntry<string>[],
  fedFrom: readonly ListEntry<string>[],
  tops: readonly ListEntry<string>[] = [],
): DistributionTree | Fault {
  const uneven = lengthFault("ids", ids.length, "fed_from", fedFrom.length);
  if (uneven) return uneven;
  const names = firstFault(tops, "tops");
  if (isFault(names)) return names;
  return distributionTree(
    ids,
    fedFrom,
    names.filter((name) => name !== null),
  );
}
