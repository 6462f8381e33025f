/**
 * The crew's cards of outlets whose names look like days and numbers: `3-16` was 46097 on its card. In the workbook of
 * cards, when that is written and read again, and on the paper that LibreOffice prints of it.
 */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import type { Book } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { cardsOf } from "../../src/workbooks/multiRoom/cards/cardsOf";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";
import { paperWords } from "../support/paperWords";
import { recalculated, withLibreOffice } from "../support/tools";

const ODD = ["3-16", "1-1", "12/4", "007", "1E5"];
const rooms = guestHouse.blocks!.rooms!.map((row, index) =>
  index < ODD.length ? { ...row, outlet: ODD[index]!, room: ODD[ODD.length - 1 - index]! } : row,
);
const job = layOut(multiRoom, { ...guestHouse, blocks: { ...guestHouse.blocks, rooms } });

/** Titles of the outlets' cards. */
const titles = (book: Book): unknown[] =>
  Object.values(book.sheets.find(({ name }) => name === "Outlet cards")!.cells)
    .map(({ value }) => value)
    .filter((value) => /^Outlet \S/.test(String(value)))
    .slice(0, ODD.length);
const wanted = ODD.map((name) => `Outlet ${name}`);

test("from the job as it is, and from its file", async () => {
  expect(titles(cardsOf(recalculate(job))!)).toEqual(wanted);
  const again = recalculate(await readXlsx(await writeXlsx(job)));
  const cards = cardsOf(again)!;
  expect(titles(cards)).toEqual(wanted);
  expect(titles(await readXlsx(await writeXlsx(cards)))).toEqual(wanted);
});

withLibreOffice("on paper, and from a job that LibreOffice saved", async () => {
  const cards = cardsOf(recalculate(job))!;
  const paper = (await paperWords(await writeXlsx(cards))).join(" ");
  for (const title of wanted) expect(paper).toContain(title);
  const saved = await readXlsx(
    await recalculated(await writeXlsx(recalculate(job), { frozen: true }), { to: "xlsx" }),
  );
  expect(titles(cardsOf(recalculate(saved))!)).toEqual(wanted);
});
