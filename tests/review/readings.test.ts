/** What is said of cells in which a room type's value counts is said once, at the type; and a workbook with the template's formulas back in place. */
import { atTheirType } from "../../src/review/atTheirType";
import { priceEffect } from "../../src/review/priceEffect";
import { restoredBook } from "../../src/review/restoredBook";
import { sliced } from "../../src/review/sliced";
import { likelyInputs, withLikelyInputs } from "../../src/review/withLikelyInputs";
import type { Finding } from "../../src/review/finding";
import type { Book, BookCell } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { address, parseRange } from "../../src/formula/address";
import { bookOf, columns, emptySheet } from "../support/books";

const said = (cell: string | undefined, more: Partial<Finding> = {}): Finding => ({
  rule: "far from neighbours",
  weight: "wrong",
  message: "A run of 90.",
  remedy: "Look.",
  ...(cell !== undefined && { place: { sheet: "S", cell } }),
  ...more,
});

describe("a room type", () => {
  /** Types in A with their runs in B; rooms in C with their types in D and their runs in E. */
  const read = columns({
    types_name: ["", "double", "suite", ""],
    types_run: ["", 90, 40, ""],
    rooms_outlet: ["", "G-01", "G-02", "G-03", "G-04", ""],
    rooms_type: ["", "Double ", "double", "suite", "none", ""],
    rooms_run: ["", 90, 90, 40, 12, ""],
  });
  const stored = (cells: Record<string, BookCell> = {}): Book => ({
    ...read,
    sheets: read.sheets.map((sheet) => ({ ...sheet, cells })),
  });
  const told = (found: readonly Finding[], cells?: Record<string, BookCell>) =>
    atTheirType(found, stored(cells), read);

  test("is told once, at its own cell, with how many more rows have it", () => {
    expect(told([said("E2"), said("E3")])).toEqual([
      said("B2", { message: "A run of 90, and so in 1 more of this type." }),
    ]);
    expect(told([said("E2")])).toEqual([said("B2")]);
    expect(told([said("E4"), said("E2")])).toEqual([said("B3"), said("B2")]);
    expect(told([said("E2", { message: "Long" }), said("E3"), said("E2")])[0]!.message).toBe(
      "Long, and so in 2 more of this type.",
    );
  });
  test("by each rule and each weight by itself", () =>
    expect(told([said("E2"), said("E3", { rule: "unit slip" }), said("E3", { weight: "doubtful" })])).toEqual(
      [said("B2"), said("B2", { rule: "unit slip" }), said("B2", { weight: "doubtful" })],
    ));
  test.each<[string, Finding, Record<string, BookCell>]>([
    ["a row with a value of its own", said("E2"), { E2: { value: 90 } }],
    ["a row with a formula of its own", said("E2"), { E2: { formula: "9*10" } }],
    ["a row of no type", said("E5"), {}],
    ["another column", said("C2"), {}],
    ["another sheet", said("E2", { place: { sheet: "T", cell: "E2" } }), {}],
    ["the whole workbook", said(undefined), {}],
  ])("not of %s", (_, finding, cells) => expect(told([finding], cells)).toEqual([finding]));
  test("a cell of the row that was cleared has the type's", () =>
    expect(told([said("E2")], { E2: { value: "" } })).toEqual([said("B2")]));
  test("without types all stays where it is", () => {
    const bare = columns({ types_name: ["", ""], rooms_outlet: ["", "G-01", ""], rooms_run: ["", 9, ""] });
    expect(atTheirType([said("C2")], bare, bare)).toEqual([said("C2")]);
  });
});

describe("the template's formulas back in place", () => {
  let blank: Book;
  beforeAll(() => void (blank = layOut(multiRoom, {})));
  test("what was typed over them is gone, looks and inputs stay, no result is kept", () => {
    const { range } = blank.names.find(({ name }) => name === "cables_each")!;
    const { top, left, bottom } = parseRange(range)!;
    const [first, second] = [address(top, left), address(top + 1, left)];
    const input = address(top + 1, 0);
    const spoilt: Book = {
      ...blank,
      sheets: blank.sheets.map((sheet) =>
        sheet.name === "Parts"
          ? {
              ...sheet,
              cells: {
                ...sheet.cells,
                [first]: { value: 5, look: 3 },
                [second]: { value: 7, look: 4, note: "typed" },
                [input]: { value: "drop" },
              },
            }
          : sheet,
      ),
    };
    const { cells } = restoredBook(spoilt, multiRoom).sheets.find(({ name }) => name === "Parts")!;
    expect(cells[first]).toEqual({
      look: 3,
      formula: 'IF(cables_name="","",cables_price/cables_reel)',
      spill: { rows: bottom - top + 1, columns: 1 },
    });
    expect(cells[second]).toEqual({ look: 4 });
    expect(cells[input]).toEqual({ value: "drop" });
    // The book that was given is as it was.
    expect(spoilt.sheets.find(({ name }) => name === "Parts")!.cells[first]).toEqual({ value: 5, look: 3 });
  });
  test("a formula of one cell has no reach, and a sheet that is gone is passed over", () => {
    const without = { ...blank, sheets: blank.sheets.filter(({ name }) => name !== "Parts") };
    const restored = restoredBook(without, multiRoom);
    expect(restored.sheets.map(({ name }) => name)).toEqual(without.sheets.map(({ name }) => name));
    const { range } = blank.names.find(({ name }) => name === "price_total")!;
    const cell = restored.sheets.find(({ name }) => name === "Price")!.cells[range]!;
    expect([typeof cell.formula, "spill" in cell]).toEqual(["string", false]);
  });
});

