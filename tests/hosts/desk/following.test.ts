/**
 * What must follow the rows of the grid: what prints, the rows that repeat, where pages end, notes, and the
 * lists that input cells offer. Rows come by every road that the desk has, and go by undo.
 */
import { copyOf } from "../../../src/hosts/file/copy/copyOf";
import { readXlsx } from "../../../src/hosts/file/readXlsx";
import { writeXlsx } from "../../../src/hosts/file/writeXlsx";
import { fromModel } from "../../../src/hosts/grid/fromModel";
import type { GridDocument, GridModel } from "../../../src/hosts/grid/library";
import { toDocument } from "../../../src/hosts/grid/toDocument";
import { loadLibrary, quietly } from "../../../src/hosts/headless/loadLibrary";
import { parseRange } from "../../../src/formula/address";
import type { Book } from "../../../src/workbooks/book";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { namedColumn } from "../../../src/workbooks/named";
import { bookOf, emptySheet } from "../../support/books";
import { surveyOutlets } from "../../support/surveyOutlets";
import { paperWords } from "../../support/paperWords";
import { withLibreOffice } from "../../support/tools";
import { unprintedRows } from "../../support/unprinted";
import { DeskInNode } from "./openDesk";

const library = loadLibrary();
const zoneOf = (book: Book, name: string) => parseRange(book.names.find((one) => one.name === name)!.range)!;
const filled = (book: Book, name: string): unknown[] => namedColumn(book, name).filter((value) => value);
const printOf = (book: Book, sheet: string) => book.sheets.find(({ name }) => name === sheet)!.print;
const sheetIdOf = ({ getters }: GridModel, name: string): string => getters.getSheetIdByName(name)!;

/** Rows by the menu of the grid's row numbers. */
function insertRow(desk: DeskInNode, sheet: string, row: number, position: "before" | "after"): void {
  desk.dispatchAs("ADD_COLUMNS_ROWS", {
    sheetId: sheetIdOf(desk.model, sheet),
    sheetName: sheet,
    dimension: "ROW",
    base: row,
    position,
    quantity: 1,
  });
}

/** The demonstration with options until there are so many, by Add rows. */
async function withOptions(desk: DeskInNode, count: number): Promise<void> {
  const before = zoneOf(desk.book(), "options_name");
  const there = filled(desk.book(), "options_name").length;
  await desk.host.goTo("Terms", `A${before.top + 2}`);
  await desk.host.addRows(count - (before.bottom - before.top - 1));
  const options = Array.from({ length: count - there }, (_, index) => there + index);
  desk.enter(options.map((index) => ["Terms", `A${before.top + 2 + index}`, `option ${index + 1}`]));
}

