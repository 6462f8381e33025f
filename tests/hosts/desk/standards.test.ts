/** A job on the desk brought up to date with the firm's standards: rows added on several lists of a sheet, one step back. */
import { recalculate } from "../../../src/hosts/headless/recalculate";
import { takenByItself } from "../../../src/standards/inWords";
import { bringing } from "../../../src/standards/bringing";
import { upToDate } from "../../../src/standards/upToDate";
import type { Book } from "../../../src/workbooks/book";
import { jobInputsOf } from "../../../src/workbooks/jobInputsOf";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { namedColumn } from "../../../src/workbooks/named";
import { sheetDate } from "../../../src/workbooks/sheetDate";
import { shelfLineOf } from "../../../src/workbooks/shelfLine";
import { drawnJob, firm, nextEdition, nextStandards } from "../../support/firmsJob";
import { DeskInNode } from "./openDesk";

const TODAY = sheetDate(2027, 1, 11);
const names = (book: Book, name: string): unknown[] => namedColumn(book, name).filter((value) => value);

test("all in one step, in its own places, and one undo takes all of it back", async () => {
  const desk = new DeskInNode(drawnJob());
  const before = desk.book();
  const found = upToDate(before, nextStandards());
  if (typeof found === "string") throw new Error(found);
  const entries = bringing(found, takenByItself(found.differences), { today: TODAY });
  expect(await desk.host.bringUpToDate(entries)).toMatch(/^The job is up to date with the standards/);
  const after = desk.book();
  for (const list of ["cables", "plates"]) {
    const wanted = nextEdition.blocks![list]!.map(({ name }) => name);
    expect(names(after, `${list}_name`)).toEqual(wanted);
    // The lists that stand for the same rows have grown with them.
    expect(names(after, `${list}_bought_name`)).toEqual(wanted);
  }
  expect(namedColumn(after, "cables_price")[1]).toBe(41.5);
  const { fields, blocks } = jobInputsOf(multiRoom, after);
  expect(fields).toMatchObject({ site_usual_cable: "new cable 3", site_standards_edition: 4 });
  // What stands between and below the lists that have grown is where it was.
  for (const list of ["passives", "units", "fittings", "labour", "exclusions"])
    expect(blocks![list]).toEqual(jobInputsOf(multiRoom, before).blocks![list]);
  const again = upToDate(recalculate(after), nextStandards());
  expect(again).toMatchObject({ differences: [] });
  desk.undo();
  expect(jobInputsOf(multiRoom, desk.book())).toEqual(jobInputsOf(multiRoom, before));
});

test("a cell that is being typed into, or a name that is gone: a sentence, and nothing is changed", async () => {
  const desk = new DeskInNode(drawnJob());
  desk.editing = true;
  await expect(desk.host.bringUpToDate([])).rejects.toThrow(/^A cell is being typed into/);
  desk.editing = false;
  const before = jobInputsOf(multiRoom, desk.book());
  await expect(
    desk.host.bringUpToDate([
      { name: "site_margin", value: 0.1 },
      { name: "no_such_name", value: 1 },
    ]),
  ).rejects.toThrow(/^The workbook has no cells named no_such_name any more, so nothing was changed/);
  expect(jobInputsOf(multiRoom, desk.book())).toEqual(before);
});

test("in a list of jobs standards tell whose they are, which edition, and that they are no job", () => {
  expect(shelfLineOf(firm())).toMatchObject({
    number: "standards, edition 3",
    name: "Invented firm (demonstration)",
    date: "2026-11-02",
    currency: "EUR",
    standards: true,
  });
  expect(shelfLineOf(drawnJob())).not.toHaveProperty("standards");
});
