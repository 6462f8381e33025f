/** What of a finding is kept for the next review, by the comments of noted.ts. */
import { LONGEST_NOTED, notedIn, placesNow, type Noted } from "../../../src/review/again/noted";
import type { Finding } from "../../../src/review/finding";
import type { Book } from "../../../src/workbooks/book";
import { multiRoom } from "../../../src/workbooks/multiRoom/definition";
import { columns } from "../../support/books";

/** Column A names the rows, B holds the runs, C their sums, D a field, and over B and C lies a wider name. */
function job(outlets: readonly string[] = ["", "G-01", " g-01 ", "A-07", ""]): Book {
  const book = columns({
    rooms_outlet: outlets,
    rooms_run: ["", 12, 15, undefined, ""],
    rooms_cost: ["", 4, { error: "#N/A" }, undefined, 9],
    site_tax: [0.2],
  });
  const [sheet] = book.sheets;
  return {
    ...book,
    template: multiRoom.id,
    names: [
      { name: "rooms_all", sheet: "S", range: "B1:C5" },
      { name: "broken", sheet: "S", range: "#REF!" },
      ...book.names,
      { name: "site_tax_too", sheet: "S", range: "D1" },
      { name: "heads_run", sheet: "Other", range: "B1:B5" },
    ],
    sheets: [
      {
        ...sheet!,
        cells: {
          B4: { value: "long" },
          C2: { formula: "B2/3" },
          C3: { formula: "1/0" },
          C4: { formula: "B4" },
          F7: { value: true },
        },
        results: { ...sheet!.results, E3: 20, F3: "bad" },
      },
    ],
  };
}
const finding = (cell: string | undefined, more: Partial<Finding> = {}): Finding => ({
  rule: "unit slip",
  weight: "wrong",
  message: "A run of 1,200.5 m, or 2.",
  remedy: "Look.",
  ...(cell !== undefined && { place: { sheet: "S", cell } }),
  ...more,
});
const noted = (cell: string | undefined, more: Partial<Finding> = {}): Noted =>
  notedIn(job(), [finding(cell, more)]).noted[0]!;

test("all that is kept of one, and the rows of the job", () => {
  expect(notedIn(job(), [finding("B2"), finding("B3", { weight: "doubtful" })])).toEqual({
    noted: [
      {
        rules: ["unit slip"],
        weight: "wrong",
        place: { sheet: "S", cell: "B2" },
        subject: "rooms_run of rooms_outlet g-01",
        row: "rooms_outlet g-01",
        held: 12,
        message: "A run of 1,200.5 m, or 2.",
      },
      {
        rules: ["unit slip"],
        weight: "doubtful",
        place: { sheet: "S", cell: "B3" },
        subject: "rooms_run of rooms_outlet g-01 (2)",
        row: "rooms_outlet g-01 (2)",
        held: 15,
        message: "A run of 1,200.5 m, or 2.",
      },
    ],
    rows: ["rooms_outlet g-01", "rooms_outlet g-01 (2)", "rooms_outlet a-07"],
  });
  expect(notedIn(job(), []).noted).toEqual([]);
  // A workbook that is none of ours has no rows that are known.
  expect(notedIn({ ...job(), template: "" }, [finding("B2")])).toMatchObject({
    noted: [{ subject: "rooms_run row 1" }],
    rows: [],
  });
});

test.each<[string, string | undefined, string, string | undefined]>([
  ["a row that has a name", "B4", "rooms_run of rooms_outlet a-07", "rooms_outlet a-07"],
  ["the thin row above", "B1", "rooms_run row 0", undefined],
  ["a row without a name", "B5", "rooms_run row 4", undefined],
  ["the narrower of two names", "C2", "rooms_cost of rooms_outlet g-01", "rooms_outlet g-01"],
  ["a field of two names: the first by the alphabet", "D1", "site_tax 0", undefined],
  ["below all names", "B6", "S!B6", undefined],
  ["right of all names", "F2", "S!F2", undefined],
  ["the whole workbook: its sentence without figures", undefined, "A run of # m, or #", undefined],
])("what it is of: %s", (_, cell, subject, row) => {
  const one = noted(cell);
  expect([one.subject, one.row]).toEqual([subject, row]);
  expect("row" in one).toBe(row !== undefined);
  expect("place" in one).toBe(cell !== undefined);
});

