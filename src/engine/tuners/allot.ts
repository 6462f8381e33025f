/**
 * Which head unit serves each row of a list, on as few head units as can be,
 * with the rows of one group (a room) never on two of them.
 *
 * First fit in the order of the rows is kept where it is good enough, because
 * neighbours then share a head unit; else the exact packing is used. Head
 * units are numbered in the order of the rows that first use them.
 *
 * Source: bin packing, see engine/packing.
 * Accuracy: the least number of head units; should the exact search be cut
 *   off, at most 11/9 of it plus 6/9 (see engine/packing/pack).
 * Range: capacity 1 to 32; any number of rows.
 */
import { argument } from "../argumentNames";
import { faults, isFault, type Fault } from "../faults";
import { firstFit } from "../packing/firstFit";
import { pack } from "../packing/pack";

/** What a row with no tuner gets. */
export const NONE = "none";

export type Allotment = number | typeof NONE | null | Fault;

interface Item {
  readonly label: string;
  readonly rows: number[];
  tuners: number;
}

/**
 * @param tuners whole number of tuners of each row, null for a blank row
 * @param capacity tuners that one head unit serves
 * @param groups the group of each row; rows without one stand alone
 * @returns for each row its head unit from 1, "none" without tuners, null for
 *   a blank row; a fault in every row of a group larger than the capacity
 */
export function allot(
  tuners: readonly (number | null | Fault)[],
  capacity: number,
  groups?: readonly (string | null | Fault)[],
): Allotment[] | Fault {
  if (groups && groups.length !== tuners.length) {
    return faults.shortColumn("groups", groups.length, tuners.length);
  }
  const answers: Allotment[] = tuners.map(() => null);
  const items: Item[] = [];
  const byGroup = new Map<string, Item>();
  tuners.forEach((count, row) => {
    const group = groups?.[row] ?? null;
    if (count === null) return;
    if (isFault(count) || isFault(group)) {
      answers[row] = isFault(count) ? count : (group as Fault);
      return;
    }
    // A row of no tuners needs no head unit, whatever the others of its room need.
    if (count === 0) {
      answers[row] = NONE;
      return;
    }
    const key = group?.toLowerCase();
    let item = key === undefined ? undefined : byGroup.get(key);
    if (!item) {
      item = {
        label: group === null ? argument("tuners", row + 1, `Row ${row + 1}`) : `Group "${group}"`,
        rows: [],
        tuners: 0,
      };
      items.push(item);
      if (key !== undefined) byGroup.set(key, item);
    }
    item.rows.push(row);
    item.tuners += count;
  });

  const answer = (item: Item, value: Allotment): void => item.rows.forEach((row) => (answers[row] = value));
  const fitting = items.filter((item) => {
    if (item.tuners > capacity) answer(item, faults.tooManyTuners(item.label, item.tuners, capacity));
    return item.tuners <= capacity;
  });
  const bins = numbered(
    fitting.map((item) => item.tuners),
    capacity,
  );
  fitting.forEach((item, index) => answer(item, bins[index]!));
  return answers;
}

function numbered(sizes: readonly number[], capacity: number): number[] {
  const inOrder = firstFit(sizes, capacity);
  const fewest = pack(sizes, capacity);
  const bins = inOrder.every((bin) => bin < fewest.count) ? inOrder : fewest.bins;
  const numbers = new Map<number, number>();
  return bins.map((bin) => {
    if (!numbers.has(bin)) numbers.set(bin, numbers.size + 1);
    return numbers.get(bin)!;
  });
}
