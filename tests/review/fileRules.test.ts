/** What is said of parts counted twice, of what is hidden, and of what leads out of the file, each finding whole. */
import type { FormulaDifference } from "../../src/review/formulaDifferences";
import { brokenInputs } from "../../src/review/rules/brokenInputs";
import { countedTwice } from "../../src/review/rules/countedTwice";
import { hidden } from "../../src/review/rules/hidden";
import { leadsOutside } from "../../src/review/rules/leadsOutside";
import type { Book, BookSheet } from "../../src/workbooks/book";
import type { SavedFile, SavedLink, SavedSheet } from "../../src/workbooks/savedFile";
import { bookOf, emptySheet } from "../support/books";
import { at, atField, found, messages, smallBook, type Row } from "./smallBook";

describe("a part counted twice", () => {
  const typed = (fitting: Row, type: Row = { pieces: 1 }) =>
    found(
      countedTwice,
      smallBook({
        fittings: [{ name: "clip" }, { name: "Lead", ...fitting }],
        types: [{ name: "twin room", fitting: "LEAD", ...type }],
      }),
    );
  const told = (by: string) => ({
    weight: "doubtful",
    place: at("types_fitting", 1),
    message: `The type “twin room” adds LEAD, which Parts counts for each ${by} already.`,
    expected: "One of the two.",
    undoing: [{ place: at("types_fitting", 1) }, { place: at("types_pieces", 1) }],
    isGuess: true,
    effect: "It is bought twice for each outlet of the type.",
    remedy: "Clear the fitting of the type, or what Parts counts it by.",
  });
  test.each(["receiver lead", "outlet to measure", "wall plate"])("for each %s and for a type", (piece) =>
    expect(typed({ piece })).toStrictEqual([told(piece)]),
  );
  test("so many for each outlet and for a type", () => {
    expect(typed({ per_outlet: 2 })).toStrictEqual([told("outlet")]);
    expect(typed({ per_outlet: 2, piece: "Wall plate" })).toStrictEqual([told("wall plate")]);
    expect(typed({ per_outlet: 2, piece: "dish" })).toStrictEqual([told("outlet")]);
    expect(typed({ per_outlet: 2 }, {})[0]!.undoing).toEqual([{ place: at("types_fitting", 1) }]);
  });
  test("counted otherwise, or another part: nothing", () => {
    expect([
      typed({ piece: "dish" }),
      typed({ per_outlet: 0 }),
      typed({}),
      typed({ per_outlet: 2 }, { fitting: "clip" }),
      typed({ per_outlet: 2 }, { fitting: "" }),
    ]).toEqual([[], [], [], [], []]);
  });
  const fixed = (count: number | string, part = "DISH 80") =>
    found(
      countedTwice,
      smallBook({
        fittings: [
          { name: "clip", fixed: 9 },
          { name: "Dish 80", fixed: count },
        ],
        dishes: [{ name: "D1", part }],
      }),
    );
  test("for a dish and for the job", () =>
    expect(fixed(2)).toStrictEqual([
      {
        weight: "doubtful",
        place: at("fittings_fixed", 2),
        message: "Dish 80 is bought for its dish on Dishes already, and 2 more for the job.",
        expected: "Blank, unless one is kept in store.",
        undoing: [{ place: at("fittings_fixed", 2) }],
        isGuess: true,
        effect: "A dish is bought twice.",
        remedy: "Clear the cell.",
      },
    ]));
  test("for another dish, or none for the job: nothing", () =>
    expect([fixed(0), fixed(""), fixed(2, "dish 90")]).toEqual([[], [], []]));
});

