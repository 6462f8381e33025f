/** A survey's outlets on the Rooms sheet of the desk: where they go, and one step back. */
import { outletsToAdd, roomsNow } from "../../../src/hosts/desk/page/outletsToAdd";
import { namedColumn, namedValue } from "../../../src/workbooks/named";
import type { Book } from "../../../src/workbooks/book";
import { layOut } from "../../../src/workbooks/layOut";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { guestHouse } from "../../../src/workbooks/multiRoom/guestHouse";
import { singleDrop } from "../../../src/workbooks/singleDrop/definition";
import { mergeOutlets } from "../../../src/workbooks/survey/merge";
import { roomsIn } from "../../../src/workbooks/survey/roomsBlock";
import type { SurveyRow } from "../../../src/workbooks/survey/survey";
import { address, parseRange } from "../../../src/formula/address";
import { referencePrice, type Job } from "../../support/referencePrice";
import { surveyOutlets } from "../../support/surveyOutlets";
import { DeskInNode } from "./openDesk";

const outlets = (count: number): SurveyRow[] => surveyOutlets(count, () => "1-2");

/** What the page's desk does with them. */
function add(desk: DeskInNode, rows: readonly SurveyRow[]): void {
  const plan = outletsToAdd(desk.model, multiRoom, rows);
  if (typeof plan === "string") throw new Error(plan);
  desk.dispatchAs("RIGSHEET_ENTER_ROWS", { ...plan, contents: plan.cells });
}

const names = (book: Book): unknown[] => namedColumn(book, "rooms_outlet").filter((name) => name);
const rowsOf = (book: Book, name: string): number => {
  const { top, bottom } = parseRange(book.names.find((one) => one.name === name)!.range)!;
  return bottom - top + 1;
};

