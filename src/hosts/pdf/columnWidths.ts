/** How wide the columns of a table are: by their shares, but none narrower than its longest word. */

/**
 * @param shares of the columns
 * @param least points that each needs
 * @param room points of all together
 */
export function columnWidths(shares: readonly number[], least: readonly number[], room: number): number[] {
  const all = sum(shares) || 1;
  const needed = sum(least);
  // Not all words fit: each gives way in proportion.
  if (needed >= room) return least.map((points) => (points * room) / needed);
  const fixed = new Set<number>();
  for (;;) {
    const free = room - sum(least.filter((_, index) => fixed.has(index)));
    const open = sum(shares.filter((_, index) => !fixed.has(index))) || all;
    const widths = shares.map((share, index) => (fixed.has(index) ? least[index]! : (share * free) / open));
    const tooNarrow = widths.findIndex((width, index) => !fixed.has(index) && width < least[index]!);
    if (tooNarrow < 0) return widths;
    fixed.add(tooNarrow);
  }
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);
