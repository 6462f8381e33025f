/** A supplier's price list out of a file: the table in it that reads as one. */
import type { ImportedTable } from "../../workbooks/imported/table";
import { priceTable, type FoundTables } from "../../workbooks/prices/priceTable";
import { readTables } from "./readTables";

export interface PriceFile extends FoundTables {
  /** All of a workbook's sheets; of a text the one way of parting it. */
  readonly tables: readonly ImportedTable[];
}

/** @throws FileTrouble for what is neither text nor a workbook, or too long */
export async function readPriceFile(bytes: Uint8Array): Promise<PriceFile> {
  const found = await readTables(bytes);
  const { chosen, sheets } = priceTable(found);
  const table = found[chosen]!;
  return table.sheet === undefined
    ? { tables: [table], chosen: 0, sheets }
    : { tables: found, chosen, sheets };
}
