/** What stands outside the template's blocks, and which of its sheets, lines and checks are gone: each finding whole. */
import { blankBook } from "../../src/review/blankBook";
import type { Finding } from "../../src/review/finding";
import type { Reviewed } from "../../src/review/rule";
import { outsideBlocks } from "../../src/review/rules/outsideBlocks";
import { removedChecks } from "../../src/review/rules/removedChecks";
import { removedTexts } from "../../src/review/rules/removedTexts";
import type { Book, BookCell, BookSheet } from "../../src/workbooks/book";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { standardExclusions } from "../../src/workbooks/multiRoom/startingPoint";
import { bookOf, emptySheet } from "../support/books";
import { at, found, smallBook } from "./smallBook";

const blank = (): Book => blankBook(multiRoom);
const withSheet = (name: string, change: (sheet: BookSheet) => Partial<BookSheet>): Book => ({
  ...blank(),
  sheets: blank().sheets.map((sheet) => (sheet.name === name ? { ...sheet, ...change(sheet) } : sheet)),
});
/** The template with more cells on Rooms. */
const rooms = (cells: Readonly<Record<string, BookCell>>): Book =>
  withSheet("Rooms", (sheet) => ({ cells: { ...sheet.cells, ...cells } }));

describe("outside every block", () => {
  const STRAY = {
    weight: "doubtful",
    expected: "Rows between the two thin rows of a block.",
    effect: "It is neither counted nor priced.",
    remedy: "Move it into the block: add rows there and enter it again.",
  };
  const told = (read: Book, more: Partial<Reviewed> = {}): Finding[] => found(outsideBlocks, read, more);
  test("a value, several of a row, and a space", () =>
    expect(
      told(
        rooms({
          B900: { value: 5 },
          B902: { value: "x" },
          C902: { value: 7 },
          B903: { value: 1 },
          C903: { value: 2 },
          D903: { value: 3 },
          B904: { value: " " },
        }),
      ),
    ).toStrictEqual(
      [
        ["B900", "“5” stands outside every block."],
        ["B902", "“x” and 1 more cell of its row stand outside every block."],
        ["B903", "“1” and 2 more cells of its row stand outside every block."],
        [
          "B904",
          "A space was typed outside every block: a longer text left of it no longer runs over and is cut.",
        ],
      ].map(([cell, message]) => ({ ...STRAY, place: { sheet: "Rooms", cell }, message })),
    ));
  test("the template's own cells, formulas, empty ones, and what is told as typed over: nothing", () => {
    expect(told(blank())).toEqual([]);
    expect(told(rooms({ B900: { formula: "1+1" }, B901: { value: "" }, B902: {} }))).toEqual([]);
    expect(told(rooms({ B900: { value: 5 } }), { definition: undefined })).toEqual([]);
    const differences: Reviewed["differences"] = [
      { weight: "wrong", place: { sheet: "Rooms", cell: "B900" }, message: "", remedy: "", typedOver: true },
      { weight: "wrong", message: "", remedy: "", typedOver: true },
    ];
    expect(told(rooms({ B900: { value: 5 }, C900: { value: 6 } }), { differences })).toMatchObject([
      { place: { sheet: "Rooms", cell: "C900" } },
    ]);
    const own = { ...emptySheet("Notes"), cells: { A1: { value: "x" } } };
    expect(told({ ...blank(), sheets: [...blank().sheets, own] })).toEqual([]);
  });
  test("a word of the template may stand lower in its column, once", () => {
    const { A1 } = blank().sheets.find(({ name }) => name === "Rooms")!.cells;
    expect(told(rooms({ A900: { value: A1!.value } }))).toHaveLength(1);
    expect(told(rooms({ A1: {}, A900: { value: A1!.value } }))).toEqual([]);
    expect(told(rooms({ A1: {}, B900: { value: A1!.value } }))).toHaveLength(1);
  });

  describe("of an earlier version what lies in or below a closing row", () => {
    const earlier = { others: [] };
    const below = (cells: Readonly<Record<string, BookCell>>, name = "rooms_below", sheet = "S"): Finding[] =>
      told(
        { ...bookOf({ ...emptySheet("S"), cells }), names: [{ name, sheet, range: "B5:C7" }] },
        { earlier },
      );
    const value: BookCell = { value: "x" };
    test("is told once a block, at the first of them", () => {
      expect(below({ B6: value, C6: { value: 2 } })).toStrictEqual([
        {
          ...STRAY,
          place: { sheet: "S", cell: "B6" },
          message: "“x” and 1 more cell of its row stand outside every block.",
        },
      ]);
      for (const corner of ["B5", "C5", "B7", "C7"]) expect(below({ [corner]: value })).toHaveLength(1);
    });
    test("not what lies beside it, is a formula or is empty, nor by another name", () => {
      expect(
        below({
          A6: value,
          D6: value,
          B4: value,
          C8: value,
          B6: { formula: "1" },
          C6: { value: "" },
          C7: {},
        }),
      ).toEqual([]);
      expect(below({ B6: value }, "rooms_run")).toEqual([]);
      expect(below({ B6: value }, "rooms_below", "Gone")).toEqual([]);
    });
  });
});

