/** Which of a file's tables is a price list: the first whose head names a price and an article, or else the widest. */
import { isBlank, type ImportedTable } from "../imported/table";
import { findColumns } from "./priceColumns";

export interface PriceTables {
  /** All of a workbook's sheets; of a text the one way of parting it. */
  readonly tables: readonly ImportedTable[];
  /** The place of the one that reads as a price list, or is nearest to it. */
  readonly chosen: number;
  /** Sheets that read as price lists. */
  readonly sheets: readonly string[];
}

/** A list may be long; its head stands near its top. */
const LOOKED_AT = 200;
/** A head that is known goes before any number of columns that are guessed. */
const KNOWN = 100;

/** @param tables of a file, the likeliest first; at least one */
export function priceTables(tables: readonly ImportedTable[]): PriceTables {
  const found = tables.map(({ lines }) => {
    const filled = lines.slice(0, LOOKED_AT).filter((line) => !isBlank(line));
    const { known, columns } = findColumns(filled, undefined);
    const keys = columns.filter(({ key }) => key !== undefined).length;
    return { known, weight: (known ? KNOWN : 0) + keys };
  });
  const best = Math.max(...found.map(({ weight }) => weight));
  const chosen = found.findIndex(({ weight }) => weight === best);
  const table = tables[chosen]!;
  if (table.sheet === undefined) return { tables: [table], chosen: 0, sheets: [] };
  return {
    tables,
    chosen,
    sheets: tables.flatMap(({ sheet }, index) => (sheet !== undefined && found[index]!.known ? [sheet] : [])),
  };
}
