/**
 * Packs items of whole sizes into bins that are there already, each with a room
 * of its own, and into as few whole bins as can be for what is left over.
 *
 * The bins that are there are filled one after the other, each as full as can
 * be found, once from the smallest and once from the largest; where neither
 * meets the lower bound and there are few items, every way is tried.
 *
 * Source: plain depth-first search over bins of several sizes; the rest is pack.ts.
 * Accuracy: the least number of whole bins where `proved`.
 * Range: whole sizes; an item above the capacity goes only into a bin that is there.
 */
import { fullestWith } from "./fullestFirst";
import { pack, type Packing } from "./pack";
import { countBySize } from "./stock";

const SEARCH_STEPS = 200_000;
/** Beyond so many items the search is lost. */
const SEARCH_ITEMS = 60;

/**
 * @param sizes whole numbers from 1
 * @param capacity what a whole bin holds
 * @param started what is left in each bin that is there
 * @returns as of `pack`, with the bins that are there first; undefined where an item fits nowhere
 */
export function packWithStarted(
  sizes: readonly number[],
  capacity: number,
  started: readonly number[],
): Packing | undefined {
  const rising = started.map((_, index) => index).sort((a, b) => started[a]! - started[b]! || a - b);
  const found = [rising, [...rising].reverse()]
    .map((order) => filledInOrder(sizes, capacity, started, order))
    .filter((one) => one !== undefined)
    .sort((a, b) => a.count - b.count);
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const room = started.reduce((sum, size) => sum + size, 0);
  const least = started.length + Math.max(0, Math.ceil((total - room) / capacity));
  const best = found[0];
  if (best?.count === least) return { ...best, proved: true };
  if (sizes.length > SEARCH_ITEMS) return best;
  const budget = { steps: SEARCH_STEPS };
  const most = best?.count ?? started.length + sizes.length + 1;
  for (let count = least; count < most; count += 1) {
    const rooms = [...started, ...Array<number>(count - started.length).fill(capacity)];
    const bins = placed(sizes, rooms, budget);
    if (bins) return { bins, count, proved: true };
    if (budget.steps <= 0) return best;
  }
  return best && { ...best, proved: true };
}

function filledInOrder(
  sizes: readonly number[],
  capacity: number,
  started: readonly number[],
  order: readonly number[],
): Packing | undefined {
  const bins = new Array<number>(sizes.length).fill(-1);
  let left = sizes.map((_, index) => index).sort((a, b) => sizes[b]! - sizes[a]! || a - b);
  for (const bin of order) {
    const room = started[bin]!;
    const fitting = left.filter((index) => sizes[index]! <= room);
    if (fitting.length === 0) continue;
    const stock = countBySize(fitting.map((index) => sizes[index]!));
    const taken = new Map<number, number>();
    for (const at of fullestWith(stock, room)) {
      const { size } = stock[at]!;
      taken.set(size, (taken.get(size) ?? 0) + 1);
    }
    left = left.filter((index) => {
      const more = taken.get(sizes[index]!) ?? 0;
      if (more === 0) return true;
      taken.set(sizes[index]!, more - 1);
      bins[index] = bin;
      return false;
    });
  }
  if (left.some((index) => sizes[index]! > capacity)) return undefined;
  const whole = pack(
    left.map((index) => sizes[index]!),
    capacity,
  );
  left.forEach((index, at) => (bins[index] = started.length + whole.bins[at]!));
  return { bins, count: started.length + whole.count, proved: whole.count === 0 };
}

/** Every item in turn, from the largest, into each room that is unlike the ones tried before it. */
function placed(sizes: readonly number[], rooms: number[], budget: { steps: number }): number[] | undefined {
  const order = sizes.map((_, index) => index).sort((a, b) => sizes[b]! - sizes[a]! || a - b);
  const bins = new Array<number>(sizes.length);
  const place = (at: number): boolean => {
    if (at === order.length) return true;
    const size = sizes[order[at]!]!;
    const tried = new Set<number>();
    for (const [bin, room] of rooms.entries()) {
      if (room < size || tried.has(room)) continue;
      if (budget.steps <= 0) return false;
      budget.steps -= 1;
      tried.add(room);
      rooms[bin] = room - size;
      bins[order[at]!] = bin;
      if (place(at + 1)) return true;
      rooms[bin] = room;
    }
    return false;
  };
  return place(0) ? bins : undefined;
}
