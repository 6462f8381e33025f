import type { Difference } from "./differences";

/** What each part is known by. */
export const partKey = (list: string, line: string): string => `${list} ${line}`;

/**
 * By how much the prices among the differences raise what the job buys, before overhead, margin and tax.
 * @param bought how many of each part the job buys, by {@link partKey}
 */
export const raisedBy = (bought: ReadonlyMap<string, number>, chosen: readonly Difference[]): number =>
  chosen.reduce((sum, { list, line, column, from, to }) => {
    if (column?.key !== "price" || typeof from !== "number" || typeof to !== "number") return sum;
    return sum + (to - from) * (bought.get(partKey(list, line)) ?? 0);
  }, 0);
