/** What a merge does to the prices on Parts, in words. */
import type { PartChange } from "./planPrices";
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
