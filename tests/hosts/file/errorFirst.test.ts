/** A column whose first value is an error is no shorter for it: it comes back from the file as it went. */
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { fromModel } from "../../../src/hosts/grid/fromModel";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { openModel, recalculate } from "../../../src/hosts/headless/recalculate";
import type { Book } from "../../../src/workbooks/book";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { namedRows, namedValue } from "../../../src/workbooks/named";

/** A pack of nothing leaves the lines of the quote without a figure, and the sums at their selling price with one. */
const broken = (): Book =>
  layOut(multiRoom, {
    ...guestHouse,
    blocks: {
      ...guestHouse.blocks,
      fittings: guestHouse.blocks!.fittings!.map((row, index) => (index === 0 ? { ...row, pack: 0 } : row)),
    },
  });
/** Codes of errors and values of a column. */
const held = (book: Book, name: string): unknown[] =>
  namedRows(book, name)
    .flat()
    .map((value) => (typeof value === "object" ? value.error : value));

const LINES = ["#VALUE!", "#VALUE!", "#VALUE!", "#VALUE!", "#VALUE!", 180, 145];

test.each<[string, () => Promise<Book>]>([
  ["computed", async () => recalculate(broken())],
  ["through the file", async () => recalculate(await readXlsx(await writeXlsx(recalculate(broken()))))],
  ["from the open desk", async () => quietly(() => fromModel(loadLibrary(), openModel(broken())))],
  [
    "from the open desk through the file",
    async () =>
      recalculate(
        await readXlsx(await writeXlsx(quietly(() => fromModel(loadLibrary(), openModel(broken()))))),
      ),
  ],
])("%s", async (_, made) => {
  const book = await made();
  expect(held(book, "price_lines")).toEqual(LINES);
  // The customer's page says of each line that it is open.
  for (const line of ["reception", "cable", "fittings", "labour", "net", "tax", "total"])
    expect({ line, shown: namedValue(book, `quote_${line}`) }).toEqual({ line, shown: "open" });
});
