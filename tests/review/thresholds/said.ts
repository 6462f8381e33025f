/** What one rule says of one cell of the guest house, none of which is computed. */
import type { Finding } from "../../../src/review/finding";
import { labelsIn } from "../../../src/review/labels";
import { rules } from "../../../src/review/ruleList";
import type { Book } from "../../../src/workbooks/book";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { mendedEarlierHouse } from "../cleanJobs";
import { cellAt, change, type Changes } from "./pair";

const laidOut = layOut(multiRoom, mendedEarlierHouse());

/** A copy to be changed, without results. */
export const house = (): Book => ({
  ...laidOut,
  sheets: laidOut.sheets.map((sheet) => ({ ...sheet, cells: { ...sheet.cells }, results: {} })),
});

/** The cell of a row by its name before the changes, else after them. */
function placeIn(book: Book, at: string): NonNullable<Finding["place"]> {
  try {
    return cellAt(laidOut, at);
  } catch {
    return cellAt(book, at);
  }
}

export function said(rule: string, changes: Changes, at: string): Finding[] {
  const book = house();
  change(book, changes);
  const { sheet, cell } = placeIn(book, at);
  return rules
    .find(({ id }) => id === rule)!
    .find({
      read: book,
      own: book,
      computed: book,
      definition: multiRoom,
      differences: [],
      labelAt: labelsIn(book, multiRoom),
      options: { marginFloor: 0.05 },
    })
    .filter(({ place }) => place?.sheet === sheet && place.cell === cell);
}
