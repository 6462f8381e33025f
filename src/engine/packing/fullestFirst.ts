/**
 * Fills one bin after the other as full as can be found: the largest item
 * left, then the choice of others that leaves the least room.
 *
 * Source: the minimum-bin-slack heuristic of Gupta & Ho, Production Planning &
 *   Control 10 (1999) 598-603, begun with the largest item (from memory).
 * Accuracy: a valid packing, in large jobs mostly better than first-fit
 *   decreasing; no bound is known, so the caller keeps the better of the two.
 *   The choice for one bin is given up with the best so far when its share of
 *   the steps is spent, a million over all items and 1,000 at most.
 */
import type { Stock } from "./stock";

const STEPS_IN_ALL = 1_000_000;
const STEPS_PER_BIN = 1000;

/**
 * @param stock whole sizes from large to small with their counts
 * @param capacity what one bin holds, in the unit of the sizes
 * @returns for each item, in the order of the stock, its bin from 0; and how many bins there are
 */
export function fullestFirst(stock: readonly Stock[], capacity: number): { bins: number[]; count: number } {
  const sizes = stock.map(({ size }) => size);
  const left = stock.map(({ count }) => count);
  const items = left.reduce((sum, count) => sum + count, 0);
  const steps = Math.min(STEPS_PER_BIN, Math.ceil(STEPS_IN_ALL / items));
  const bySize: number[][] = stock.map(() => []);
  // The next size of which anything is left, at or after an index; one entry more than there are sizes.
  const next = Array.from({ length: sizes.length + 1 }, (_, index) => index);
  const nextFrom = (index: number): number => {
    let at = index;
    while (next[at] !== at) at = next[at] = next[next[at]!]!;
    return at;
  };

  let count = 0;
  for (let largest = nextFrom(0); largest < sizes.length; largest = nextFrom(largest)) {
    left[largest]! -= 1;
    const pattern = [largest, ...fullest(sizes, left, nextFrom, largest, capacity - sizes[largest]!, steps)];
    left[largest]! += 1;
    for (const index of pattern) {
      left[index]! -= 1;
      bySize[index]!.push(count);
      if (left[index] === 0) next[index] = index + 1;
    }
    count += 1;
  }
  return { bins: bySize.flat(), count };
}

/**
 * @param stock whole sizes from large to small with their counts, none above the room
 * @returns the largest item and those that go with it into one bin, each by its place in the stock
 */
export function fullestWith(stock: readonly Stock[], room: number): number[] {
  const sizes = stock.map(({ size }) => size);
  const left = stock.map(({ count }) => count);
  left[0]! -= 1;
  const rest = fullest(sizes, left, (index) => index, 0, room - sizes[0]!, STEPS_PER_BIN);
  return [0, ...rest];
}

/** The sizes, by index, that leave the least of the room, as far as the steps go. */
function fullest(
  sizes: readonly number[],
  left: number[],
  nextFrom: (index: number) => number,
  from: number,
  room: number,
  mostSteps: number,
): number[] {
  let best: number[] = [];
  let leastRoom = room;
  let steps = mostSteps;
  const chosen: number[] = [];
  const fill = (start: number, roomLeft: number): void => {
    if (roomLeft < leastRoom) {
      leastRoom = roomLeft;
      best = [...chosen];
    }
    let index = nextFrom(Math.max(start, firstOfAtMost(sizes, roomLeft)));
    for (; index < sizes.length && leastRoom > 0 && steps > 0; index = nextFrom(index + 1)) {
      if (left[index] === 0) continue;
      steps -= 1;
      left[index]! -= 1;
      chosen.push(index);
      fill(index, roomLeft - sizes[index]!);
      chosen.pop();
      left[index]! += 1;
    }
  };
  fill(from, room);
  return best;
}

/** Index of the first size of at most `most`, in sizes from large to small. */
function firstOfAtMost(sizes: readonly number[], most: number): number {
  let low = 0;
  let high = sizes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sizes[middle]! <= most) high = middle;
    else low = middle + 1;
  }
  return low;
}
