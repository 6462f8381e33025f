/** Computing a book gives what the live model of it would give back, and leaves all else as it was. */
import { fromModel } from "../../../src/hosts/grid/fromModel";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel, recalculate } from "../../../src/hosts/headless/recalculate";
import type { Book } from "../../../src/workbooks/book";
import { templates } from "../../../src/workbooks/templates";

/** Without looks, and without the blank texts that one of the two keeps as values and the other as results. */
const plain = ({ sheets, ...rest }: Book): unknown =>
  JSON.parse(
    JSON.stringify({
      ...rest,
      looks: [],
      sheets: sheets.map((sheet) => ({ ...sheet, marks: [], rowHeights: {} })),
    }),
    (key, value: unknown) => (key === "look" || value === "" || isEmpty(value) ? undefined : value),
  );
const isEmpty = (value: unknown): boolean =>
  typeof value === "object" && value !== null && !Array.isArray(value) && Object.keys(value).length === 0;

test.each(
  templates.flatMap(({ id, empty, demonstration }) => [
    [`${id}, empty`, empty] as const,
    [`${id}, demonstration`, demonstration] as const,
  ]),
)("%s", (_, make) => {
  const book = make();
  const kept = JSON.stringify(book);
  const computed = recalculate(book);
  expect(JSON.stringify(book)).toBe(kept);
  const live = quietly(() => fromModel(loadLibrary(), openModel(book)));
  expect(plain(computed)).toEqual(plain(live));
  // Looks and heights are the book's own; the live model rounds heights and drops what it does not know.
  expect(computed.sheets.map(({ rowHeights }) => rowHeights)).toEqual(
    book.sheets.map(({ rowHeights }) => rowHeights),
  );
});
