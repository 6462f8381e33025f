/** Cells of a workbook beside those of its template, moved or not; and whether a workbook holds more than its template. */
import { address, parseAddress, parseRange } from "../../src/formula/address";
import { isUnfilled } from "../../src/review/isUnfilled";
import {
  isForCustomer,
  templateSheets,
  type TemplateCell,
  type TemplateSheet,
} from "../../src/review/templateCells";
import type { Book, BookCell, BookSheet } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { startingPoint } from "../../src/workbooks/multiRoom/startingPoint";

let blank: Book;
/** The rows of the slots on Site, thin ones included, counted from 0. */
let top: number;
let bottom: number;
beforeAll(() => {
  blank = layOut(multiRoom, {});
  const slots = blank.names.find(({ name }) => name === "slots_slot")!;
  ({ top, bottom } = parseRange(slots.range)!);
});

const withSheet = (book: Book, name: string, change: (sheet: BookSheet) => BookSheet): Book => ({
  ...book,
  sheets: book.sheets.map((one) => (one.name === name ? change(one) : one)),
});
const lookedAt = (book: Book, name = "Site"): TemplateSheet =>
  templateSheets(book, multiRoom).find(({ definition }) => definition.name === name)!;

/** @returns the book with rows put in before a row of Site, counted from 0; with a negative count, that many taken away from it on */
function withRows(before: number, count: number): Book {
  const moved = (row: number): number | undefined =>
    row < before ? row : row < before - count ? undefined : row + count;
  return {
    ...withSheet(blank, "Site", (sheet) => ({
      ...sheet,
      cells: Object.fromEntries(
        Object.entries(sheet.cells).flatMap(([at, cell]): [string, BookCell][] => {
          const { row, column } = parseAddress(at)!;
          const now = moved(row);
          return now === undefined ? [] : [[address(now, column), cell]];
        }),
      ),
    })),
    names: blank.names.map((one) => {
      const zone = parseRange(one.range)!;
      if (one.sheet !== "Site" || zone.bottom < before) return one;
      const from = moved(zone.top) ?? before;
      return { ...one, range: `${address(from, zone.left)}:${address(zone.bottom + count, zone.right)}` };
    }),
  };
}

describe("a cell's own", () => {
  test("is the one at its address in a workbook of which nothing moved", () => {
    const sheets = templateSheets(blank, multiRoom);
    expect(sheets.map(({ sheet }) => sheet.name)).toEqual(blank.sheets.map(({ name }) => name));
    for (const { fresh, cells } of sheets)
      expect(
        cells.filter(
          ({ at, own, ownPlace, place }) =>
            !own ||
            own !== fresh.cells[at] ||
            address(ownPlace.row, ownPlace.column) !== address(place.row, place.column),
        ),
      ).toEqual([]);
    // The same book is gone through once.
    expect(templateSheets(blank, multiRoom)).toBe(sheets);
  });
  test("lies higher where rows came; what was put in takes the place of the row before", () => {
    const { ownPlaceOf } = lookedAt(withRows(top + 2, 3));
    const own = (row: number): number => ownPlaceOf({ row, column: 1 }).row;
    expect([own(0), own(top), own(top + 1)]).toEqual([0, top, top + 1]);
    expect([own(bottom + 3), own(bottom + 4)]).toEqual([bottom, bottom + 1]);
    // Three more rows than the template has: none of them reaches the last one.
    expect([own(bottom), own(bottom + 1), own(bottom + 2)]).toEqual([bottom - 1, bottom - 1, bottom - 1]);
    expect(ownPlaceOf({ row: top, column: 0 }).column).toBe(0);
  });
  test("lies lower where rows were taken away", () => {
    const { ownPlaceOf } = lookedAt(withRows(top + 1, -2));
    expect(ownPlaceOf({ row: bottom - 2, column: 0 }).row).toBe(bottom);
    expect(ownPlaceOf({ row: bottom + 3, column: 0 }).row).toBe(bottom + 5);
    expect(ownPlaceOf({ row: top, column: 0 }).row).toBe(top);
  });
  test("is found on a sheet that is called otherwise, by its names", () => {
    const renamed: Book = {
      ...withSheet(blank, "Site", (sheet) => ({ ...sheet, name: "House" })),
      names: blank.names.map((one) => (one.sheet === "Site" ? { ...one, sheet: "House" } : one)),
    };
    const { sheet, fresh, definition } = lookedAt(renamed);
    expect([sheet.name, fresh.name, definition.name]).toEqual(["House", "Site", "Site"]);
  });
  test("of a sheet that is gone there is none", () => {
    const without = { ...blank, sheets: blank.sheets.filter(({ name }) => name !== "Terms") };
    expect(templateSheets(without, multiRoom).map(({ definition }) => definition.name)).toEqual(
      blank.sheets.map(({ name }) => name).filter((name) => name !== "Terms"),
    );
  });
});

