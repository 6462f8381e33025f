/**
 * Exact search for a packing into a given number of bins, by counts of sizes
 * rather than by items: a bin's pattern is how many it holds of each size.
 *
 * The next bin always holds the largest item left. Only patterns into which
 * nothing more would go are tried, the fullest first, and each as often as it
 * goes before it is tried once. Two kinds of bin need no choice: one with
 * room for a single partner takes the largest partner, and a pair that fills
 * a bin exactly is taken. What was wasted may not exceed what can be wasted in
 * all, and a state that failed is not searched again.
 *
 * Source: the dominance rules are those of Martello & Toth, Knapsack Problems
 *   (Wiley 1990), ch. 8; the rest is plain depth-first search.
 * Accuracy: exact unless the step budget runs out; the caller sees that.
 */
import type { Stock } from "./stock";

export interface BinPattern {
  /** How many of each size of the stock, in its order. */
  readonly taken: readonly number[];
  /** How many bins are filled so. */
  readonly times: number;
}

/** Counted down by the search; at 0 it gives up. */
export interface Budget {
  steps: number;
}

interface Candidate {
  readonly taken: readonly number[];
  readonly waste: number;
}

/** Deeper than this the search is lost in a very large set; it gives up. */
const MOST_DEPTH = 1000;

/**
 * @param stock whole sizes from large to small with their counts
 * @param capacity what one bin holds, in the unit of the sizes
 * @param bins how many bins may be used
 * @param budget steps that may be spent; 0 left after the call means "gave up"
 * @returns the patterns, or undefined when there are none or the search gave up
 */
export function findPatterns(
  stock: readonly Stock[],
  capacity: number,
  bins: number,
  budget: Budget,
): BinPattern[] | undefined {
  const sizes = stock.map(({ size }) => size);
  const left = stock.map(({ count }) => count);
  const total = stock.reduce((sum, { size, count }) => sum + size * count, 0);
  const failed = new Set<string>();
  const chosen: BinPattern[] = [];

  const change = (taken: readonly number[], times: number): void =>
    taken.forEach((count, index) => (left[index] = left[index]! - count * times));

  const search = (binsLeft: number, spare: number, depth: number): boolean => {
    const largest = left.findIndex((count) => count > 0);
    if (largest < 0) return true;
    if (binsLeft === 0 || spare < 0) return false;
    if (depth > MOST_DEPTH) budget.steps = 0;
    const state = `${binsLeft}:${left.join()}`;
    if (failed.has(state)) return false;

    const forced = forcedFilling(sizes, left, capacity, largest);
    for (const { taken, waste } of forced
      ? [forced]
      : maximalFillings(sizes, left, capacity, largest, spare, budget)) {
      const most = taken.reduce(
        (least, count, index) => (count > 0 ? Math.min(least, Math.floor(left[index]! / count)) : least),
        binsLeft,
      );
      for (const times of most > 1 && !forced ? [most, 1] : [most]) {
        if (budget.steps <= 0) return false;
        budget.steps -= 1;
        change(taken, times);
        if (search(binsLeft - times, spare - waste * times, depth + 1)) {
          chosen.push({ taken, times });
          return true;
        }
        change(taken, -times);
      }
    }
    failed.add(state);
    return false;
  };
  return search(bins, bins * capacity - total, 0) ? chosen : undefined;
}

/** The one pattern that need be tried with the largest item, where there is such a one. */
function forcedFilling(
  sizes: readonly number[],
  left: readonly number[],
  capacity: number,
  largest: number,
): Candidate | undefined {
  const room = capacity - sizes[largest]!;
  const available = (index: number): number => left[index]! - (index === largest ? 1 : 0);
  const partner = sizes.findIndex((size, index) => size <= room && available(index) > 0);
  const taken = sizes.map((_, index): number => (index === largest ? 1 : 0));
  if (partner < 0) return { taken, waste: room };

  const smallest = sizes.findLastIndex((_, index) => available(index) > 0);
  const second =
    available(smallest) > 1
      ? smallest
      : sizes.findLastIndex((_, index) => index < smallest && available(index) > 0);
  const roomForTwo = second >= 0 && sizes[smallest]! + sizes[second]! <= room;
  if (roomForTwo && sizes[partner] !== room) return undefined;
  taken[partner] = taken[partner]! + 1;
  return { taken, waste: room - sizes[partner]! };
}

/** Every pattern with the largest item into which nothing more would go, the fullest first. */
function maximalFillings(
  sizes: readonly number[],
  left: readonly number[],
  capacity: number,
  largest: number,
  spare: number,
  budget: Budget,
): Candidate[] {
  const found: Candidate[] = [];
  const taken = sizes.map(() => 0);
  const fill = (index: number, room: number, least: number): void => {
    if (budget.steps <= 0) return;
    budget.steps -= 1;
    const size = sizes[index];
    if (size === undefined) {
      const maximal = sizes.every((other, at) => other > room || taken[at] === left[at]);
      if (maximal && room <= spare) found.push({ taken: [...taken], waste: room });
      return;
    }
    for (let count = Math.min(left[index]!, Math.floor(room / size)); count >= least; count -= 1) {
      taken[index] = count;
      fill(index + 1, room - count * size, 0);
    }
    taken[index] = 0;
  };
  fill(largest, capacity, 1);
  return found.sort((a, b) => a.waste - b.waste);
}