describe("what is hidden", () => {
  const sheet = (more: Partial<BookSheet>): Book =>
    bookOf({
      ...emptySheet("Price"),
      cells: { A2: { value: 1 }, C4: { value: " " }, B5: { formula: "A2" }, D6: { look: 0 } },
      results: { B5: 3, AB8: "x" },
      ...more,
    });
  test("a sheet, rows and columns in which something stands", () =>
    expect(
      found(hidden, sheet({ hidden: true, hiddenRows: [3, 4, 5, 7], hiddenColumns: [0, 2, 27] })),
    ).toStrictEqual([
      {
        weight: "doubtful",
        place: { sheet: "Price", cell: "A1" },
        message: "The sheet Price is hidden.",
        effect: "Its figures count without being seen.",
        remedy: "Show it again: right-click a sheet's tab, unhide.",
      },
      {
        weight: "doubtful",
        place: { sheet: "Price", cell: "A5" },
        message: "2 rows are hidden, the first is row 5.",
        effect: "What stands there counts without being seen.",
        remedy: "Choose the rows around them and show them again.",
      },
      {
        weight: "doubtful",
        place: { sheet: "Price", cell: "A1" },
        message: "2 columns are hidden, the first is column A.",
        effect: "What stands there counts without being seen.",
        remedy: "Choose the columns around them and show them again.",
      },
    ]));
  test("one is one; where nothing stands nothing is hidden", () => {
    expect(messages(hidden, sheet({ hiddenRows: [1] }))).toEqual(["1 row is hidden, the first is row 2."]);
    expect(found(hidden, sheet({ hiddenColumns: [27] }))).toMatchObject([
      { place: { cell: "AB1" }, message: "1 column is hidden, the first is column AB." },
    ]);
    expect(found(hidden, sheet({ hiddenRows: [0, 3, 5], hiddenColumns: [2, 3] }))).toEqual([]);
  });
});

