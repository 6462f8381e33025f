/** Which of a file's tables is a price list: the first whose head names a price and an article, or else the widest. */
import { isBlank, type ImportedTable } from "../imported/table";
import { findColumns } from "./priceColumns";

/** A list may be long; its head stands near its top. */
const LOOKED_AT = 200;

export interface FoundTables {
  /** Its place. */
  readonly chosen: number;
  /** Sheets that read as price lists. */
  readonly sheets: readonly string[];
}

export function priceTable(tables: readonly ImportedTable[]): FoundTables {
  const found = tables.map(({ lines }) => {
    const filled = lines.slice(0, LOOKED_AT).filter((line) => !isBlank(line));
    const { known, columns } = findColumns(filled, undefined);
    return { hasHead: known, keys: columns.filter(({ key }) => key !== undefined).length };
  });
  const best = Math.max(...found.map(({ hasHead, keys }) => (hasHead ? 100 : 0) + keys));
  return {
    chosen: Math.max(
      0,
      found.findIndex(({ hasHead, keys }) => (hasHead ? 100 : 0) + keys === best),
    ),
    sheets: tables.flatMap(({ sheet }, index) =>
      sheet !== undefined && found[index]!.hasHead ? [sheet] : [],
    ),
  };
}
