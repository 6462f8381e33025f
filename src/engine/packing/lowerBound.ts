/**
 * The least number of bins that could possibly do: the total over the
 * capacity, made stronger by dual feasible functions. Such a function changes
 * the sizes in a way under which whatever fits a bin still fits it, so the
 * changed total over the capacity is a bound too.
 *
 * Source: Fekete & Schepers, Mathematical Programming 91 (2001) 11-31: their
 *   functions U (drop the items below a threshold, round those that then fill
 *   a bin alone up to it) and u (round to k-ths of the capacity), one after
 *   the other. U alone gives the bound L2 of Martello & Toth.
 * Accuracy: never more than the true least number; equal to it in most jobs.
 * Range: whole sizes from 1 to the capacity; capacity × items below 3e14.
 */
import type { Stock } from "./stock";

const MOST_PARTS = 12;
/** Thresholds × sizes: a limit on the work where there are very many sizes. */
const MOST_WORK = 100_000;

/**
 * @param stock whole sizes from large to small with their counts
 * @param capacity what one bin holds, a whole number in the unit of the sizes
 * @returns a number of bins below which no packing exists
 */
export function lowerBound(stock: readonly Stock[], capacity: number): number {
  let best = 0;
  for (const threshold of thresholds(stock, capacity)) {
    const kept = stock
      .filter(({ size }) => size >= threshold)
      .map(({ size, count }) => ({ size: size > capacity - threshold ? capacity : size, count }));
    const plain = kept.reduce((total, { size, count }) => total + count * size, 0);
    best = Math.max(best, Math.ceil(plain / capacity));
    for (let parts = 1; parts <= MOST_PARTS; parts += 1) {
      let total = 0;
      for (const { size, count } of kept) total += count * inParts(size, capacity, parts);
      best = Math.max(best, Math.ceil(total / (parts * capacity)));
    }
  }
  return best;
}

/** Any threshold up to half the capacity is valid; very many sizes are thinned out. */
function thresholds(stock: readonly Stock[], capacity: number): number[] {
  const halves = stock.map(({ size }) => size).filter((size) => 2 * size <= capacity);
  const step = Math.ceil((halves.length * stock.length) / MOST_WORK) || 1;
  return [0, ...halves.filter((_, index) => index % step === 0)];
}

/** The function u for `parts` = k, times k so that it stays a whole number. */
const inParts = (size: number, capacity: number, parts: number): number => {
  const whole = Math.floor(((parts + 1) * size) / capacity);
  return whole * capacity === (parts + 1) * size ? parts * size : whole * capacity;
};