describe("of a cell are told", () => {
  const cellAt = (book: Book, at: string): TemplateCell | undefined =>
    lookedAt(book).cells.find((one) => one.at === at);
  const withCells = (cells: Record<string, BookCell>, results: Record<string, number> = {}): Book =>
    withSheet(blank, "Site", (sheet) => ({
      ...sheet,
      cells: { ...sheet.cells, ...cells },
      results: { ...sheet.results, ...results },
    }));
  test("what it shows, else what was typed, and its look beside the template's", () => {
    const looked = blank.looks.findIndex(({ bold }) => bold === true);
    const book = withCells(
      { A1: { value: "typed", look: looked }, Z99: { value: 5 }, Z98: { formula: "1/0" } },
      { A1: 7 },
    );
    const { fresh } = lookedAt(book);
    expect(cellAt(book, "A1")).toMatchObject({
      place: { row: 0, column: 0 },
      value: 7,
      cell: { value: "typed" },
      look: blank.looks[looked],
      own: fresh.cells["A1"],
      ownLook: blank.looks[fresh.cells["A1"]!.look!],
    });
    expect(cellAt(book, "Z99")).toMatchObject({ value: 5, look: {}, own: undefined, ownLook: {} });
    expect(cellAt(book, "Z98")).toMatchObject({ value: undefined, cell: { formula: "1/0" } });
  });
  test("none that holds nothing; last those with a result and no cell", () => {
    const book = withCells({ Z99: { look: 1 } }, { Z97: 3, A1: 2 });
    expect(cellAt(book, "Z99")).toBeUndefined();
    const { cells } = lookedAt(book);
    expect(cells.at(-1)).toMatchObject({ at: "Z97", value: 3, cell: undefined });
    expect(cells.filter(({ at }) => at === "A1")).toHaveLength(1);
  });
});

test("the customer gets to see the quote, and no other sheet", () =>
  expect(
    templateSheets(blank, multiRoom).flatMap((one) => (isForCustomer(one) ? [one.sheet.name] : [])),
  ).toEqual(["Quote"]));

describe("nothing is filled in", () => {
  const start = (
    change: (job: { fields: Record<string, unknown>; blocks: Record<string, unknown[]> }) => void = () => {},
  ): Book => {
    const job = structuredClone(startingPoint) as Parameters<typeof change>[0];
    change(job);
    return layOut(multiRoom, job as never);
  };
  test("where a workbook has what its template starts from", () => expect(isUnfilled(start())).toBe(true));
  test.each<[string, Parameters<typeof start>[0]]>([
    ["a field more", (job) => (job.fields["site_customer"] = "Somebody")],
    ["a row more", (job) => (job.blocks["rooms"] = [{ outlet: "G-01" }])],
    ["a row less", (job) => job.blocks["exclusions"]!.pop()],
    ["another figure", (job) => (job.fields["site_waste"] = 0.2)],
    ["other words", (job) => (job.blocks["exclusions"]![0] = { text: "Nothing." })],
  ])("not with %s", (_, change) => expect(isUnfilled(start(change))).toBe(false));
  test("what an earlier version had no cell for does not count", () => {
    const book = start();
    const without = (...names: string[]): Book => ({
      ...book,
      names: book.names.filter(
        ({ name }) => !names.some((one) => name === one || name.startsWith(`${one}_`)),
      ),
    });
    expect(isUnfilled(without("site_tax_on"))).toBe(true);
    expect(isUnfilled(without("exclusions_text"))).toBe(true);
    expect(isUnfilled(without("site_waste", "causes"))).toBe(true);
  });
  test("a workbook that is none of ours is not called so", () =>
    expect(isUnfilled({ ...start(), template: "" })).toBe(false));
});
