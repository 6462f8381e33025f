/** A date that the grid can't read is refused, not kept as text that no formula understands. */
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel } from "../../../src/hosts/headless/recalculate";
import { parseAddress } from "../../../src/formula/address";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";

loadLibrary();
const book = layOut(multiRoom, guestHouse);
const model = openModel(book);
const { range } = book.names.find(({ name }) => name === "site_date")!;
const { row, column } = parseAddress(range)!;
const site = model.getters.getSheetIds()[book.sheets.findIndex(({ name }) => name === "Site")]!;
const position = { sheetId: site, row, col: column };

test.each([
  ["2026-11-12", true],
  ["12 November 2026", false],
  ["12.11.2026", false],
  ["next week", false],
  ["1999-12-31", false],
  ["2100-01-01", false],
  ["2000-01-01", true],
  ["2099-12-31", true],
])("%s as the date of the quote", (content, taken) => {
  quietly(() => model.dispatch("UPDATE_CELL", { ...position, content }));
  expect(model.getters.isDataValidationInvalid(position)).toBe(!taken);
});
