/** The mark of a row's own entries: stored as a condition that other programs know, and read back. */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { layOut } from "../../src/workbooks/layOut";
import { besideIn, bothFilled } from "../../src/workbooks/filledBeside";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";

test("a condition is told by its formula, whatever the program that wrote it", () => {
  expect(bothFilled("F6:F35", "D")).toBe('AND($D6<>"",F6<>"")');
  expect(besideIn('=and( $D6 <> "" , F6<>"")', "F6:F35")).toBe("D");
  expect(besideIn('AND($D7<>"",F6<>"")', "F6:F35")).toBeUndefined();
  expect(besideIn('OR(F6="low",F6="high")', "F6:F35")).toBeUndefined();
});

test("the marks of Rooms come back from the file", async () => {
  const book = layOut(multiRoom);
  const marksOf = (one: typeof book) =>
    one.sheets
      .find(({ name }) => name === "Rooms")!
      .marks.filter(({ filledBeside }) => filledBeside !== undefined)
      .map(({ range, filledBeside }) => `${range} ${filledBeside!}`)
      .sort();
  expect(marksOf(book)).toHaveLength(10);
  expect(marksOf(await readXlsx(await writeXlsx(book)))).toEqual(marksOf(book));
});