describe("what leads out of the file", () => {
  const savedSheet = (name: string, rules: SavedSheet["rules"]) => ({ name, rules }) as unknown as SavedSheet;
  function leads(
    link: Partial<SavedLink>,
    more: {
      formulas?: Record<string, string>;
      names?: SavedFile["names"];
      rules?: SavedSheet["rules"];
      differences?: { sheet: string; cell: string }[];
    } = {},
  ) {
    const cells = Object.fromEntries(
      Object.entries(more.formulas ?? {}).map(([cell, formula]) => [cell, { formula }]),
    );
    const file = {
      names: more.names ?? [],
      links: [{ kind: "workbook", target: "prices.xlsx", number: 2, ...link }],
      sheets: [savedSheet("Other", []), savedSheet("S", more.rules ?? [])],
    };
    const book: Book = {
      ...bookOf({ ...emptySheet("S"), cells }),
      saved: { file: file as unknown as SavedFile } as Book["saved"],
    };
    return found(leadsOutside, book, {
      differences: (more.differences ?? []).map((place) => ({ place }) as unknown as FormulaDifference),
    });
  }
  const READ = {
    effect: "Where that is not at hand the figure stands still, or is an error.",
    remedy: "Enter the value itself, and break the link: Data, Edit Links.",
  };
  const KEPT = {
    effect: "The program asks whoever opens it about links, and the path tells names.",
    remedy: "Break the link: Data, Edit Links.",
  };
  const s = (cell: string) => ({ sheet: "S", cell });

  test("a formula reads another workbook, or another program", () => {
    const formulas = { A1: "1+1", B2: "[1]P!A1", C3: "[2]P!A1*2", D4: "[2]P!A2" };
    const message = "A formula reads an external workbook: prices.xlsx.";
    expect(leads({}, { formulas })).toStrictEqual([{ weight: "doubtful", place: s("C3"), message, ...READ }]);
    // One that is told as not the template's is told there.
    expect(leads({}, { formulas, differences: [s("C3")] })).toStrictEqual([
      { weight: "doubtful", place: s("D4"), message, ...READ },
    ]);
    expect(leads({}, { formulas, differences: [s("C3"), s("D4")] })).toStrictEqual([
      { weight: "worth knowing", place: s("C3"), message, ...READ },
    ]);
    expect(
      leads({ kind: "DDE", target: "accounts" }, { formulas, differences: [s("C3"), s("D4")] })[0],
    ).toStrictEqual({
      weight: "worth knowing",
      place: s("C3"),
      message: "A formula reads another program, a DDE link: accounts.",
      ...READ,
    });
  });
  test("a list of choices comes from it, or nothing uses it", () => {
    const rules = [
      { ranges: ["A9"], formulas: ["Site!A1"] },
      { ranges: ["B3:B9", "D1"], formulas: ["[2]P!A1:A9"] },
    ];
    expect(leads({}, { rules })).toStrictEqual([
      {
        weight: "worth knowing",
        place: s("B3"),
        message: "A data validation takes its list from an external workbook: prices.xlsx.",
        ...KEPT,
      },
    ]);
    const unused = {
      message: "The file keeps a link to an external workbook, which no formula uses: prices.xlsx.",
      ...KEPT,
    };
    expect(leads({})).toStrictEqual([{ weight: "worth knowing", ...unused }]);
    expect(leads({ number: undefined }, { formulas: { A1: "[2]P!A1" } })).toStrictEqual([
      { weight: "worth knowing", ...unused },
    ]);
    expect(leads({ kind: "OLE", target: "letter" })).toStrictEqual([
      {
        weight: "doubtful",
        message: "The file keeps a link to another program, an OLE link, which no formula uses: letter.",
        ...KEPT,
      },
    ]);
  });
  test("a name that leads there has a rule of its own, unless a formula does too", () => {
    const names = [{ name: "rate", text: "[2]P!$A$1" }];
    expect(leads({}, { names })).toEqual([]);
    expect(leads({}, { names: [{ name: "rate", text: "[1]P!$A$1" }] })).toHaveLength(1);
    expect(leads({}, { names, formulas: { A1: "[2]P!A1" } })).toHaveLength(1);
  });
  test("another add-in's file is no link", () => {
    for (const target of ["rig.xlam", "C:/OLD.XLA", "funcres"]) expect(leads({ target })).toEqual([]);
    expect(leads({ target: "rig.xlam.xlsx" })).toHaveLength(1);
  });
  test("a data connection, with its password", () => {
    const CONNECTION = { weight: "doubtful", remedy: "Delete it: Data, Queries and Connections." };
    expect(leads({ kind: "connection", target: "stock" })).toStrictEqual([
      {
        ...CONNECTION,
        message: "The file holds a data connection: stock.",
        effect: "Opening it may reach for a data base.",
      },
    ]);
    expect(leads({ kind: "connection", target: "", password: true })).toStrictEqual([
      {
        ...CONNECTION,
        message: "The file holds a data connection: of no name, with its password.",
        effect: "Opening it may reach for a data base, and whoever gets it has the password.",
      },
    ]);
  });
  test("a workbook that comes from no file has no links", () =>
    expect(found(leadsOutside, bookOf(emptySheet("S")))).toEqual([]));
});

describe("an input that leads nowhere", () => {
  const rate = (formula: string) => {
    const book = smallBook({}, { labour_rate: 40, crew_hours: 8 });
    book.sheets[0]!.cells.A1 = { formula };
    return found(brokenInputs, book);
  };
  test("whole", () => {
    const [finding, ...others] = rate("#REF!*1.04");
    expect(others).toEqual([]);
    expect(finding).toStrictEqual({
      weight: "wrong",
      place: atField("labour_rate"),
      message: expect.stringMatching(/ is a formula that leads nowhere: =#REF!\*1\.04\.$/) as string,
      expected: "A value, typed.",
      effect: "It shows the value of an earlier day, and is an error once it is computed.",
      remedy: "Type the value itself.",
    });
  });
  test("a formula that leads somewhere, or to another file, which is told with the link: nothing", () => {
    expect([rate("2*20"), rate("[1]P!A1"), rate("[1]!rate"), rate('Site!A1&"]"')]).toEqual([[], [], [], []]);
    const book = smallBook({}, { no_input: 1 });
    book.sheets[0]!.cells.A1 = { formula: "#REF!" };
    expect(found(brokenInputs, book)).toEqual([]);
  });
});
