/** Items counted by size: what the bounds and the exact search work on. */

export interface Stock {
  /** A whole number above 0. */
  readonly size: number;
  readonly count: number;
}

/**
 * @param sorted whole sizes from large to small
 * @returns each size once, from large to small, with how many there are
 */
export function countBySize(sorted: readonly number[]): Stock[] {
  const stock: { size: number; count: number }[] = [];
  for (const size of sorted) {
    const last = stock[stock.length - 1];
    if (last?.size === size) last.count += 1;
    else stock.push({ size, count: 1 });
  }
  return stock;
}