test("what the formulas do to the total", () => {
  const total = (value: number | string): Book => columns({ quote_total: [value] });
  const effect = (own: Book, expected?: Book) => priceEffect({ own, ...(expected && { expected }) });
  expect(effect(total(100), total(120.5))).toBe(
    "The total is 100.00; with all of the template's formulas it is 120.50.",
  );
  expect(effect(total(100), total(100.004))).toBe("The total is the same with the template's formulas.");
  // Half a cent is a difference.
  expect(effect(total(0), total(0.005))).toMatch(/^The total is 0\.00; /);
  expect([effect(total(100)), effect(total("none"), total(5)), effect(total(5), total("none"))]).toEqual(
    Array(3).fill(undefined),
  );
});

describe("as much of a workbook as is wanted", () => {
  const book: Book = {
    ...bookOf(
      {
        ...emptySheet("S"),
        cells: {
          A1: { value: 1 },
          B1: { formula: "A1*2" },
          C1: { formula: "B1+Other!A1" },
          D1: { formula: "A1*9" },
          E1: { look: 2 },
          F1: { formula: "C1*3" },
        },
      },
      { ...emptySheet("Other"), cells: { A1: { formula: "5" }, B1: { formula: "6" } } },
    ),
    names: [
      { name: "sum", sheet: "S", range: "C1" },
      { name: "more", sheet: "S", range: "F1" },
      { name: "lost", sheet: "S", range: "#REF!" },
    ],
  };
  const cellsIn = (of: Book) => of.sheets.map(({ cells }) => Object.keys(cells).join(" "));
  test("what it reads stays, however far back, and all that was typed", () => {
    expect(cellsIn(sliced(book, ["sum"]))).toEqual(["A1 B1 C1", "A1"]);
    expect(cellsIn(sliced(book, ["more", "lost"]))).toEqual(["A1 B1 C1 F1", "A1"]);
    expect(cellsIn(sliced(book, []))).toEqual(["A1", ""]);
  });
  test("and what a change would read in its place", () =>
    expect(
      cellsIn(sliced(book, ["sum"], [{ place: { sheet: "S", cell: "B1" }, formula: "D1+Other!B1" }])),
    ).toEqual(["A1 B1 C1 D1", "A1 B1"]));
  test("the whole of it where a formula reads what stands nowhere in it", () => {
    const reading = (formula: string): Book => ({
      ...book,
      sheets: [{ ...book.sheets[0]!, cells: { ...book.sheets[0]!.cells, G1: { formula } } }, book.sheets[1]!],
    });
    for (const formula of ['INDIRECT("A1")', "offset(A1,1,0)"]) {
      const whole = reading(formula);
      expect(sliced(whole, ["sum"])).toBe(whole);
      expect(sliced(book, ["sum"], [{ place: { sheet: "S", cell: "B1" }, formula }])).toBe(book);
    }
    expect(cellsIn(sliced(reading("INDEX(A1:A2,1)"), ["sum"]))).toEqual(["A1 B1 C1", "A1"]);
  });
});

describe("something likely in the place of what is wrong", () => {
  /** Typed cells: the helper's are results. */
  const typed = (runs: readonly (number | undefined)[], names = ["A", "B", "C", "D"]): Book => {
    const laid = columns({
      rooms_outlet: ["", ...names.slice(0, runs.length), ""],
      rooms_run: ["", ...runs, ""],
    });
    return {
      ...laid,
      sheets: laid.sheets.map((sheet) => ({
        ...sheet,
        cells: Object.fromEntries(
          Object.entries(sheet.results).map(([at, value]) => [at, { value: value as number }]),
        ),
        results: {},
      })),
    };
  };
  const at = (cell: string) => ({ sheet: "S", cell });
  const instead = (runs: readonly (number | undefined)[], ...causes: Finding[]) =>
    likelyInputs(typed(runs), multiRoom, causes);
  test("what was meant, else the middle of its column without what is wrong itself", () => {
    expect(instead([900, 10, 12, 30], said("B2", { meant: 9 }))).toEqual([{ place: at("B2"), value: 9 }]);
    expect(instead([900, 10, 12, 30], said("B2"))).toEqual([{ place: at("B2"), value: 12 }]);
    expect(instead([900, 10, 800, 10], said("B2"), said("B4"))).toEqual([
      { place: at("B2"), value: 10 },
      { place: at("B4"), value: 10 },
    ]);
  });
  test("another value than now: a quarter more and 1", () =>
    expect(instead([12, 12, 12], said("B2"))).toEqual([{ place: at("B2"), value: 16 }]));
  test("a name of a row is another's than all others'", () =>
    expect(instead([1, 2], said("A2"))).toEqual([{ place: at("A2"), value: "another A2" }]));
  test("what is no input, or lies nowhere, changes nothing", () => {
    expect(instead([1, 2], said("C9"), said(undefined), said("B1"))).toEqual([]);
    expect(withLikelyInputs(typed([1, 2]), multiRoom, [said("C9")])).toBeUndefined();
    const changed = withLikelyInputs(typed([1, 2]), multiRoom, [said("B2", { meant: 7 })])!;
    expect(changed.sheets[0]!.cells["B2"]).toEqual({ value: 7 });
  });
});