describe("what prints", () => {
  test("60 outlets of a survey, imported into the empty template", () => {
    const desk = new DeskInNode(layOut(multiRoom));
    expect(desk.addOutlets(surveyOutlets(60, () => ""))).toBeUndefined();
    const book = desk.book();
    expect(filled(book, "rooms_outlet")).toHaveLength(60);
    expect(filled(book, "commission_outlet")).toHaveLength(60);
    expect(unprintedRows(book)).toEqual([]);
    desk.undo();
    expect(desk.book().sheets.map(({ print }) => print)).toEqual(
      new DeskInNode(layOut(multiRoom)).book().sheets.map(({ print }) => print),
    );
    desk.redo();
    expect(unprintedRows(desk.book())).toEqual([]);
  });

  test("Add rows on Distribution, filled to the last", async () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const before = zoneOf(desk.book(), "branches_id");
    await desk.host.goTo("Distribution", `A${before.top + 2}`);
    await desk.host.addRows(25);
    const rows = Array.from(
      { length: before.bottom - before.top - 1 + 25 },
      (_, index) => before.top + 1 + index,
    );
    desk.enter(rows.map((row) => ["Distribution", `A${row + 1}`, `B ${row}`]));
    expect(filled(desk.book(), "branches_id")).toHaveLength(before.bottom - before.top - 1 + 25);
    expect(unprintedRows(desk.book())).toEqual([]);
  });

  test("12 options on Terms: the quote keeps its terms and its safety", async () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    await withOptions(desk, 12);
    const book = desk.book();
    expect(filled(book, "options_quoted_name")).toHaveLength(12);
    expect(unprintedRows(book)).toEqual([]);
  });

  test.each([
    ["above the first row", (top: number) => top + 1, "before"],
    ["below the thin row above", (top: number) => top, "after"],
    ["in the middle", (top: number) => top + 9, "after"],
    ["below the last row", (_: number, bottom: number) => bottom - 1, "after"],
    ["above the thin row below", (_: number, bottom: number) => bottom, "before"],
  ] as const)("a row inserted by the grid's menu %s: its mirror grows too", (_, at, position) => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const before = desk.book();
    const rooms = zoneOf(before, "rooms_outlet");
    const mirror = zoneOf(before, "commission_outlet");
    insertRow(desk, "Rooms", at(rooms.top, rooms.bottom), position);
    const after = desk.book();
    expect(zoneOf(after, "rooms_outlet")).toEqual({ ...rooms, bottom: rooms.bottom + 1 });
    expect(zoneOf(after, "commission_outlet")).toEqual({ ...mirror, bottom: mirror.bottom + 1 });
    // Every row of the block looks like a row of the block.
    const sheet = after.sheets.find(({ name }) => name === "Rooms")!;
    // The library leaves out the alignment that a number has anyway.
    const look = (row: number) => ({ ...after.looks[sheet.cells[`H${row + 1}`]!.look!], align: undefined });
    for (let row = rooms.top + 1; row <= rooms.bottom; row++) {
      expect(look(row)).toEqual(look(rooms.top + 5));
      expect(sheet.rowHeights[row]).toBe(sheet.rowHeights[rooms.top + 5]);
    }
    desk.undo();
    expect(desk.book()).toEqual(before);
  });

  test("a row inserted above all: heads repeat where they stand now", () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const before = printOf(desk.book(), "Rooms")!;
    insertRow(desk, "Rooms", 0, "before");
    const after = printOf(desk.book(), "Rooms")!;
    expect([after.repeatFrom, after.repeatTo]).toEqual([before.repeatFrom! + 1, before.repeatTo! + 1]);
  });

  test("page ends and notes follow, in a workbook that is not ours too", () => {
    const sheet = { ...emptySheet("Mine"), rowCount: 30, columnCount: 5 };
    sheet.cells.B7 = { value: 4, note: "as measured" };
    sheet.print = {
      orientation: "portrait",
      paper: "a4",
      area: "A1:C20",
      repeatFrom: 2,
      repeatTo: 3,
      breaks: [10],
    };
    const desk = new DeskInNode(bookOf(sheet));
    insertRow(desk, "Mine", 4, "after");
    const [after] = desk.book().sheets;
    expect(after!.print).toMatchObject({ area: "A1:C21", repeatFrom: 2, repeatTo: 3, breaks: [11] });
    expect(after!.cells.B8).toEqual({ value: 4, note: "as measured" });
    expect(after!.cells.B7?.note).toBeUndefined();
    desk.undo();
    expect(desk.book().sheets[0]!.print).toEqual(sheet.print);
  });

  test("after reloads: changes replayed on the stored job, then on a later one", () => {
    let document = { ...toDocument(layOut(multiRoom)), revisionId: "FIRST" } as unknown as GridDocument;
    let changes: unknown[] = [];
    // As the page's autosave carries them: taken at once, and told back.
    const opened = (): GridModel => {
      const listeners: ((message: unknown) => void)[] = [];
      const transportService = {
        sendMessage: async (message: { nextRevisionId?: string }) => {
          for (const listener of listeners) listener(message);
          if (message.nextRevisionId !== undefined) changes.push(message);
        },
        onNewMessage: (_: string, listener: (message: unknown) => void) => void listeners.push(listener),
        leave: () => undefined,
      };
      const client = { id: `client ${changes.length}`, name: "desk" };
      return quietly(
        () =>
          new library.Model(document, { client, transportService: transportService as never }, [
            ...changes,
          ] as never),
      );
    };
    const grow = (model: GridModel, quantity: number): void => {
      const { bottom } = model.getters.getNamedRange("rooms_outlet")!.range.zone;
      const sheetId = sheetIdOf(model, "Rooms");
      const command = {
        sheetId,
        sheetName: "Rooms",
        dimension: "ROW",
        base: bottom - 1,
        position: "after",
        quantity,
      } as const;
      quietly(() => model.dispatch("ADD_COLUMNS_ROWS", command));
    };
    const areas = (model: GridModel) => {
      const book = quietly(() => fromModel(library, model));
      return ["Rooms", "Commissioning"].map((sheet) => parseRange(printOf(book, sheet)!.area!)!.bottom);
    };
    const first = areas(opened());
    grow(opened(), 30);
    expect(areas(opened())).toEqual(first.map((bottom) => bottom + 30));
    // The server keeps a snapshot, and further changes come upon it.
    document = JSON.parse(JSON.stringify(quietly(() => opened().exportData()))) as GridDocument;
    changes = [];
    grow(opened(), 5);
    expect(areas(opened())).toEqual(first.map((bottom) => bottom + 35));
  });

  test("in the file: its print areas and what it reads back", async () => {
    const desk = new DeskInNode(layOut(multiRoom));
    desk.addOutlets(surveyOutlets(60, () => ""));
    const book = desk.book();
    const read = await readXlsx(await writeXlsx(book));
    expect(unprintedRows(read)).toEqual([]);
    expect(printOf(read, "Rooms")!.area).toBe(printOf(book, "Rooms")!.area);
  });

  withLibreOffice("on paper: every outlet, every option and the terms", async () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    desk.addOutlets(surveyOutlets(60, () => ""));
    await withOptions(desk, 12);
    const copy = copyOf(desk.book(), "sealed", { now: new Date("2026-11-25T12:00:00Z"), version: "0" });
    const words = await paperWords(await writeXlsx(copy, { sealed: true }));
    const times = (word: string): number => words.filter((one) => one === word).length;
    // On Rooms and on Commissioning at least.
    for (const { outlet } of [...guestHouse.blocks!.rooms!, ...surveyOutlets(60, () => "")])
      expect([outlet, times(String(outlet)) >= 2]).toEqual([outlet, true]);
    // On Terms, on Price and on the quote.
    const text = words.join(" ");
    for (let option = 6; option <= 12; option++)
      expect(text.match(new RegExp(`\\boption ${option}\\b`, "g"))).toHaveLength(3);
    expect(text).toMatch(/Terms and safety/);
    expect(text).toMatch(/This quotation is not a safety certificate/);
  });
});

