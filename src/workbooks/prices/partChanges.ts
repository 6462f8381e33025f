/** What a merge does to the prices on Parts, in words. */
import type { OtherInUse, PartChange } from "./planPrices";
import { percentOf } from "./priceWords";

const rounded = (value: number): number => Number(value.toPrecision(8));

export const partChangesInWords = (parts: readonly PartChange[]): string[] =>
  parts.map(({ part, before, after, supplier, wasSupplier }) => {
    const change =
      before === undefined || before === 0
        ? `${rounded(after)}, none before`
        : `${rounded(before)} → ${rounded(after)}, ${percentOf((after - before) / before)}`;
    const other =
      wasSupplier !== undefined && wasSupplier !== supplier ? `; ${supplier}, not ${wasSupplier}` : "";
    return `Parts, “${part}”: ${change}${other}`;
  });

/** Two suppliers side by side, where the other one stays in use. */
export const othersInWords = (others: readonly OtherInUse[]): string[] =>
  others.map(
    ({ part, supplier, price, here, pinned }) =>
      `“${part}” stays with ${supplier} at ${rounded(price)}, ${pinned ? "which is pinned" : "the cheaper one"}; this list has ${rounded(here)}.`,
  );
