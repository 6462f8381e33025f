/** What of a type is written into the rows that leave it blank, and what is left alone. */
import { parseRange } from "../../../src/formula/address";
import type { Book, BookCell, BookResult } from "../../../src/workbooks/book";
import { OWN_LOOK } from "../../../src/workbooks/looks";
import { withTypes } from "../../../src/workbooks/multiRoom/withTypes";
import { namedBook } from "../../support/namedBook";

const HALL = ["", "hall", "HALL", "attic", ""];
/** Rooms: A has the types, B the receivers, C the runs. Types: D the names, E their receivers, F their runs. */
function job(
  own: Readonly<Record<string, BookCell>> = {},
  types: readonly BookResult[] = ["", "Hall", ""],
): Book {
  const book = namedBook({
    rooms_type: HALL,
    rooms_receiver: ["", undefined, undefined, undefined, ""],
    rooms_run: ["", undefined, undefined, undefined, ""],
    types_name: types,
    types_receiver: ["", "recorder", ""],
    types_run: ["", 12.5, ""],
  });
  book.sheets[0]!.cells = { ...own };
  book.looks = [{ bold: true }];
  return book;
}
const filled = (book: Book) => {
  const { sheets, looks } = withTypes(book);
  return Object.fromEntries(
    Object.entries(sheets[0]!.cells).map(([at, { look, ...cell }]) => [
      at,
      { ...cell, ...(look !== undefined && { look: looks[look] }) },
    ]),
  );
};

test("blank cells have what their type says, in italics, whatever the case of its name", () => {
  const italic = { italic: true };
  expect(filled(job())).toEqual({
    B2: { value: "recorder", look: italic },
    B3: { value: "recorder", look: italic },
    C2: { value: 12.5, look: italic },
    C3: { value: 12.5, look: italic },
  });
});

test("an entry of the row's own, a formula too, stays and is marked; a blank's own look is kept", () => {
  const cells = filled(
    job({
      B2: { value: "receiver", look: 0 },
      B3: { formula: "B2" },
      C2: { value: 0 },
      C3: { value: "", look: 0 },
    }),
  );
  expect(cells).toEqual({
    B2: { value: "receiver", look: { bold: true, ...OWN_LOOK } },
    B3: { formula: "B2", look: OWN_LOOK },
    C2: { value: 0, look: OWN_LOOK },
    C3: { value: 12.5, look: { bold: true, italic: true } },
  });
});

test("the marks of what is the row's own are done with; others stay, and the book that was given is not changed", () => {
  const book = job();
  const words = { range: "A2:A4", words: ["bad"], look: 0 };
  book.sheets[0]!.marks = [words, { ...words, words: [], overList: { list: "types_run", line: "D" } }];
  const other = { ...book.sheets[0]!, name: "Other" };
  book.sheets.push(other);
  const made = withTypes(book);
  expect(made.sheets[0]!.marks).toEqual([words]);
  expect(made.sheets[1]).toBe(other);
  expect([book.looks, book.sheets[0]!.cells, book.sheets[0]!.marks.length]).toEqual([
    [{ bold: true }],
    {},
    2,
  ]);
});

test.each<[string, (book: Book) => void]>([
  ["has no types", (book) => (book.names = book.names.filter(({ name }) => !name.startsWith("types")))],
  ["has no column of types", (book) => (book.names = book.names.filter(({ name }) => name !== "rooms_type"))],
  ["lacks the sheet", (book) => (book.sheets[0]!.name = "Elsewhere")],
  [
    "has names that lead nowhere",
    (book) =>
      (book.names = book.names.map((one) => (one.name === "rooms_type" ? { ...one, range: "#REF!" } : one))),
  ],
  [
    "has a type that says nothing",
    (book) => {
      const at = (name: string) => parseRange(book.names.find((one) => one.name === name)!.range)!.left;
      for (const name of ["types_receiver", "types_run"])
        book.sheets[0]!.results[`${"ABCDEF"[at(name)]!}2`] = name === "types_run" ? { error: "#REF!" } : "";
    },
  ],
])("a workbook that %s is given back as it is", (_, spoil) => {
  const book = job();
  spoil(book);
  expect(withTypes(book)).toBe(book);
});

test("blank types and types without a name belong to nobody", () => {
  const book = job({}, ["", "", ""]);
  expect(withTypes(book)).toBe(book);
  const named = job({}, ["", { error: "#REF!" }, "hall"]);
  // The third line says nothing; the second has no name.
  expect(withTypes(named)).toBe(named);
});
