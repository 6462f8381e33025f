import type { AddedRows } from "../../workbooks/planAddedRows";

/** Queues the rows of a plan; they are there after the next sync. */
export function insertRows({ workbook }: Excel.RequestContext, { inserts }: AddedRows, count: number): void {
  // The lowest first: what is inserted there leaves the rows above where they are.
  for (const { sheet, row } of [...inserts].sort((a, b) => b.row - a.row)) {
    workbook.worksheets
      .getItem(sheet)
      .getRange(`${row + 1}:${row + count}`)
      .insert("Down");
  }
}
