/** The mark of a row's own entries: stored as a condition that other programs know, and read back. */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { layOut } from "../../src/workbooks/layOut";
import { filledOver, overListIn } from "../../src/workbooks/overList";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";

test("a condition is told by its formula, whatever the program that wrote it", () => {
  const over = { list: "types_run", line: "CQ" };
  const condition = 'AND(F6<>"",IFERROR(INDEX(types_run,$CQ6)<>"",FALSE))';
  expect(filledOver("F6:F35", over)).toBe(condition);
  expect(overListIn(condition, "F6:F35")).toEqual(over);
  expect(overListIn('=and( F6 <> "" , iferror(index( types_run , $CQ6)<>"" ,FALSE()))', "F6:F35")).toEqual(
    over,
  );
  expect(overListIn('AND(F7<>"",IFERROR(INDEX(types_run,$CQ6)<>"",FALSE))', "F6:F35")).toBeUndefined();
  expect(overListIn('OR(F6="low",F6="high")', "F6:F35")).toBeUndefined();
});

test("the marks of Rooms come back from the file", async () => {
  const book = layOut(multiRoom);
  const marksOf = (one: typeof book) =>
    one.sheets
      .find(({ name }) => name === "Rooms")!
      .marks.filter(({ overList }) => overList)
      .map(({ range, overList }) => `${range} ${overList!.list} ${overList!.line}`)
      .sort();
  expect(marksOf(book)).toHaveLength(10);
  expect(marksOf(await readXlsx(await writeXlsx(book)))).toEqual(marksOf(book));
});
