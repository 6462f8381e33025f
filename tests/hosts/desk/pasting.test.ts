/** Pasting, cutting and filling inside the desk, and typing where nothing is asked for, in the grid's model. */
import { copyOf } from "../../../src/hosts/file/copy/copyOf";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { address, parseRange, type Zone } from "../../../src/formula/address";
import type { Book } from "../../../src/workbooks/book";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { summarise } from "../../../src/workbooks/multiRoom/summarise";
import { namedColumn } from "../../../src/workbooks/named";
import { templates } from "../../../src/workbooks/templates";
import { traineeSheet } from "../../../src/training/traineeSheet";
import { trainingSets } from "../../../src/training/sets/all";
import { bookOf, emptySheet } from "../../support/books";
import { paperWords } from "../../support/paperWords";
import { withLibreOffice } from "../../support/tools";
import { unprintedRows } from "../../support/unprinted";
import { DeskInNode } from "./openDesk";

const demonstration = (): DeskInNode => new DeskInNode(layOut(multiRoom, guestHouse));
const zoneOf = (book: Book, name: string): Zone =>
  parseRange(book.names.find((one) => one.name === name)!.range)!;
const cellOf = (book: Book, sheet: string, at: string) =>
  book.sheets.find(({ name }) => name === sheet)!.cells[at];
/** The library leaves out the alignment that a number has anyway. */
const lookOf = (book: Book, sheet: string, at: string) => ({
  ...book.looks[cellOf(book, sheet, at)?.look ?? -1],
  align: undefined,
});
const rulesOf = (book: Book) => book.sheets.map(({ validations }) => validations);
const marksOf = (book: Book) => book.sheets.map(({ marks }) => marks);
const one = (at: string): Zone => parseRange(at)!;
const filled = (book: Book, name: string): unknown[] => namedColumn(book, name).filter((value) => value);
/** The notice comes with the end of the step. */
const said = async (desk: DeskInNode): Promise<string> => {
  await new Promise((resolve) => setTimeout(resolve, 0));
  return desk.refusals.join(" ");
};

