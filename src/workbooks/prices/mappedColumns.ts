/** A price list's columns as the table of choices shows them. */
import type { ColumnMeaning, MappedColumn } from "../imported/columns";
import { headless, samplesOf } from "../imported/columns";
import type { ImportedTable } from "../imported/table";
import { COLUMN_KEYS, COLUMN_NAMES, PRICE_KEYS } from "./headMeaning";
import type { PriceList } from "./list";

export const COLUMN_MEANINGS: readonly ColumnMeaning[] = COLUMN_KEYS.map((key) => ({
  key,
  name: COLUMN_NAMES[key],
  ...(PRICE_KEYS.has(key) && { several: true }),
}));

export function mappedColumns({ columns, lines }: PriceList, table: ImportedTable): MappedColumn[] {
  const priced = new Set(lines.slice(0, 50).map(({ line }) => line));
  const body = table.lines.filter(({ line }) => priced.has(line));
  return columns.map(({ index, head, key }) => ({
    column: index,
    head: head === "" ? headless(index) : head,
    samples: samplesOf(body, index),
    ...(key && { key }),
  }));
}
