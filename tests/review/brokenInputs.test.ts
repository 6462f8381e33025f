/** An input that became a formula to nowhere is the cause; what shows old values for it is not told beside it. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import { review } from "../../src/review/review";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { placeOfName } from "../../src/workbooks/named";
import { mendedGuestHouse } from "./cleanJobs";

test("=#REF!*1.04 in the crew's rate, with yesterday's results", () => {
  const book = recalculate(layOut(multiRoom, mendedGuestHouse()));
  const { sheet, at } = placeOfName(book, "labour_rate")!;
  const { cells, results } = book.sheets.find(({ name }) => name === sheet)!;
  results[at] = cells[at]!.value!;
  cells[at] = { ...cells[at], formula: "#REF!*1.04" };
  delete cells[at].value;
  const found = review(book, recalculate).filter(({ weight }) => weight === "wrong");
  expect(found.map(({ rule, place }) => [rule, place])).toEqual([
    ["input leads nowhere", { sheet, cell: at }],
  ]);
});
