/** A delimited text file as lines of cells, each with its number in the file. */
import { parseCsv } from "hucre/csv";
import { withoutGuard } from "./writeCsv";

export interface CsvLine {
  /** Counted from 1; a quoted line end inside a cell counts too. */
  readonly line: number;
  readonly cells: readonly string[];
}

/**
 * @param text the file; a byte-order mark is passed over
 * @param delimiter comma, semicolon or tab is found out where it is absent
 */
export function readCsv(text: string, delimiter?: string): CsvLine[] {
  let line = 1;
  return parseCsv(text, { typeInference: false, ...(delimiter && { delimiter }) }).map((record) => {
    const cells = record.map((cell) => (cell === null ? "" : String(cell)));
    const here = line;
    line += 1 + cells.reduce((count, cell) => count + (cell.match(/\n/g)?.length ?? 0), 0);
    return { line: here, cells: cells.map(withoutGuard) };
  });
}