describe("gone from the template", () => {
  const CHECKS = "Checks";
  /** Without the first cell of Checks or About that holds such a text. */
  const without = (name: string, text: string): { read: Book; cell: string } => {
    const cells = blank().sheets.find((sheet) => sheet.name === name)!.cells;
    const cell = Object.entries(cells).find(([, { value }]) => value === text)![0];
    return { read: withSheet(name, () => ({ cells: { ...cells, [cell]: {} } })), cell };
  };
  const lineOf = (name: string, kind: "checks" | "text"): string =>
    multiRoom.sheets
      .find((sheet) => sheet.name === name)!
      .parts.flatMap((part) =>
        part.kind === "checks" && kind === "checks"
          ? part.checks.map(({ what }) => what)
          : part.kind === "text" && kind === "text"
            ? part.lines
            : [],
      )
      .at(-1)!;
  test("a check", () => {
    const expected = lineOf(CHECKS, "checks");
    const { read, cell } = without(CHECKS, expected);
    expect(found(removedChecks, read)).toStrictEqual([
      {
        weight: "wrong",
        place: { sheet: CHECKS, cell },
        message: "A check of the template is gone or changed.",
        expected,
        effect: "What it looked for is no longer found.",
        remedy: "Write it there again, or copy the sheet Checks from the template.",
      },
    ]);
    expect(found(removedChecks, blank())).toEqual([]);
    expect(found(removedChecks, read, { definition: undefined })).toEqual([]);
    expect(found(removedChecks, read, { earlier: { others: [] } })).toEqual([]);
  });
  test("a line of About", () => {
    const expected = lineOf("About", "text");
    const { read, cell } = without("About", expected);
    expect(found(removedTexts, read)).toStrictEqual([
      {
        weight: "wrong",
        place: { sheet: "About", cell },
        message: "A line of the template is gone or changed.",
        expected,
        effect: "Who reads this sheet is not warned.",
        remedy: "Write it there again, or copy the sheet from the template.",
      },
    ]);
    expect(found(removedTexts, blank())).toEqual([]);
    expect(found(removedTexts, read, { definition: undefined })).toEqual([]);
    expect(found(removedTexts, read, { earlier: { others: [] } })).toEqual([]);
  });
  test("a sheet, or its name", () => {
    const gone: Book = {
      ...blank(),
      sheets: blank().sheets.filter(({ name }) => name !== "Rooms"),
      names: blank().names.filter(({ sheet }) => sheet !== "Rooms"),
    };
    expect(found(removedTexts, gone)).toStrictEqual([
      {
        weight: "wrong",
        message: "The sheet Rooms is gone.",
        remedy: "Start a workbook from the template and copy the inputs over.",
      },
    ]);
    for (const called of ["Rooms", "Site"]) {
      const rename = <One extends { name: string }>(one: One) =>
        one.name === called ? { ...one, name: "Renamed" } : one;
      const renamed: Book = {
        ...blank(),
        sheets: blank().sheets.map(rename),
        names: blank().names.map((one) => (one.sheet === called ? { ...one, sheet: "Renamed" } : one)),
      };
      expect(found(removedTexts, renamed)).toStrictEqual([
        {
          weight: "worth knowing",
          message: `The sheet ${called} was renamed to Renamed.`,
          effect: "Nothing is lost by that: formulas follow. Words that send a person there do not.",
          remedy: `Name it ${called} again.`,
        },
      ]);
    }
  });

  describe("an exclusion", () => {
    const ours = standardExclusions.map(({ text }) => String(text));
    const told = (texts: readonly string[], outlet = "a"): Finding[] =>
      found(
        removedTexts,
        smallBook({ rooms: [{ outlet }], exclusions: texts.map((text) => ({ text })) }),
      ).filter(({ message }) => !message.startsWith("The sheet "));
    const GONE = {
      weight: "doubtful",
      place: at("exclusions_text", 1),
      message: "An exclusion that every job starts with is gone.",
      effect: "The price then seems to hold it.",
      remedy: "Write it under Terms again, or price what it left out.",
    };
    test("that every job starts with, or all of them with nothing in their place", () => {
      expect(told(ours.slice(1))).toStrictEqual([{ ...GONE, expected: ours[0] }]);
      expect(told([""])).toStrictEqual(ours.map((expected) => ({ ...GONE, expected })));
    });
    test("none gone, a list of the firm's own, no job or no such list: nothing", () => {
      expect(told(ours)).toEqual([]);
      expect(told(["Our own."])).toEqual([]);
      expect(told(ours.slice(1), "")).toEqual([]);
      expect(told([])).toEqual([]);
    });
  });
});
