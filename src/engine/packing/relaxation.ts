/**
 * The packing problem with parts of a bin allowed: a linear program over all
 * patterns of a bin, solved by generating patterns as they are wanted.
 *
 * Its prices (what one item of a size is worth in bins) give the strongest
 * bound in use, and its patterns, rounded down, leave few items to pack.
 *
 * Source: Gilmore & Gomory, Operations Research 9 (1961) 849-859.
 * Accuracy: the bound is recomputed in whole numbers from the prices, so that
 *   a rounding error in the program can only weaken it.
 * Range: capacity up to a few thousand; meant for up to 100 sizes.
 */
import type { BinPattern } from "./findPatterns";
import type { Stock } from "./stock";

export interface Relaxation {
  /** A number of bins below which no packing exists. */
  readonly bound: number;
  /** Fillings of the solution, rounded down to whole bins. */
  readonly whole: readonly BinPattern[];
}

const MOST_ROUNDS = 2000;
const ROUNDING = 1e-9;
/** Prices are rounded to this part of a bin for the bound. */
const PRICE_UNITS = 1e7;

/**
 * @param stock whole sizes from large to small with their counts
 * @param capacity what one bin holds, a whole number in the unit of the sizes
 */
export function relaxation(stock: readonly Stock[], capacity: number): Relaxation {
  const sizes = stock.map(({ size }) => size);
  const counts = stock.map(({ count }) => count);
  // The first basis: bins of one size only.
  const basis = sizes.map((size, row) =>
    sizes.map((_, at) => (at === row ? Math.floor(capacity / size) : 0)),
  );
  const inverse = sizes.map((_, row) => sizes.map((_, at) => (at === row ? 1 / basis[row]![row]! : 0)));
  const times = counts.map((count, row) => count * inverse[row]![row]!);
  const pricesNow = (): number[] => sizes.map((_, at) => inverse.reduce((sum, row) => sum + row[at]!, 0));

  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const { worth, taken } = mostWorth(sizes, pricesNow(), capacity);
    if (worth <= 1 + ROUNDING) break;
    const entering = inverse.map((row) => row.reduce((sum, value, at) => sum + value * taken[at]!, 0));
    let leaving = -1;
    entering.forEach((value, row) => {
      if (value <= ROUNDING) return;
      if (leaving < 0 || times[row]! / value < times[leaving]! / entering[leaving]!) leaving = row;
    });
    if (leaving < 0) break;
    pivot(inverse, times, entering, leaving);
    basis[leaving] = taken;
  }

  const prices = pricesNow().map((price) => Math.max(0, Math.round(price * PRICE_UNITS)));
  const { worth } = mostWorth(sizes, prices, capacity);
  const value = counts.reduce((sum, count, at) => sum + count * prices[at]!, 0);
  const whole = basis
    .map((taken, row) => ({ taken, times: Math.max(0, Math.floor(times[row]! + ROUNDING)) }))
    .filter((pattern) => pattern.times > 0);
  return { bound: worth > 0 ? Math.ceil(value / worth) : 0, whole };
}

/** The pattern of one bin that is worth the most at these prices, by dynamic programming over the room. */
function mostWorth(
  sizes: readonly number[],
  prices: readonly number[],
  capacity: number,
): { worth: number; taken: number[] } {
  const best = new Float64Array(capacity + 1);
  const last = new Int32Array(capacity + 1).fill(-1);
  for (let room = 1; room <= capacity; room += 1) {
    best[room] = best[room - 1]!;
    sizes.forEach((size, at) => {
      if (size > room || best[room - size]! + prices[at]! <= best[room]!) return;
      best[room] = best[room - size]! + prices[at]!;
      last[room] = at;
    });
  }
  const taken = sizes.map(() => 0);
  for (let room = capacity; room > 0;) {
    const at = last[room]!;
    if (at < 0) room -= 1;
    else {
      taken[at] = taken[at]! + 1;
      room -= sizes[at]!;
    }
  }
  return { worth: best[capacity]!, taken };
}

/** Brings the entering pattern into the basis in place of the leaving one. */
function pivot(inverse: number[][], times: number[], entering: readonly number[], leaving: number): void {
  const by = entering[leaving]!;
  const row = inverse[leaving]!.map((value) => value / by);
  const amount = times[leaving]! / by;
  inverse.forEach((old, at) => {
    inverse[at] = at === leaving ? row : old.map((value, column) => value - entering[at]! * row[column]!);
  });
  times.forEach((old, at) => (times[at] = at === leaving ? amount : old - entering[at]! * amount));
}
