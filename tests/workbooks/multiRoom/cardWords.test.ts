/** Figures in the words of a card, and where its lines end. */
import {
  cut,
  dateIn,
  filledRows,
  inTwoLines,
  jobMark,
  one,
  range,
  readerOf,
  text,
} from "../../../src/workbooks/multiRoom/cards/cardWords";
import type { BookResult } from "../../../src/workbooks/book";
import { estimate } from "../../../src/workbooks/multiRoom/names";
import { namedBook } from "../../support/namedBook";

const FAULT: BookResult = { error: "#VALUE!", message: "No such cable." };
const letters = (many: number): string => "a".repeat(many);

test.each<[BookResult | undefined, string]>([
  [undefined, ""],
  [FAULT, ""],
  [7, "7"],
  ["S2", "S2"],
])("%p as text is “%s”", (value, said) => expect(text(value)).toBe(said));

test("a figure has one decimal, or so many as are asked for; what is none is a question mark", () => {
  expect([one(66.54), one(1583.2, 0), one(0.347, 2)]).toEqual(["66.5", "1583", "0.35"]);
  expect([one(undefined), one(FAULT), one("12")]).toEqual(["?", "?", "?"]);
});

test.each<[BookResult | undefined, BookResult | undefined, string]>([
  [66.5, 68.34, "66.5 to 68.3"],
  [66.52, 66.48, "66.5"],
  [66.5, undefined, "66.5 to ?"],
  [FAULT, undefined, "?"],
])("from %p to %p is “%s”", (from, to, said) => expect(range(from, to)).toBe(said));

test("rows that hold a name: no blanks, no errors", () => {
  const book = namedBook({ list: ["", "a", "  ", FAULT, undefined, "b"] });
  expect(filledRows(book, "list")).toEqual([1, 5]);
  expect(filledRows(book, "another")).toEqual([]);
});

test("a block is read by row and key, a field by its name", () => {
  const { at, field } = readerOf(
    namedBook({ heads_id: ["", "H1"], heads_volts: ["", 12], unit: ["m"] }),
    "heads",
  );
  expect([at(1, "id"), at(1, "volts"), at(2, "id"), at(1, "none")]).toEqual(["H1", 12, undefined, undefined]);
  expect([field("unit"), field("none")]).toEqual(["m", undefined]);
});

describe("what a card that was cut off belongs to", () => {
  const { quote, revision, job } = estimate.site;
  test.each<[BookResult, BookResult, string]>([
    ["D-24", 2, "D-24, rev. 2"],
    ["D-24", "", "D-24"],
    // The first 24 letters of the job.
    ["", 1, "Guest house on the north, rev. 1"],
    [FAULT, FAULT, "Guest house on the north"],
  ])("quote %p, revision %p: “%s”", (number, revised, said) =>
    expect(
      jobMark(
        namedBook({
          [quote.name]: [number],
          [revision.name]: [revised],
          [job.name]: ["Guest house on the northern shore"],
        }),
      ),
    ).toBe(said),
  );
});

// Day 1 of a sheet is the last of 1899; 46000 lies 20431 days after the first of 1970.
test.each<[BookResult, string]>([
  [46_000, "2025-12-09"],
  [1, "1899-12-31"],
  [0.5, "no date"],
  ["soon", "no date"],
])("the date of %p is “%s”", (value, said) => expect(dateIn(namedBook({ day: [value] }), "day")).toBe(said));

test("a line of 56 letters is whole, a longer one ends with three dots", () => {
  expect(cut(letters(56))).toBe(letters(56));
  expect(cut(letters(57))).toBe(`${letters(55)}…`);
});

test.each<[string, string, readonly [string, string]]>([
  ["fits", letters(56), [letters(56), ""]],
  ["has no blank", letters(57), [letters(56), "a"]],
  ["has its only blank in front", ` ${letters(57)}`, [` ${letters(55)}`, "aa"]],
  ["has a blank where the line is full", `${letters(56)} b`, [letters(56), "b"]],
  ["has a blank too late", `${letters(57)} b`, [letters(56), "a b"]],
  ["breaks at the last blank that fits", `one two ${letters(50)}`, ["one two", letters(50)]],
  ["needs a third", `${letters(50)} ${letters(60)}`, [letters(50), `${letters(55)}…`]],
])("in two lines, where it %s", (_, line, lines) => expect(inTwoLines(line)).toEqual(lines));
