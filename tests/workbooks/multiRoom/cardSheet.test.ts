/** Where cards stand on their sheet, what frames them, and where pages end. */
import { parseRange } from "../../../src/formula/address";
import type { BookSheet, Look } from "../../../src/workbooks/book";
import { boxAt, CARD, cardSheet, type Card } from "../../../src/workbooks/multiRoom/cards/cardSheet";

const SHAPE = { rows: 3, columns: 3, across: 2, down: 1 };
const titled = (value: string): Card => [{ row: 0, column: 0, value, look: CARD.title }];

function made(cards: readonly Card[], shape = SHAPE): { sheet: BookSheet; look: (at: string) => Look } {
  const book = { looks: [] as Look[] };
  const sheet = cardSheet(book, "Cards", cards, shape);
  return { sheet, look: (at) => book.looks[sheet.cells[at]!.look!]! };
}

test("two beside one another, the third below, a gap between; a page ends after each line of them", () => {
  const { sheet } = made([titled("one"), titled("two"), titled("three")]);
  const values = Object.entries(sheet.cells).flatMap(([at, { value }]) => (value ? [[at, value]] : []));
  // Four columns a half, one between; three rows a card, one between.
  expect(values).toEqual([
    ["A1", "one"],
    ["F1", "two"],
    ["A5", "three"],
  ]);
  expect(sheet.rowHeights).toEqual({ 0: 22, 1: 15.5, 2: 15.5, 3: 11, 4: 22, 5: 15.5, 6: 15.5, 7: 11 });
  expect(sheet).toMatchObject({ name: "Cards", rowCount: 8, columnCount: 9, results: {}, protected: true });
  expect(sheet.columnWidths).toEqual({ 0: 19, 1: 12, 2: 8, 3: 10, 4: 1.5, 5: 19, 6: 12, 7: 8, 8: 10 });
  expect([sheet.validations, sheet.marks]).toEqual([[], []]);
  expect(sheet.print).toEqual({
    orientation: "portrait",
    paper: "a4",
    area: expect.anything() as unknown,
    breaks: [4],
    footLeft: "Cards",
    footRight: "",
  });
  expect(parseRange(sheet.print!.area!)).toEqual({ top: 0, left: 0, bottom: 7, right: 8 });
});

test("pages of two lines: five lines end two of them", () => {
  const cards = Array.from({ length: 9 }, () => titled("one"));
  expect(made(cards, { ...SHAPE, down: 2 }).sheet.print!.breaks).toEqual([8, 16]);
});

test("no card is an empty sheet of one row", () => {
  const { sheet } = made([]);
  expect([sheet.rowCount, sheet.print!.breaks, sheet.cells]).toEqual([1, [], {}]);
});

test("a thin frame around each card, nothing inside; a box keeps its own", () => {
  const into = { columns: [], row: 0 };
  const { sheet, look } = made([[...titled("one"), boxAt(2, 2, into)]]);
  expect(Object.keys(sheet.cells).sort()).toEqual(["A1", "A2", "A3", "B1", "B3", "C1", "C2", "C3"]);
  expect(look("A1")).toEqual({ ...CARD.title, edges: { top: "thin", left: "thin" } });
  expect(["A2", "A3", "B1", "B3", "C1", "C2"].map((at) => look(at).edges)).toEqual([
    { left: "thin" },
    { bottom: "thin", left: "thin" },
    { top: "thin" },
    { bottom: "thin" },
    { top: "thin", right: "thin" },
    { right: "thin" },
  ]);
  expect(look("C3")).toEqual({ edges: { top: "medium", right: "medium", bottom: "medium", left: "medium" } });
  expect(boxAt(2, 1, into)).toEqual({ row: 2, column: 1, look: CARD.box, into });
});