describe("outlets of a survey", () => {
  const before = new DeskInNode(layOut(multiRoom, guestHouse)).book();

  test("the workbook's unit and outlets are known", () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const { model } = desk;
    const rooms = roomsNow(model)!;
    expect(rooms.unit).toBe("m");
    expect(rooms.rows.map(({ offset, cells }) => [offset, cells.outlet])).toEqual(
      guestHouse.blocks!.rooms!.map(({ outlet }, index) => [index + 1, outlet]),
    );
    expect(rooms.rows[0]!.cells).toMatchObject({ run: guestHouse.blocks!.rooms![0]!.run });
    expect(rooms.lists.cable).toEqual(guestHouse.blocks!.cables!.map(({ name }) => name));
    // What the workbook's file says is the same.
    expect(roomsIn(desk.book())).toEqual(rooms);
    expect(roomsNow(new DeskInNode(layOut(singleDrop)).model)).toBeUndefined();
  });

  test("a few go into the prepared rows, texts as texts, and are priced as a reference prices them", () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    add(desk, outlets(3));
    const book = desk.book();
    expect(names(book)).toEqual([...names(before), "S-1", "S-2", "S-3"]);
    expect(rowsOf(book, "rooms_outlet")).toBe(rowsOf(before, "rooms_outlet"));
    const at = namedColumn(book, "rooms_outlet").indexOf("S-2");
    expect(namedColumn(book, "rooms_room")[at]).toBe("2");
    expect(namedColumn(book, "rooms_note")[at]).toBe("1-2");
    expect(namedColumn(book, "rooms_run")[at]).toBe(11.5);
    const rooms = [...guestHouse.blocks!.rooms!, ...outlets(3)];
    const job = { ...guestHouse, blocks: { ...guestHouse.blocks, rooms } } as unknown as Job;
    expect(Number(namedValue(book, "quote_total")).toFixed(2)).toBe(referencePrice(job).total);
  });

  test("more than the prepared rows take: rows are added to Rooms and its mirror, and one undo takes all back", () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    add(desk, outlets(40));
    const book = desk.book();
    expect(names(book)).toEqual([...names(before), ...outlets(40).map(({ outlet }) => outlet)]);
    const more = rowsOf(book, "rooms_outlet") - rowsOf(before, "rooms_outlet");
    expect(more).toBe(24 + 40 - 30);
    expect(rowsOf(book, "commission_outlet") - rowsOf(before, "commission_outlet")).toBe(more);
    expect(namedValue(book, "count_outlets")).toBe(64);
    desk.undo();
    const back = desk.book();
    expect(names(back)).toEqual(names(before));
    expect(rowsOf(back, "rooms_outlet")).toBe(rowsOf(before, "rooms_outlet"));
    expect(namedValue(back, "quote_total")).toBe(namedValue(before, "quote_total"));
  });

  test("a row left free in the middle is not filled, and a filled last row is not lost", () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const { bottom } = parseRange(before.names.find(({ name }) => name === "rooms_outlet")!.range)!;
    desk.type("Rooms", `C${bottom}`, "LAST");
    add(desk, outlets(2));
    expect(names(desk.book())).toEqual([...names(before), "LAST", "S-1", "S-2"]);
  });

  test("a row whose only content is a formula that shows nothing yet is not written over", () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const { bottom } = parseRange(before.names.find(({ name }) => name === "rooms_note")!.range)!;
    const column = parseRange(before.names.find(({ name }) => name === "rooms_note")!.range)!.left;
    const at = address(bottom - 1, column);
    const formula = `IF(C${bottom}="","","later")`;
    desk.type("Rooms", at, `=${formula}`);
    add(desk, outlets(1));
    const book = desk.book();
    expect(book.sheets.find(({ name }) => name === "Rooms")!.cells[at]?.formula).toBe(formula);
    expect(names(book)).toEqual([...names(before), "S-1"]);
    expect(rowsOf(book, "rooms_outlet")).toBe(rowsOf(before, "rooms_outlet") + 1);
  });

  test("a run typed as a sum in the last prepared row stays with its outlet, and is no outlet's of the survey", () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const { bottom } = parseRange(before.names.find(({ name }) => name === "rooms_outlet")!.range)!;
    const { left } = parseRange(before.names.find(({ name }) => name === "rooms_run")!.range)!;
    desk.type("Rooms", `C${bottom}`, "LAST");
    desk.type("Rooms", address(bottom - 1, left), "=12+3");
    add(desk, outlets(3));
    const book = desk.book();
    const at = namedColumn(book, "rooms_outlet").indexOf("LAST");
    expect(namedColumn(book, "rooms_run").slice(at, at + 4)).toEqual([15, 10.5, 11.5, 12.5]);
    // And it can be typed over.
    desk.type("Rooms", address(bottom - 1, left), 16);
    expect(namedColumn(desk.book(), "rooms_run")[at]).toBe(16);
  });

  test("a block of which every row was deleted takes them between its thin rows", () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const sheetId = desk.model.getters.getSheetIdByName("Rooms")!;
    const { top, bottom } = parseRange(before.names.find(({ name }) => name === "rooms_outlet")!.range)!;
    const elements = Array.from({ length: bottom - top - 1 }, (_, index) => top + 1 + index);
    desk.dispatchAs("REMOVE_COLUMNS_ROWS", { sheetId, sheetName: "Rooms", dimension: "ROW", elements });
    // A splitter of which every port is free now.
    add(
      desk,
      outlets(2).map((outlet) => ({ ...outlet, from: "U1" })),
    );
    const book = desk.book();
    expect(names(book)).toEqual(["S-1", "S-2"]);
    expect(
      namedColumn(book, "rooms_level_low_cold").filter((level) => typeof level === "number"),
    ).toHaveLength(2);
  });

  test("outlets that are there are brought up to date, one is taken out, and one undo takes all of it back", () => {
    const desk = new DeskInNode(layOut(multiRoom, guestHouse));
    const rooms = roomsNow(desk.model)!;
    const [first, second, third] = rooms.rows;
    const noted = String(first!.cells.note ?? "");
    const merge = mergeOutlets(
      [
        { outlet: String(first!.cells.outlet).toLowerCase(), run: 33.5, shortest: 32, longest: 35 },
        { outlet: String(second!.cells.outlet), run: second!.cells.run!, receiver: second!.cells.receiver! },
        ...outlets(40),
      ],
      rooms.rows,
    );
    expect([merge.added.length, merge.changed.length, merge.same]).toEqual([40, 1, 1]);
    expect(merge.gone.map(({ outlet }) => outlet)).toEqual(
      rooms.rows.slice(2).map(({ cells }) => cells.outlet),
    );
    const gone = merge.gone.find(({ offset }) => offset === third!.offset)!;
    expect(desk.addOutlets(merge.added, { changed: merge.changed, cleared: [gone] })).toBeUndefined();
    const book = desk.book();
    const at = (name: string, offset: number): unknown => namedColumn(book, name)[offset];
    expect(["run", "shortest", "longest"].map((key) => at(`rooms_${key}`, first!.offset))).toEqual([
      33.5, 32, 35,
    ]);
    // What was typed beside it, and the outlet's own writing, stays.
    expect(at("rooms_outlet", first!.offset)).toBe(first!.cells.outlet);
    expect(at("rooms_receiver", first!.offset)).toBe(first!.cells.receiver);
    expect(at("rooms_note", first!.offset) ?? "").toBe(noted);
    for (const key of ["outlet", "run", "receiver", "floor"])
      expect(at(`rooms_${key}`, third!.offset) ?? "").toBe("");
    expect(names(book)).toEqual([
      ...names(before).filter((name) => name !== third!.cells.outlet),
      ...outlets(40).map(({ outlet }) => outlet),
    ]);
    desk.undo();
    expect(roomsNow(desk.model)).toEqual(rooms);
    expect(namedValue(desk.book(), "quote_total")).toBe(namedValue(before, "quote_total"));
  });

  test("a workbook of another template, or one that lost a name, takes none and says why", () => {
    expect(outletsToAdd(new DeskInNode(layOut(singleDrop)).model, singleDrop, outlets(1))).toMatch(
      /not made from our multi-room template/,
    );
    const whole = layOut(multiRoom, guestHouse);
    const { model } = new DeskInNode({
      ...whole,
      names: whole.names.filter(({ name }) => name !== "rooms_run"),
    });
    const refused = outletsToAdd(model, multiRoom, outlets(1));
    expect(refused).toMatch(/no cells named rooms_run any more/);
    // The survey has no floors, but the block grows by the name of its first column.
    const { model: headless } = new DeskInNode({
      ...whole,
      names: whole.names.filter(({ name }) => name !== "rooms_floor"),
    });
    const floorless = outlets(40).map(({ floor: _, ...row }) => row);
    expect(outletsToAdd(headless, multiRoom, floorless)).toMatch(/no cells named rooms_floor any more/);
  });
});
