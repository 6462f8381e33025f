/** The least number of bins, found by trying every way: the oracle for small packings. */
export function leastBinsByTrying(sizes: readonly number[], capacity: number): number {
  let best = sizes.length;
  const place = (index: number, loads: number[]): void => {
    if (loads.length >= best) return;
    const size = sizes[index];
    if (size === undefined) {
      best = loads.length;
      return;
    }
    for (const [bin, load] of loads.entries()) {
      if (load + size <= capacity) place(index + 1, loads.with(bin, load + size));
    }
    place(index + 1, [...loads, size]);
  };
  place(0, []);
  return best;
}
