import { parseAddress, parseRange } from "../../src/formula/address";
import type { Book } from "../../src/workbooks/book";

/** Every row of a sheet with a print area that shows something and lies below it, as `Rooms!36`. */
export const unprintedRows = (book: Book): string[] =>
  book.sheets.flatMap(({ name, cells, results, print }) => {
    const area = parseRange(print?.area ?? "");
    if (!area) return [];
    const shown = [
      ...Object.entries(cells).flatMap(([at, { value }]) =>
        value === undefined || value === "" ? [] : [at],
      ),
      ...Object.entries(results).flatMap(([at, result]) => (result === "" ? [] : [at])),
    ];
    const rows = shown.map((at) => parseAddress(at)!.row).filter((row) => row > area.bottom);
    return [...new Set(rows)].sort((a, b) => a - b).map((row) => `${name}!${row + 1}`);
  });
