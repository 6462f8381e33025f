import type { RoomsBlock } from "./roomsBlock";

export interface OutletsPlace {
  /** 0-based row of the first of them. */
  readonly first: number;
  /** Rows to add above the block's closing row, because the prepared ones do not suffice. */
  readonly quantity: number;
}

/**
 * Below the last row in which anything is filled, so that nothing of a person's is lost.
 * @param filled whether a cell of an input column holds something, shown or not
 */
export function placeOutlets(
  { top, bottom, columns }: RoomsBlock,
  filled: (row: number, column: number) => boolean,
  count: number,
): OutletsPlace {
  const used = (row: number): boolean => [...columns.values()].some((column) => filled(row, column));
  let first = bottom;
  while (first > top + 1 && !used(first - 1)) first--;
  return { first, quantity: Math.max(0, first + count - bottom) };
}
