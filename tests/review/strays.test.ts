/** Text and numbers that another program left where nothing is asked for: the review names each by its cell. */
import { readXlsx } from "../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../src/hosts/file/writeXlsx";
import { recalculate } from "../../src/hosts/headless/recalculate";
import { review } from "../../src/review/review";
import { address, parseRange } from "../../src/formula/address";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../src/workbooks/multiRoom/guestHouse";

const job = layOut(multiRoom, guestHouse);
const zone = (name: string) => parseRange(job.names.find((one) => one.name === name)!.range)!;
const rooms = zone("rooms_outlet");
const site = zone("site_job");

const strayFindings = async (sheet: string, at: string, value: string | number) => {
  const sheets = job.sheets.map((one) =>
    one.name === sheet ? { ...one, cells: { ...one.cells, [at]: { ...one.cells[at], value } } } : one,
  );
  const read = await readXlsx(await writeXlsx(recalculate({ ...job, sheets })));
  return review(read)
    .filter(({ message }) => message.includes("outside every block"))
    .map(({ place, message }) => [place?.sheet, place?.cell, message.includes(`“${value}”`)]);
};

test("the demonstration has none", async () => {
  expect(review(job).filter(({ message }) => message.includes("outside every block"))).toEqual([]);
});

test.each([
  ["beside a field, a text", "Site", address(site.top, site.left + 4), "call first"],
  ["beside a field, a number", "Site", address(site.top, site.left + 4), 12],
  ["right of a block", "Rooms", address(rooms.top + 3, zone("rooms_where_key").right + 1), 9.5],
  ["under a block", "Rooms", address(rooms.bottom + 3, rooms.left), "12-1"],
  // A word of the template itself is a stray where the template has it not.
  [
    "a word that is printed elsewhere",
    "Rooms",
    address(rooms.top + 3, zone("rooms_where_key").right + 1),
    "Outlets",
  ],
  [
    "a word that is printed in the same column, once more",
    "Rooms",
    address(rooms.bottom + 3, rooms.left),
    "Outlet",
  ],
])("%s", async (_, sheet, at, value) => {
  expect(await strayFindings(sheet, at, value)).toEqual([[sheet, at, true]]);
});
