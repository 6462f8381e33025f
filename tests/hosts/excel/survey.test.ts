/** A survey's outlets into the Rooms sheet of Excel: where they go, what stays, and how it is refused. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { ExcelHost } from "../../../src/hosts/excel/excelHost";
import { address, parseRange } from "../../../src/formula/address";
import type { Book } from "../../../src/workbooks/book";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { namedColumn, namedValue } from "../../../src/workbooks/named";
import { singleDrop } from "../../../src/workbooks/singleDrop/definition";
import { mergeOutlets, type RoomsRow } from "../../../src/workbooks/survey/merge";
import { roomsIn } from "../../../src/workbooks/survey/roomsBlock";
import { readSurvey } from "../../../src/workbooks/survey/readSurvey";
import type { SurveyRow } from "../../../src/workbooks/survey/survey";
import type { ExcelStandIn } from "../../support/excelStandIn";
import { referencePrice, type Job } from "../../support/referencePrice";
import { surveyOutlets } from "../../support/surveyOutlets";
import { sentenceOf } from "../scenario";
import { inExcel } from "./inExcel";

const withBook = (book: Book, work: (excel: ExcelStandIn, host: ExcelHost) => Promise<void>) =>
  inExcel({}, async (excel) => {
    excel.state.open(book);
    await work(excel, new ExcelHost());
  });

const outlets = (count: number): SurveyRow[] =>
  surveyOutlets(count, (index) => (index === 1 ? "1-2" : "=2+2"));

const zoneOf = (excel: ExcelStandIn, name: string) =>
  parseRange(excel.state.book.names.find((one) => one.name === name)!.range)!;
const listed = (book: Book, name: string): unknown[] => namedColumn(book, name).filter((value) => value);

test("a few go below the last filled row, texts as texts, in three requests and one step back", () =>
  withBook(layOut(multiRoom, guestHouse), async (excel, host) => {
    const before = zoneOf(excel, "rooms_outlet");
    const known = guestHouse.blocks!.rooms!.map(({ outlet }) => outlet);
    expect(await host.addOutlets(outlets(3))).toBe(
      `3 outlets added to Rooms, from row ${before.top + 2 + known.length} on.`,
    );
    expect(excel.syncs).toBeLessThanOrEqual(3);
    expect(excel.undoSteps).toBe(1);
    expect(zoneOf(excel, "rooms_outlet")).toEqual(before);
    const book = await host.readBook();
    expect(listed(book, "rooms_outlet")).toEqual([...known, "S-1", "S-2", "S-3"]);
    const at = namedColumn(book, "rooms_outlet").indexOf("S-2");
    expect(namedColumn(book, "rooms_room")[at]).toBe("2");
    expect(namedColumn(book, "rooms_note").slice(at - 1, at + 1)).toEqual(["=2+2", "1-2"]);
    const rooms = [...guestHouse.blocks!.rooms!, ...outlets(3)];
    const job = { ...guestHouse, blocks: { ...guestHouse.blocks, rooms } } as unknown as Job;
    expect(Number(namedValue(book, "quote_total")).toFixed(2)).toBe(referencePrice(job).total);
  }));

test("more than the prepared rows take: rows are added to Rooms and to its mirror, and nothing is lost", () =>
  withBook(layOut(multiRoom, guestHouse), async (excel, host) => {
    const before = zoneOf(excel, "rooms_outlet");
    const mirror = zoneOf(excel, "commission_outlet");
    const filled = guestHouse.blocks!.rooms!.length;
    const needed = 40 - (before.bottom - before.top - 1 - filled);
    expect(await host.addOutlets(outlets(40))).toMatch(new RegExp(`${needed} rows had to be added\\.$`));
    expect(zoneOf(excel, "rooms_outlet").bottom).toBe(before.bottom + needed);
    expect(zoneOf(excel, "commission_outlet").bottom).toBe(mirror.bottom + needed);
    const book = await host.readBook();
    expect(listed(book, "commission_outlet")).toEqual([
      ...guestHouse.blocks!.rooms!.map(({ outlet }) => outlet),
      ...outlets(40).map(({ outlet }) => outlet),
    ]);
  }));

test("a row in which only its note is filled is not written over", () =>
  withBook(layOut(multiRoom, guestHouse), async (excel, host) => {
    const { top, left } = zoneOf(excel, "rooms_note");
    const row = top + 2 + guestHouse.blocks!.rooms!.length;
    excel.type("Rooms", address(row, left), "ask the owner");
    await host.addOutlets(outlets(1));
    const book = await host.readBook();
    const at = namedColumn(book, "rooms_outlet").indexOf("S-1");
    expect(namedColumn(book, "rooms_note").slice(at - 1, at + 1)).toEqual(["ask the owner", "=2+2"]);
  }));

test("nor is one in which only a formula stands that shows nothing yet", () =>
  withBook(layOut(multiRoom, guestHouse), async (excel, host) => {
    // In a cell of figures: what is typed into a column of names is text there.
    const { top, left } = zoneOf(excel, "rooms_longest");
    const at = address(top + 1 + guestHouse.blocks!.rooms!.length, left);
    excel.state.enter("Rooms", at, '=IF(1=1,"","later")');
    await host.addOutlets(outlets(1));
    const book = await host.readBook();
    expect(book.sheets.find(({ name }) => name === "Rooms")!.cells[at]?.formula).toContain("later");
    expect(listed(book, "rooms_outlet").at(-1)).toBe("S-1");
  }));

test("names that look like dates, numbers and formulas are text, in cells of text and in those of an older workbook", async () => {
  const odd = ["3-16", "007", "1E5", "TRUE", "=A-07", "+3"];
  const rows = odd.map((outlet) => ({ outlet, receiver: "receiver", run: 5 }));
  const older = layOut(multiRoom, guestHouse);
  older.looks.forEach((look, index) => {
    if (look.format === "@") older.looks[index] = { ...look, format: undefined };
  });
  for (const book of [layOut(multiRoom, guestHouse), older]) {
    await withBook(book, async (_, host) => {
      await host.addOutlets(rows);
      expect(listed(await host.readBook(), "rooms_outlet").slice(-odd.length)).toEqual(odd);
    });
  }
});

test("outlets that are there are changed, one is taken out, new ones added: one step, and the rest stays", () =>
  withBook(layOut(multiRoom, guestHouse), async (excel, host) => {
    const rooms = roomsIn(await host.readBook())!;
    const [first, , third] = rooms.rows as [RoomsRow, RoomsRow, RoomsRow];
    const merge = mergeOutlets(
      [{ outlet: String(first.cells.outlet), run: 33.5, note: "1-2" }, ...outlets(3)],
      rooms.rows,
    );
    const steps = excel.undoSteps;
    const said = await host.addOutlets(merge.added, {
      changed: merge.changed,
      cleared: merge.gone.filter(({ offset }) => offset === third.offset),
    });
    expect(said).toBe("3 outlets added to Rooms, 1 outlet changed, 1 outlet taken out.");
    expect(excel.undoSteps).toBe(steps + 1);
    const after = roomsIn(await host.readBook())!;
    expect(after.rows.map(({ cells }) => cells.outlet)).toEqual([
      ...rooms.rows.filter(({ offset }) => offset !== third.offset).map(({ cells }) => cells.outlet),
      "S-1",
      "S-2",
      "S-3",
    ]);
    expect(after.rows[0]!.cells).toEqual({ ...first.cells, run: 33.5, note: "1-2" });
    const untouched = rooms.rows.filter(({ offset }) => offset !== first.offset && offset !== third.offset);
    expect(after.rows.filter(({ offset }) => untouched.some((one) => one.offset === offset))).toEqual(
      untouched,
    );
  }));

test("an outlet that was moved since the preview: a sentence, and nothing is written", () =>
  withBook(layOut(multiRoom, guestHouse), async (excel, host) => {
    const rooms = roomsIn(await host.readBook())!;
    const changes = {
      changed: [{ offset: 1, outlet: "elsewhere", cells: [{ key: "run", old: 1, now: 2 }] }],
      cleared: [],
    };
    expect(await sentenceOf(host.addOutlets(outlets(2), changes))).toMatch(
      /elsewhere stands elsewhere on Rooms by now/,
    );
    expect(excel.undoSteps).toBe(0);
    expect(roomsIn(await host.readBook())).toEqual(rooms);
  }));

test("a name that is gone, another template, a sheet protected against new rows: a sentence, and nothing is written", async () => {
  await withBook(layOut(multiRoom, guestHouse), async (excel, host) => {
    const { names } = excel.state.book;
    names.splice(
      names.findIndex(({ name }) => name === "rooms_run"),
      1,
    );
    expect(await sentenceOf(host.addOutlets(outlets(1)))).toMatch(/no cells named rooms_run any more/);
    expect(excel.undoSteps).toBe(0);
  });
  await withBook(layOut(singleDrop), async (excel, host) => {
    expect(await sentenceOf(host.addOutlets(outlets(1)))).toMatch(/takes no survey/);
    expect(excel.undoSteps).toBe(0);
  });
  await withBook(layOut(multiRoom, guestHouse), async (excel, host) => {
    excel.state.protectedSheets.set("Rooms", { insertRows: false });
    expect(await sentenceOf(host.addOutlets(outlets(40)))).toMatch(/protected.*Unprotect Sheet/);
    expect(listed(await host.readBook(), "rooms_outlet")).toEqual(
      guestHouse.blocks!.rooms!.map(({ outlet }) => outlet),
    );
  });
});

test("the demonstration's survey is understood as text; what is no survey is a sentence", async () => {
  const file = readFileSync(path.join(__dirname, "../../../templates/guest-house-survey.csv"));
  const survey = readSurvey(await new ExcelHost().readTables(new Uint8Array(file)), { unit: "m" });
  expect(survey.rows.map(({ outlet }) => outlet)).toEqual(
    guestHouse.blocks!.rooms!.map(({ outlet }) => outlet),
  );
  const picture = new Uint8Array([0x50, 0x4b, 3, 4, 0, 0]);
  expect(await sentenceOf(new ExcelHost().readTables(picture))).toMatch(/\.$/);
});
