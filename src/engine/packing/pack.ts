/**
 * Packs items of whole sizes into as few bins as can be.
 *
 * First-fit decreasing gives a packing, and a lower bound tells whether it is
 * the least. If not, others are tried: the fullest pattern bin after bin, and
 * the linear relaxation's whole bins with the few items left over packed by
 * themselves. Between the bound and the best of them an exact search decides.
 *
 * Source: Dósa, ESCAPE 2007, LNCS 4614: first-fit decreasing uses at most
 *   11/9 of the least number of bins, plus 6/9.
 * Accuracy: the least number where `proved`; else within Dósa's bound. The
 *   number does not depend on the order of the items.
 * Range: whole sizes from 1 to the capacity. The search spends at most 100,000
 *   steps and is left out above 100 different sizes.
 */
import { findPatterns, type Budget, type BinPattern } from "./findPatterns";
import { firstFit } from "./firstFit";
import { fullestFirst } from "./fullestFirst";
import { lowerBound } from "./lowerBound";
import { relaxation } from "./relaxation";
import { countBySize, type Stock } from "./stock";

const SEARCH_STEPS = 100_000;
const SEARCH_SIZES = 100;
/** The relaxation's own work grows with the capacity, and with the sizes: beyond so much of both it is felt. */
const RELAXED_CAPACITY = 1000;
const RELAXED_WORK = 60_000;

export interface Packing {
  /** For each item the number of its bin, from 0. */
  readonly bins: readonly number[];
  readonly count: number;
  /** No packing with fewer bins exists. */
  readonly proved: boolean;
}

/**
 * @param sizes whole numbers from 1 to the capacity
 * @param capacity what one bin holds, a whole number in the unit of the sizes
 * @returns the bin of each item, the number of bins, and whether that is proved least
 */
export function pack(sizes: readonly number[], capacity: number): Packing {
  const order = sizes.map((_, index) => index).sort((a, b) => sizes[b]! - sizes[a]! || a - b);
  const { bins, count, proved } = packSorted(
    order.map((index) => sizes[index]!),
    capacity,
  );
  const back = new Array<number>(order.length);
  order.forEach((item, position) => (back[item] = bins[position]!));
  return { bins: back, count, proved };
}

function packSorted(sorted: readonly number[], capacity: number): Packing {
  const placed = firstFit(sorted, capacity);
  const decreasing = { bins: placed, count: 1 + placed.reduce((most, bin) => Math.max(most, bin), -1) };
  const stock = countBySize(sorted);
  const bound = lowerBound(stock, capacity);
  if (bound === decreasing.count) return { ...decreasing, proved: true };
  const simple = fewer(fullestFirst(stock, capacity), decreasing);
  if (bound === simple.count) return { ...simple, proved: true };
  if (stock.length > SEARCH_SIZES) return { ...simple, proved: false };

  const isSmall = capacity <= RELAXED_CAPACITY && capacity * stock.length <= RELAXED_WORK;
  const relaxed = isSmall ? relaxation(stock, capacity) : { bound, whole: [] };
  const least = Math.max(bound, relaxed.bound);
  const best =
    relaxed.whole.length > 0 ? fewer(withWholeBins(stock, relaxed.whole, capacity), simple) : simple;
  if (best.count === least) return { ...best, proved: true };

  const budget: Budget = { steps: SEARCH_STEPS };
  for (let target = least; target < best.count; target += 1) {
    const patterns = findPatterns(stock, capacity, target, budget);
    if (patterns) return { bins: binsOf(patterns, stock), count: target, proved: true };
    if (budget.steps <= 0) return { ...best, proved: false };
  }
  return { ...best, proved: true };
}

interface Placed {
  readonly bins: readonly number[];
  readonly count: number;
}

const fewer = (one: Placed, other: Placed): Placed => (one.count < other.count ? one : other);

/** The relaxation's whole bins, and the items that they leave over packed by themselves. */
function withWholeBins(stock: readonly Stock[], whole: readonly BinPattern[], capacity: number): Placed {
  // A rounding error in the relaxation could ask for an item too many; it gets what there is.
  const left = stock.map(({ count }) => count);
  const bySize: number[][] = stock.map(() => []);
  let used = 0;
  for (const { taken, times } of whole) {
    for (let time = 0; time < times; time += 1, used += 1) {
      taken.forEach((count, index) => {
        const held = Math.min(count, left[index]!);
        left[index] = left[index]! - held;
        for (let n = 0; n < held; n += 1) bySize[index]!.push(used);
      });
    }
  }
  const over = packSorted(
    stock.flatMap(({ size }, index) => Array<number>(left[index]!).fill(size)),
    capacity,
  );
  let next = 0;
  const bins = bySize.flatMap((places, index) => [
    ...places,
    ...over.bins.slice(next, (next += left[index]!)).map((bin) => bin + used),
  ]);
  return { bins, count: used + over.count };
}

/** The bin of each item, the items in the order of the stock. */
function binsOf(patterns: readonly BinPattern[], stock: readonly Stock[]): number[] {
  const bySize: number[][] = stock.map(() => []);
  let bin = 0;
  for (const { taken, times } of patterns) {
    for (let time = 0; time < times; time += 1, bin += 1) {
      taken.forEach((count, index) => {
        for (let n = 0; n < count; n += 1) bySize[index]!.push(bin);
      });
    }
  }
  return bySize.flat();
}
