import type { AddedRows } from "../../workbooks/planAddedRows";

/** Queues the rows of a plan; they are there after the next sync. */
export function insertRows({ workbook }: Excel.RequestContext, { growing }: AddedRows, count: number): void {
  // The lowest first: what is inserted there leaves the rows above where they are.
  for (const { sheet, zone } of [...growing].sort((a, b) => b.zone.bottom - a.zone.bottom)) {
    workbook.worksheets
      .getItem(sheet)
      .getRange(`${zone.bottom + 1}:${zone.bottom + count}`)
      .insert("Down");
  }
}