describe("what an input cell offers", () => {
  const offered = ({ getters }: GridModel, sheet: string, at: string): string[] => {
    const zone = parseRange(at)!;
    const position = { sheetId: getters.getSheetIdByName(sheet)!, row: zone.top, col: zone.left };
    const rule = getters.getValidationRuleForCell(position)!;
    return getters
      .getDataValidationRangeValues(position.sheetId, rule.criterion as never)
      .map(({ value }: { value: string }) => value);
  };

  test("rows added above a list and inside it", async () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const names = filled(desk.book(), "cables_name");
    const cables = zoneOf(desk.book(), "cables_name");
    const cell = { sheet: "Rooms", at: "G6" };
    expect(offered(desk.model, cell.sheet, cell.at)).toEqual(names);

    // Above: what stands first on Parts.
    insertRow(desk, "Parts", cables.top - 3, "before");
    expect(offered(desk.model, cell.sheet, cell.at)).toEqual(names);
    await desk.host.goTo("Parts", `A${cables.top + 3}`);
    await desk.host.addRows(20);
    const { bottom, left } = zoneOf(desk.book(), "cables_name");
    desk.type("Parts", `${"ABCDEF"[left]}${bottom}`, "last cable");
    expect(offered(desk.model, cell.sheet, cell.at)).toEqual([...names, "last cable"]);
    // A good value is not marked.
    const position = { sheetId: sheetIdOf(desk.model, "Rooms"), row: 5, col: 6 };
    expect(desk.model.getters.isDataValidationInvalid(position)).toBe(false);

    desk.undo();
    desk.undo();
    desk.undo();
    expect(offered(desk.model, cell.sheet, cell.at)).toEqual(names);
  });

  test("a sheet renamed", () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const names = filled(desk.book(), "cables_name");
    desk.dispatchAs("RENAME_SHEET", {
      sheetId: sheetIdOf(desk.model, "Parts"),
      oldName: "Parts",
      newName: "Our parts",
    });
    expect(offered(desk.model, "Rooms", "G6")).toEqual(names);
  });

  test("every list of the template, after rows were added to every block of Parts", async () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const lists = desk
      .book()
      .sheets.flatMap(({ name, validations }) =>
        validations.flatMap(({ range, rule }) =>
          rule.kind === "named" ? [{ sheet: name, range, list: rule.name }] : [],
        ),
      );
    expect(lists.length).toBeGreaterThan(5);
    const blocks = multiRoom.sheets
      .find(({ name }) => name === "Parts")!
      .parts.flatMap((part) => (part.kind === "block" ? [part] : []));
    for (const block of blocks) {
      const { top } = zoneOf(desk.book(), `${block.name}_${block.columns[0]!.key}`);
      await desk.host.goTo("Parts", `A${top + 2}`);
      await desk.host.addRows(7);
    }
    const after = desk.book();
    for (const { sheet, list } of lists) {
      const { range } = after.sheets
        .find(({ name }) => name === sheet)!
        .validations.find(({ rule }) => rule.kind === "named" && rule.name === list)!;
      const zone = parseRange(range)!;
      // The first row of a block is a thin one.
      const row = zone.bottom > zone.top ? zone.top + 2 : zone.top + 1;
      const at = `${String.fromCharCode(65 + zone.left)}${row}`;
      if (zone.left > 25) continue;
      expect([list, offered(desk.model, sheet, at)]).toEqual([
        list,
        [...new Set(filled(after, list).map(String))],
      ]);
    }
  });
});