describe("copied in the desk", () => {
  test("a cell of other looks into a box: its value goes, the box stays what it is", async () => {
    const desk = demonstration();
    const before = desk.book();
    // The sheet's title, bold and large, into a room's name.
    await desk.copyPaste({ sheet: "Rooms", from: one("A1"), to: one("B8") });
    const after = desk.book();
    expect(cellOf(after, "Rooms", "B8")!.value).toBe("Rooms");
    expect(lookOf(after, "Rooms", "B8")).toEqual(lookOf(before, "Rooms", "B8"));
    expect(rulesOf(after)).toEqual(rulesOf(before));
    expect(marksOf(after)).toEqual(marksOf(before));
  });

  test("a blank cell without looks over boxes: they are emptied, and boxes still", async () => {
    const desk = demonstration();
    const before = desk.book();
    const outside = address(2, before.sheets.find(({ name }) => name === "Site")!.columnCount - 1);
    await desk.copyPaste({ sheet: "Site", from: one(outside), onto: "Rooms", to: one("A6:C7") });
    const after = desk.book();
    for (const at of ["A6", "B6", "C7"]) {
      expect(cellOf(after, "Rooms", at)!.value).toBeUndefined();
      expect(lookOf(after, "Rooms", at)).toEqual(lookOf(before, "Rooms", at));
    }
    expect(rulesOf(after)).toEqual(rulesOf(before));
  });

  test("a sum that was typed into a box goes on being one; a calculated column gives its values", async () => {
    const desk = demonstration();
    desk.type("Rooms", "H6", "=2*6+1");
    await desk.copyPaste({ sheet: "Rooms", from: one("H6"), to: one("H7") });
    expect(cellOf(desk.book(), "Rooms", "H7")!.formula).toBe("2*6+1");
    const book = desk.book();
    const { top, left } = zoneOf(book, "rooms_margin");
    const margins = namedColumn(book, "rooms_margin").slice(1, 4);
    const from = { top: top + 1, bottom: top + 3, left, right: left };
    await desk.copyPaste({ sheet: "Rooms", from, to: one("H8") });
    const after = desk.book();
    for (const [index, margin] of margins.entries()) {
      const cell = cellOf(after, "Rooms", `H${8 + index}`)!;
      expect(cell.formula).toBeUndefined();
      expect(cell.value).toBeCloseTo(margin as number, 9);
    }
  });

  test("one cell into a selection fills it, two rows repeat in four", async () => {
    const desk = demonstration();
    desk.type("Rooms", "H6", "11");
    desk.type("Rooms", "H7", "12");
    await desk.copyPaste({ sheet: "Rooms", from: one("H6:H7"), to: one("H10:H13") });
    await desk.copyPaste({ sheet: "Rooms", from: one("H6"), to: one("H15:H16") });
    const book = desk.book();
    expect([10, 11, 12, 13, 15, 16].map((row) => cellOf(book, "Rooms", `H${row}`)!.value)).toEqual([
      11, 12, 11, 12, 11, 11,
    ]);
  });

  test("looks alone are not pasted into boxes, with a word", async () => {
    const desk = demonstration();
    const before = desk.book();
    await desk.copyPaste({ sheet: "Rooms", from: one("A1"), to: one("B8"), pasteOption: "onlyFormat" });
    expect(await said(desk)).toMatch(/^The looks of this sheet's boxes say what they are for/);
    expect(desk.book()).toEqual(before);
  });

  test("more rows than the block has left: it grows, and so does what mirrors it", async () => {
    const desk = demonstration();
    const before = desk.book();
    const { top, bottom } = zoneOf(before, "rooms_outlet");
    // All inputs of 20 outlets under the 24 that are there.
    await desk.copyPaste({
      sheet: "Rooms",
      from: { top: top + 1, bottom: top + 20, left: 0, right: 8 },
      to: { top: top + 25, bottom: top + 25, left: 0, right: 0 },
    });
    const after = desk.book();
    expect(zoneOf(after, "rooms_outlet").bottom).toBe(Math.max(bottom, top + 45));
    expect(filled(after, "rooms_outlet")).toHaveLength(44);
    expect(filled(after, "commission_outlet")).toHaveLength(44);
    expect(unprintedRows(after)).toEqual([]);
    desk.undo();
    expect(desk.book()).toEqual(before);
  });
});

describe("cut in the desk", () => {
  test("from box to box: the value moves; names, rules and looks stay", async () => {
    const desk = demonstration();
    const before = desk.book();
    const job = zoneOf(before, "site_job");
    const customer = zoneOf(before, "site_customer");
    await desk.copyPaste({ sheet: "Site", from: job, to: customer, cut: true });
    const after = desk.book();
    const at = (zone: Zone) => address(zone.top, zone.left);
    expect(cellOf(after, "Site", at(customer))!.value).toBe(cellOf(before, "Site", at(job))!.value);
    expect(cellOf(after, "Site", at(job))!.value).toBeUndefined();
    expect(after.names).toEqual(before.names);
    expect(rulesOf(after)).toEqual(rulesOf(before));
    for (const zone of [job, customer])
      expect(lookOf(after, "Site", at(zone))).toEqual(lookOf(before, "Site", at(zone)));
    desk.undo();
    expect(desk.book()).toEqual(before);
  });

  test("rows onto rows that overlap them: nothing is lost", async () => {
    const desk = demonstration();
    const runs = namedColumn(desk.book(), "rooms_run").slice(1, 6);
    await desk.copyPaste({ sheet: "Rooms", from: one("H6:H8"), to: one("H7"), cut: true });
    expect(namedColumn(desk.book(), "rooms_run").slice(1, 6)).toEqual([
      undefined,
      runs[0],
      runs[1],
      runs[2],
      runs[4],
    ]);
  });

  test("what is not taken, or what added rows have moved, stays where it was cut", async () => {
    const desk = demonstration();
    const before = desk.book();
    const free = zoneOf(before, "exclusions_text");
    await desk.copyPaste({
      sheet: "Terms",
      from: { ...free, top: free.top + 1, bottom: free.top + 1 },
      to: { ...free, top: free.top + 1, bottom: free.top + 1, left: 3, right: 3 },
      cut: true,
    });
    expect(await said(desk)).toMatch(/nothing was entered.*What was cut stands where it stood as well\.$/);
    expect(desk.book()).toEqual(before);
    const parts = zoneOf(before, "options_name");
    await desk.copyPaste({
      sheet: "Terms",
      from: { ...free, top: free.top + 1, bottom: free.top + 3 },
      to: { ...parts, top: parts.bottom - 1, bottom: parts.bottom - 1 },
      cut: true,
    });
    const after = desk.book();
    expect(filled(after, "exclusions_text")).toEqual(filled(before, "exclusions_text"));
    expect(filled(after, "options_name").slice(-3)).toEqual(filled(before, "exclusions_text").slice(0, 3));
  });

  test("from a box to a sheet of one's own: the box stays", async () => {
    const desk = demonstration();
    const before = desk.book();
    desk.dispatchAs("CREATE_SHEET", { sheetId: "mine", position: 1, name: "Mine" });
    await desk.copyPaste({ sheet: "Rooms", from: one("B6"), onto: "Mine", to: one("A1"), cut: true });
    const after = desk.book();
    expect(cellOf(after, "Mine", "A1")!.value).toBe(cellOf(before, "Rooms", "B6")!.value);
    expect(cellOf(after, "Rooms", "B6")!.value).toBeUndefined();
    expect(lookOf(after, "Rooms", "B6")).toEqual(lookOf(before, "Rooms", "B6"));
    expect(after.names).toEqual(before.names);
  });

  test("cells are not shifted alone on a guarded sheet", async () => {
    const desk = demonstration();
    const before = desk.book();
    await desk.host.goTo("Rooms", "B8");
    desk.dispatchAs("INSERT_CELL", { zone: one("B8"), shiftDimension: "ROW" });
    desk.dispatchAs("DELETE_CELL", { zone: one("B8"), shiftDimension: "ROW" });
    expect(await said(desk)).toMatch(/^Cells of a row of this sheet belong together/);
    expect(desk.book()).toEqual(before);
  });
});

test("filled down by the corner: values go, boxes and rules stay", async () => {
  const desk = demonstration();
  const before = desk.book();
  await desk.host.goTo("Rooms", "H6");
  desk.dispatchAs("AUTOFILL_SELECT", { col: 7, row: 9 });
  desk.dispatchAs("AUTOFILL", {});
  const after = desk.book();
  expect(cellOf(after, "Rooms", "H9")!.value).toBe(cellOf(before, "Rooms", "H6")!.value);
  // To the right, over boxes of another kind.
  await desk.host.goTo("Rooms", "B6");
  desk.dispatchAs("AUTOFILL_SELECT", { col: 3, row: 5 });
  desk.dispatchAs("AUTOFILL", {});
  const right = desk.book();
  for (const at of ["H7", "H9", "C6", "D6"])
    expect(lookOf(right, "Rooms", at)).toEqual(lookOf(before, "Rooms", at));
  expect(rulesOf(right)).toEqual(rulesOf(before));
});

describe("pasted from outside", () => {
  const options = Array.from({ length: 12 }, (_, index) => `option ${index + 1}\t2\t${10 + index}\tno`);

  test.each(["", "\r\n"])(
    "12 options into the 5 rows of Terms, ending in %j: what stands below stays",
    async (end) => {
      const desk = new DeskInNode(layOut(multiRoom));
      const before = desk.book();
      const place = zoneOf(before, "options_name");
      await desk.host.goTo("Terms", address(place.top + 1, 0));
      desk.paste(options.join("\r\n") + end, {
        zone: { ...place, top: place.top + 1, bottom: place.top + 1 },
      });
      const after = desk.book();
      expect(zoneOf(after, "options_name").bottom).toBe(place.bottom + 12 - 5);
      expect(filled(after, "options_name")).toHaveLength(12);
      expect(filled(after, "options_quoted_name")).toHaveLength(12);
      expect(filled(after, "provisional_name")).toEqual(filled(before, "provisional_name"));
      expect(unprintedRows(after)).toEqual([]);
      expect(await said(desk)).toMatch(
        /^7 rows were added to Options and alternates, at their selling price, and to the lists that stand for the same rows\./,
      );
    },
  );

  test("rows that are blank at the end make no block longer and empty nothing below it", async () => {
    const desk = new DeskInNode(layOut(multiRoom));
    const before = desk.book();
    const place = zoneOf(before, "options_name");
    desk.type("Terms", address(zoneOf(before, "provisional_name").top + 1, 0), "a blocked duct");
    await desk.host.goTo("Terms", address(place.top + 1, 0));
    desk.paste(`one\r\n${"\r\n".repeat(30)}`, {
      zone: { ...place, top: place.top + 1, bottom: place.top + 1 },
    });
    const after = desk.book();
    expect(after.names).toEqual(before.names);
    expect(filled(after, "provisional_name")).toEqual(["a blocked duct"]);
  });

  test("blanks onto the thin row below a block: nothing happens", async () => {
    const desk = demonstration();
    const before = desk.book();
    const { bottom } = zoneOf(before, "rooms_outlet");
    await desk.host.goTo("Rooms", address(bottom, 2));
    desk.paste("\t\r\n\t\r\n", { zone: { top: bottom, bottom, left: 2, right: 2 } });
    expect(desk.book()).toEqual(before);
  });

  test("beside a block, and over its labels: said, and nothing is written", async () => {
    const desk = demonstration();
    const before = desk.book();
    const last = zoneOf(before, "exclusions_text");
    await desk.host.goTo("Terms", address(last.top + 1, 3));
    desk.paste("stray\tfar\r\n", {
      zone: { ...last, top: last.top + 1, bottom: last.top + 1, left: 3, right: 3 },
    });
    expect(await said(desk)).toMatch(
      /^In 2 of these cells nothing is asked for, so nothing was entered there\./,
    );
    expect(desk.book()).toEqual(before);
  });

  test("on an unlocked sheet and on one's own: as value too, with the library's own way", async () => {
    const desk = demonstration();
    desk.dispatchAs("CREATE_SHEET", { sheetId: "mine", position: 1, name: "Mine" });
    await desk.host.goTo("Mine", "A1");
    desk.paste('12\tx\r\n"two\nlines"\ty\r\n', { asValue: true, zone: one("A1") });
    const { cells } = desk.book().sheets.find(({ name }) => name === "Mine")!;
    expect([cells.A1, cells.B1, cells.A2, cells.B2].map((cell) => cell?.value)).toEqual([
      12,
      "x",
      "two\nlines",
      "y",
    ]);
    expect(cells.A3).toBeUndefined();
  });

  withLibreOffice(
    "40 outlets into the demonstration, from a clipboard that ends in CRLF: all 64 are on paper",
    async () => {
      const desk = demonstration();
      const { top } = zoneOf(desk.book(), "rooms_outlet");
      const rows = Array.from(
        { length: 40 },
        (_, index) =>
          `third\t${301 + index}\tT-${index + 1}\treceiver\t1\tH2\tindoor drop\t${8 + index}\tsingle outlet`,
      );
      await desk.host.goTo("Rooms", address(top + 25, 0));
      desk.paste(`${rows.join("\r\n")}\r\n`, {
        zone: { top: top + 25, bottom: top + 25, left: 0, right: 0 },
      });
      const book = desk.book();
      expect(filled(book, "rooms_outlet")).toHaveLength(64);
      expect(summarise(book).checks.filter(({ what }) => /below the closing row/.test(what))).toMatchObject([
        { found: 0, result: "ok" },
      ]);
      const copy = copyOf(book, "sealed", { now: new Date("2026-11-25T12:00:00Z"), version: "0" });
      const words = await paperWords(await writeXlsx(copy, { sealed: true }));
      // On Rooms and on Commissioning.
      for (const outlet of filled(book, "rooms_outlet"))
        expect([outlet, words.filter((word) => word === outlet).length >= 2]).toEqual([outlet, true]);
    },
  );
});

describe("typed where nothing is asked for", () => {
  test.each([
    ["beside the last box of a row", "Rooms", "rooms_built_volts", 1, 1],
    ["in the thin row below a block", "Rooms", "rooms_outlet", 0, 0],
    ["under a block", "Rooms", "rooms_outlet", 0, 1],
    ["beside a field", "Site", "site_job", 3, 0],
  ])("%s: refused with a sentence", async (where, sheet, name, aside, down) => {
    const desk = demonstration();
    const before = desk.book();
    const zone = zoneOf(before, name);
    const row = where.startsWith("beside the last") ? zone.top + 1 : zone.bottom + down;
    desk.type(sheet, address(row, zone.right + aside), "12.5");
    expect(await said(desk)).toMatch(
      /^(Nothing is asked for in this cell, so nothing was entered\. Choose a boxed cell; “Add rows” makes a block longer|This cell is calculated)/,
    );
    expect(desk.book()).toEqual(before);
  });

  test("what strayed there before is taken out", () => {
    const book = layOut(multiRoom, guestHouse);
    book.sheets.find(({ name }) => name === "Site")!.cells.F3 = { value: "stray" };
    const desk = new DeskInNode(book);
    expect(cellOf(desk.book(), "Site", "F3")!.value).toBe("stray");
    desk.type("Site", "F3", "");
    expect(cellOf(desk.book(), "Site", "F3")?.value).toBeUndefined();
  });

  test("a sheet of one's own, a workbook that is not ours and a trainee's sheet are free", () => {
    const own = demonstration();
    own.dispatchAs("CREATE_SHEET", { sheetId: "mine", position: 1, name: "Mine" });
    own.type("Mine", "C3", "a note");
    expect(cellOf(own.book(), "Mine", "C3")!.value).toBe("a note");
    const foreign = new DeskInNode(
      bookOf({ ...emptySheet("Theirs"), rowCount: 9, columnCount: 9, protected: true }),
    );
    foreign.type("Theirs", "C3", "a note");
    expect(cellOf(foreign.book(), "Theirs", "C3")!.value).toBe("a note");
    const sheet = traineeSheet(trainingSets[0]!, 1, { name: "Ada", occurrence: 1 });
    const trainee = new DeskInNode(sheet);
    const { name, rowCount } = sheet.sheets[0]!;
    trainee.type(name, `B${rowCount - 1}`, "12*2");
    expect(cellOf(trainee.book(), name, `B${rowCount - 1}`)!.value).toBe("12*2");
  });

  test("no input of any template is taken for an unasked cell", () => {
    for (const { empty } of templates) {
      const desk = new DeskInNode(empty());
      for (const { name, validations } of desk.book().sheets) {
        const sheetId = desk.model.getters.getSheetIdByName(name)!;
        const getters = desk.model.getters as unknown as { whyLeft(place: object): string | undefined };
        for (const { range } of validations) {
          const { top, bottom, left } = parseRange(range)!;
          const row = top === bottom ? top : top + 1;
          expect([name, range, getters.whyLeft({ sheetId, row, col: left })]).toEqual([
            name,
            range,
            undefined,
          ]);
        }
      }
    }
  });
});
