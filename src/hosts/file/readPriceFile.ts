/** A supplier's price list out of a file: the table in it that reads as one. */
import type { ImportedTable } from "../../workbooks/imported/table";
import { priceTable } from "../../workbooks/prices/priceTable";
import { stop, troubles } from "./fileTrouble";
import { readTables } from "./readTables";

export interface PriceFile {
  /** All of a workbook's sheets; of a text the one way of parting it. */
  readonly tables: readonly ImportedTable[];
  /** The place of the one that reads as a price list, or is nearest to it. */
  readonly chosen: number;
}

/** @throws FileTrouble for what is neither text nor a workbook, or too long */
export async function readPriceFile(bytes: Uint8Array): Promise<PriceFile> {
  const found = await readTables(bytes);
  const chosen = priceTable(found);
  const table = found[chosen]!;
  if (table.open !== undefined) stop(troubles.surveyQuoteOpen(table.open));
  return table.sheet === undefined ? { tables: [table], chosen: 0 } : { tables: found, chosen };
}