describe("rows that go", () => {
  const removeRows = (desk: DeskInNode, sheet: string, elements: readonly number[]): void =>
    desk.dispatchAs("REMOVE_COLUMNS_ROWS", {
      sheetId: sheetIdOf(desk.model, sheet),
      sheetName: sheet,
      dimension: "ROW",
      elements,
    });

  test("take those of the mirror with them, and come back with them", () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const before = desk.book();
    const rooms = zoneOf(before, "rooms_outlet");
    const mirror = zoneOf(before, "commission_outlet");
    removeRows(desk, "Rooms", [rooms.top + 3, rooms.top + 4]);
    const after = desk.book();
    expect(zoneOf(after, "rooms_outlet").bottom).toBe(rooms.bottom - 2);
    expect(zoneOf(after, "commission_outlet").bottom).toBe(mirror.bottom - 2);
    expect(filled(after, "commission_outlet")).toEqual(filled(after, "rooms_outlet"));
    desk.undo();
    expect(desk.book()).toEqual(before);
  });

  test("not from a mirror alone", () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const before = desk.book();
    removeRows(desk, "Commissioning", [zoneOf(before, "commission_outlet").top + 1]);
    expect(desk.refusals.at(-1)).toMatch(
      /^The rows of Outlets stand for rows of another sheet.* on Rooms: these go/,
    );
    expect(desk.book()).toEqual(before);
  });

  test("all of a block: rows that are added then look as they did", async () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const { top, bottom } = zoneOf(desk.book(), "exclusions_text");
    const looks = (book: Book) => {
      const sheet = book.sheets.find(({ name }) => name === "Terms")!;
      return Array.from({ length: bottom - top - 1 }, (_, index) => {
        const at = `A${top + 2 + index}`;
        return [book.looks[sheet.cells[at]!.look!], sheet.rowHeights[top + 1 + index]];
      });
    };
    const before = looks(desk.book());
    removeRows(
      desk,
      "Terms",
      Array.from({ length: bottom - top - 1 }, (_, index) => top + 1 + index),
    );
    expect(zoneOf(desk.book(), "exclusions_text").bottom).toBe(top + 1);
    await desk.host.goTo("Terms", `A${top + 1}`);
    await desk.host.addRows(bottom - top - 1);
    expect(zoneOf(desk.book(), "exclusions_text").bottom).toBe(bottom);
    expect(looks(desk.book())).toEqual(before);
  });
});
