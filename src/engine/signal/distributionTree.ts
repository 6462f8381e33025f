/**
 * The rows of a distribution (splitters, taps, outlets), each fed from another
 * row or from the top, put in order from the top down.
 *
 * A row that is bad in itself (no id, an id twice, an unknown feed, a loop)
 * gets a fault, and every row below it a fault that names it; all other rows
 * stay good. Time is linear in the rows and nothing recurses, so a chain of
 * 10 000 rows is as safe as a flat list.
 */
import { faults, isFault, type Fault } from "../faults";
import { nameKey } from "./nameKey";

/** An entry of a column: `null` is blank, a fault is what could not be read. */
export type Entry<T> = T | null | Fault;

export interface TreeRow {
  /** Index of the row that feeds this one; −1 at the top. */
  readonly parent: number;
  /** Name at the top of the path: one of the tops, or the id of the row fed straight from the top. */
  readonly root: string;
}

export interface DistributionTree {
  /** As long as the columns; `null` for a blank row. */
  readonly rows: readonly (TreeRow | Fault | null)[];
  /** Indexes of the good rows, each after the row that feeds it. */
  readonly order: readonly number[];
}

const AT_TOP = -1;

/**
 * @param ids the name of each row; compared without case and surplus blanks
 * @param fedFrom the id of the row, or the name of the top, that feeds each row; blank is the top
 * @param tops names outside the tree from which rows may be fed, such as head units
 * @returns each row's feed and root, or its fault
 */
export function distributionTree(
  ids: readonly Entry<string>[],
  fedFrom: readonly Entry<string>[],
  tops: readonly string[],
): DistributionTree {
  const topByKey = new Map(tops.map((name) => [nameKey(name), name]));
  const rowByKey = new Map<string, number>();
  const settled: (TreeRow | Fault | null | undefined)[] = ids.map((id, row) => {
    const from = fedFrom[row] ?? null;
    if (id === null) return from === null ? null : faults.missing("ids", "an id for every row that is fed");
    if (isFault(id)) return id;
    const key = nameKey(id);
    if (topByKey.has(key)) return faults.treeIdIsTop(id);
    if (!rowByKey.has(key)) rowByKey.set(key, row);
    return isFault(from) ? from : undefined;
  });

  const idOf = (row: number): string => ids[row] as string;
  /** For a bad row, the row in which its trouble starts. */
  const culprit: number[] = ids.map((_, row) => row);
  const parent: number[] = ids.map(() => AT_TOP);
  const order: number[] = [];

  for (const [row, id] of ids.entries()) {
    if (id === null || isFault(id)) continue;
    const first = rowByKey.get(nameKey(id));
    if (first !== undefined && first !== row) settled[first] = settled[row] = faults.treeDuplicate(id);
    if (settled[row] !== undefined) continue;
    settled[row] = feedOf(row);
  }

  /** Settles rows at the top and rows with an unknown feed; notes the parent of all others. */
  function feedOf(row: number): TreeRow | Fault | undefined {
    const from = fedFrom[row] as string | null;
    const top = from === null ? idOf(row) : topByKey.get(nameKey(from));
    if (top !== undefined) return { parent: AT_TOP, root: top };
    const feeding = rowByKey.get(nameKey(from!));
    if (feeding === undefined) return faults.treeUnknownParent(idOf(row), from!);
    parent[row] = feeding;
    return undefined;
  }

  // A row at the top may turn out a duplicate only later, so the order starts after all are looked at.
  for (const [row, state] of settled.entries()) if (state && !isFault(state)) order.push(row);

  const climbedFrom = new Int32Array(ids.length).fill(-1);
  for (let start = 0; start < ids.length; start += 1) {
    const path: number[] = [];
    let row = start;
    while (settled[row] === undefined && climbedFrom[row] !== start) {
      climbedFrom[row] = start;
      path.push(row);
      row = parent[row]!;
    }
    if (settled[row] === undefined) {
      const loop = path.splice(path.indexOf(row));
      const trouble = faults.treeLoop(loop.map(idOf));
      for (const member of loop) settled[member] = trouble;
    }
    for (const below of path.reverse()) {
      const above = settled[parent[below]!]!;
      if (isFault(above)) {
        culprit[below] = culprit[parent[below]!]!;
        settled[below] = faults.treeBelowFault(idOf(below), idOf(culprit[below]!));
      } else {
        settled[below] = { parent: parent[below]!, root: above.root };
        order.push(below);
      }
    }
  }
  return { rows: settled as (TreeRow | Fault | null)[], order };
}