test("a line of several columns is told by how far along it", () => {
  const book = job();
  const names = [...book.names, { name: "corners", sheet: "S", range: "H1:J1" }];
  expect(notedIn({ ...book, names }, [finding("J1")]).noted[0]!.subject).toBe("corners 2");
});

test("a check is known by its id, and held to the figure beside its word", () =>
  expect(noted("F3", { check: { id: "short of volts" } })).toMatchObject({
    subject: "check short of volts",
    held: 20,
  }));

test.each<[string, string | undefined, Partial<Finding>, string | number, boolean]>([
  ["a figure that was typed", "B2", {}, 12, false],
  ["a text, not computed", "B4", {}, "long", false],
  ["a blank", "F9", {}, "", false],
  ["a yes", "F7", {}, "true", false],
  ["a figure that was computed", "C2", {}, 4, true],
  ["an error", "C3", {}, "#N/A", true],
  ["a formula, to a rule of formulas", "C2", { rule: "formula changed" }, "=B2/3", false],
  ["no formula, to a rule of formulas", "B2", { rule: "formula changed" }, 12, false],
  ["a rule without a name", "C2", { rule: undefined }, 4, true],
  ["what lies beside the cells", "B2", { rule: "drawn over" }, "A run of # m, or #", false],
  ["the whole workbook", undefined, {}, "A run of # m, or #", false],
  ["a sheet that is gone", undefined, { place: { sheet: "Gone", cell: "B2" } }, "A run of # m, or #", false],
  ["no address", undefined, { place: { sheet: "S", cell: "?" } }, "A run of # m, or #", false],
])("what stands there: %s", (_, cell, more, held, isComputed) => {
  const one = noted(cell, more);
  expect([one.held, one.isComputed ?? false]).toEqual([held, isComputed]);
});

test("the rules that say it of its cell, each once; of another cell none", () => {
  const leadsTo = [
    finding("B2", { rule: "far from neighbours" }),
    finding("B2", { rule: "unit slip" }),
    finding("B3", { rule: "feeding" }),
    finding(undefined, { rule: "drawn over" }),
  ];
  expect(noted("B2", { leadsTo }).rules).toEqual(["unit slip", "far from neighbours"]);
  expect(noted("B2", { rule: undefined }).rules).toEqual([""]);
  expect(noted("B2", { leadsTo: [finding("B2", { rule: undefined })] }).rules).toEqual(["unit slip", ""]);
});

test("long words are cut", () => {
  const long = "x".repeat(LONGEST_NOTED + 5);
  const cut = "x".repeat(LONGEST_NOTED);
  expect(noted(undefined, { message: long })).toMatchObject({ message: cut, subject: cut, held: cut });
  const book = job();
  const [sheet] = book.sheets;
  const typed = { ...book, sheets: [{ ...sheet!, cells: { B4: { value: long } } }] };
  expect(notedIn(typed, [finding("B4")]).noted[0]!.held).toBe(cut);
});

describe("where it lies now", () => {
  let before: readonly Noted[];
  beforeAll(() => {
    before = notedIn(job(), [finding("B4"), finding("D1"), finding(undefined), finding("B3")]).noted;
  });
  const now = (outlets?: readonly string[]) => before.map(placesNow(job(outlets)));
  test("in its row, wherever that is; a field in its place; of the whole workbook nowhere", () => {
    expect(now()).toEqual([
      { sheet: "S", cell: "B4" },
      { sheet: "S", cell: "D1" },
      undefined,
      { sheet: "S", cell: "B3" },
    ]);
    expect(now(["", "A-07", "new", "G-01", "g-01"]).map((place) => place?.cell)).toEqual([
      "B2",
      "D1",
      undefined,
      "B5",
    ]);
  });
  test("nowhere once its row or its column is gone", () => {
    expect(now(["", "G-01", "x", "y", ""]).map((place) => place?.cell)).toEqual([
      undefined,
      "D1",
      undefined,
      undefined,
    ]);
    const book = job();
    const without = { ...book, names: book.names.filter(({ name }) => name !== "rooms_run") };
    expect(placesNow(without)(before[0]!)).toBeUndefined();
  });
});
