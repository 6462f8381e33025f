/** What is said of names that lead elsewhere, stand twice or look like others: by the comments of nameFindings.ts. */
import { linkIn, nameFindings, namesTwice } from "../../src/review/nameFindings";
import type { NameTrouble } from "../../src/review/namesPutBack";
import type { Book, BookName } from "../../src/workbooks/book";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import type { SavedFile, SavedName } from "../../src/workbooks/savedFile";
import { bookOf, emptySheet } from "../support/books";

const RULE = "name changed";
const MARGIN: BookName = { name: "site_margin", sheet: "Site", range: "B98" };
const RUN: BookName = { name: "rooms_run", sheet: "Rooms", range: "H5:H36" };
const labelled: Book = { ...bookOf(emptySheet("Site"), emptySheet("Rooms")), names: [MARGIN, RUN] };

const storedWith = (names: readonly SavedName[], links: SavedFile["links"] = [], formula?: string): Book => ({
  ...bookOf({ ...emptySheet("Site"), cells: { A1: formula === undefined ? {} : { formula } } }),
  saved: { file: { names, links, properties: [], sheets: [] } } as unknown as NonNullable<Book["saved"]>,
});
const told = (troubles: readonly NameTrouble[], stored: Book = bookOf(), totals = {}) =>
  nameFindings(stored, { troubles, book: labelled }, multiRoom, totals);

describe("a name that leads elsewhere", () => {
  const other = (range: string, of = MARGIN, sheet = of.sheet): NameTrouble => ({
    name: of.name,
    meant: of,
    now: { ...of, sheet, range },
  });
  test.each<[string, NameTrouble, string]>([
    [
      "to another cell",
      other("B97"),
      "The name site_margin (Margin) points to other cells, 'Site'!$B$97. It belongs to 'Site'!$B$98.",
    ],
    [
      "to a sheet with a mark in its name",
      other("AB3", MARGIN, "O'Brien"),
      "The name site_margin (Margin) points to other cells, 'O''Brien'!$AB$3. It belongs to 'Site'!$B$98.",
    ],
    [
      "too short",
      other("H5:H24", RUN),
      "The name rooms_run (Run) is 12 rows short: it points to 'Rooms'!$H$5:$H$24. It belongs to 'Rooms'!$H$5:$H$36.",
    ],
    [
      "a row short",
      other("H5:H35", RUN),
      "The name rooms_run (Run) is 1 row short: it points to 'Rooms'!$H$5:$H$35. It belongs to 'Rooms'!$H$5:$H$36.",
    ],
    [
      "too long",
      other("H5:H37", RUN),
      "The name rooms_run (Run) points to other cells, 'Rooms'!$H$5:$H$37. It belongs to 'Rooms'!$H$5:$H$36.",
    ],
    [
      "shorter from another row on",
      other("H6:H30", RUN),
      "The name rooms_run (Run) points to other cells, 'Rooms'!$H$6:$H$30. It belongs to 'Rooms'!$H$5:$H$36.",
    ],
    [
      "shorter in another column",
      other("I5:I30", RUN),
      "The name rooms_run (Run) points to other cells, 'Rooms'!$I$5:$I$30. It belongs to 'Rooms'!$H$5:$H$36.",
    ],
    [
      "shorter on another sheet",
      other("H5:H30", RUN, "Site"),
      "The name rooms_run (Run) points to other cells, 'Site'!$H$5:$H$30. It belongs to 'Rooms'!$H$5:$H$36.",
    ],
  ])("%s", (_, trouble, message) => expect(told([trouble])[0]!.message).toBe(message));

  const LONG = "1+".repeat(60);
  test.each<[string, string | undefined, string]>([
    ["to nothing", undefined, "is missing: a name that the formulas use is gone."],
    ["to cells that are gone", "Site!#REF!", "has lost its cells: it leads to #REF!."],
    [
      "into another workbook",
      "[1]Site!$B$98",
      "points into another workbook, an external link: old job.xlsx.",
    ],
    [
      "to a figure",
      "0.2",
      "is a constant or a formula, 0.2, instead of a cell: what is entered there counts for nothing.",
    ],
    [
      "to a long formula, of which eighty letters are told",
      LONG,
      `is a constant or a formula, ${"1+".repeat(40)}, instead of a cell: what is entered there counts for nothing.`,
    ],
  ])("%s", (_, text, says) => {
    const names: SavedName[] = [
      // Of one sheet: it is another name.
      { name: "site_margin", text: "5", sheet: "Rooms" },
      ...(text === undefined ? [] : [{ name: "site_margin", text }]),
    ];
    const stored = storedWith(names, [{ kind: "workbook", target: "old job.xlsx", number: 1 }]);
    expect(told([{ name: "site_margin", meant: MARGIN }], stored)[0]!.message).toBe(
      `The name site_margin (Margin) ${says} It belongs to 'Site'!$B$98.`,
    );
  });

  test("all that is said of it", () =>
    expect(told([other("B97"), other("H5:H24", RUN)], bookOf(), { now: 100, meant: 120 })).toEqual([
      {
        weight: "wrong",
        message: expect.stringMatching(/^The name site_margin /),
        expected: "='Site'!$B$98",
        effect: "The total is 100.00; with the names in their places it is 120.00.",
        amount: { before: { total: 100 }, after: { total: 120 }, isAbout: false },
        rule: RULE,
        remedy: "Set site_margin to ='Site'!$B$98 again: Formulas, Name Manager.",
      },
      expect.objectContaining({
        expected: "='Rooms'!$H$5:$H$36",
        remedy: "Set rooms_run to ='Rooms'!$H$5:$H$36 again: Formulas, Name Manager.",
      }),
    ]));

  const READS = "All formulas that use the name read something else.";
  test.each<[string, object, string, object | undefined]>([
    ["no total known", {}, READS, undefined],
    ["none with the name in its place", { now: 5, meant: "" }, READS, undefined],
    [
      "none now",
      { now: { error: "#NAME?" }, meant: 120 },
      "No total can be computed; with the name in its place it is 120.00.",
      { before: {}, after: { total: 120 }, isAbout: false },
    ],
    [
      "the same in print",
      { now: 120.004, meant: 120 },
      `${READS} The total is the same today.`,
      { before: { total: 120.004 }, after: { total: 120 }, isAbout: false },
    ],
    [
      "half a cent apart",
      { now: 0, meant: 0.005 },
      "The total is 0.00; with the names in their places it is 0.01.",
      { before: { total: 0 }, after: { total: 0.005 }, isAbout: false },
    ],
  ])("what it moves: %s", (_, totals, effect, amount) => {
    const [one] = told([other("B97")], bookOf(), totals);
    expect([one!.effect, one!.amount]).toEqual([effect, amount]);
  });
});

describe("a name twice", () => {
  const whole: SavedName = { name: "site_tax", text: "'Site'!$B$99" };
  const local = (text: string): SavedName => ({ name: "Site_Tax", text, sheet: "Rooms" });
  test("for the same cells, however it is written, is worth knowing", () =>
    expect(told([], storedWith([whole, local("=SITE!B99 ")]))).toEqual([
      {
        weight: "worth knowing",
        message:
          "There are two names Site_Tax: one of the workbook and one of the sheet Rooms (its scope is local), for the same cells. " +
          "Formulas on Rooms read the sheet's, all others the workbook's.",
        effect: "Nothing moves today; they part when one of them is changed.",
        rule: RULE,
        remedy: "Delete the one of Rooms (Formulas, Name Manager), if it was not meant.",
      },
    ]));
  test("for others is wrong, and where the quote and the price are two, that is what it does", () => {
    const stored = storedWith([whole, local("0.1")]);
    const shown = (quote: unknown, price: unknown): Book => ({
      ...stored,
      sheets: [{ ...stored.sheets[0]!, results: { B1: quote, B2: price } as never }],
      names: [
        { name: "quote_total", sheet: "Site", range: "B1" },
        { name: "price_total", sheet: "Site", range: "B2" },
      ],
    });
    const [one] = told([], shown(119, 110));
    expect([one!.weight, one!.effect]).toEqual([
      "wrong",
      "The quote shows a total of 119, and the price comes to 110.",
    ]);
    expect(one!.message).toBe(
      "There are two names Site_Tax: one of the workbook and one of the sheet Rooms (its scope is local), for 0.1. " +
        "Formulas on Rooms read the sheet's, all others the workbook's.",
    );
    const usual = "All formulas that use the name read something else.";
    const effects = (
      [
        [110, 119],
        [0.005, 0],
        [119, 119.004],
        ["", 110],
        [119, ""],
      ] as const
    ).map(([quote, price]) => told([], shown(quote, price))[0]!.effect);
    expect(effects).toEqual([
      "The quote shows a total of 110, and the price comes to 119.",
      "The quote shows a total of 0.005, and the price comes to 0.",
      usual,
      usual,
      usual,
    ]);
  });
  test.each<[string, SavedName[]]>([
    ["only one of a sheet", [local("0.1")]],
    ["only one of the workbook", [whole]],
    [
      "Excel's own",
      ["x", undefined].map((sheet) => ({
        name: "_xlnm.Print_Area",
        text: "A1",
        ...(sheet !== undefined && { sheet }),
      })),
    ],
  ])("%s is none", (_, names) => expect(told([], storedWith(names))).toEqual([]));

  test("as an open workbook tells of it", () => {
    const saved = { twice: [{ name: "site_tax", sheet: "Rooms" }] } as unknown as NonNullable<Book["saved"]>;
    const finding = {
      weight: "wrong",
      message:
        "There are two names site_tax: one of the workbook and one of the sheet Rooms. Formulas on Rooms read the sheet's, all others the workbook's.",
      rule: RULE,
      remedy: "Delete the one of Rooms (Formulas, Name Manager), if it was not meant.",
    };
    expect(namesTwice({ ...bookOf(), saved })).toEqual([finding]);
    expect(told([], { ...bookOf(), saved })).toEqual([finding]);
    expect(namesTwice(bookOf())).toEqual([]);
  });
});

describe("a name that the template does not have", () => {
  const CYRILLIC = "site_m\u0430rgin";
  test("that looks like one that it has", () => {
    const finding = {
      weight: "doubtful",
      message: `The name ${CYRILLIC} looks like site_margin and is another (a Cyrillic letter \u0430 that looks like a): it stands for 0.35.`,
      effect: "A formula that uses it reads right and reads something else.",
      rule: RULE,
      remedy: "Use site_margin in its place, and delete it: Formulas, Name Manager.",
    };
    const names = [{ name: CYRILLIC, text: "0.35" }];
    expect(told([], storedWith(names, [], "1-site_margin"))).toEqual([finding]);
    expect(told([], storedWith(names, [], `1-${CYRILLIC}`))).toEqual([
      {
        ...finding,
        weight: "wrong",
        effect: "A formula uses it: it reads right and reads something else.",
      },
    ]);
  });
  test.each(["Site_Margin_", "site_margin.", "site_margin__"])("%s has a mark more", (name) =>
    expect(told([], storedWith([{ name, text: "9".repeat(90) }]))[0]!.message).toBe(
      `The name ${name} looks like site_margin and is another (a mark more): it stands for ${"9".repeat(80)}.`,
    ),
  );
  test("that leads nowhere, is hidden, or leads into another workbook", () =>
    expect(
      told(
        [],
        storedWith([
          { name: "old_sum", text: "Old!#REF!", hidden: true },
          { name: "our_cost", text: "8".repeat(90), hidden: true },
          { name: "rates", text: "'[rates.xlsx]List'!$A$1" },
          { name: "office", text: "Site!$A$1" },
        ]),
      ),
    ).toEqual([
      {
        weight: "worth knowing",
        message: "The name old_sum leads to #REF!; the template does not use it.",
        rule: RULE,
        remedy: "Delete it: Formulas, Name Manager.",
      },
      {
        weight: "doubtful",
        message: `The name our_cost is hidden, and holds ${"8".repeat(80)}.`,
        effect: "It goes out with the file; no menu shows it, other programs do.",
        rule: RULE,
        remedy: "Find out who put it there, and delete it before the file goes out.",
      },
      {
        weight: "worth knowing",
        message: "The name rates points into another workbook, an external link: rates.xlsx.",
        rule: RULE,
        remedy: "Delete it, if nothing of the office needs it: Formulas, Name Manager.",
      },
    ]));
  test.each(["SITE_MARGIN", "_xlnm.Print_Titles", "Z_0A1B2C3D_.wvu.Cols", "z_ffffffff_x", "_mine"])(
    "%s is Excel's, or the template's",
    (name) => expect(told([], storedWith([{ name, text: "#REF!", hidden: true }]))).toEqual([]),
  );
  test.each(["a_xl", "aZ_0A1B2C3D_", "Z_0A1B_x", "a_b"])("%s is not", (name) =>
    expect(told([], storedWith([{ name, text: "#REF!" }]))).toHaveLength(1),
  );
});

test("the file that a link leads to", () => {
  const linked = storedWith(
    [],
    [
      { kind: "workbook", target: "a.xlsx", number: 1 },
      { kind: "workbook", target: "b.xlsx", number: 12 },
    ],
  );
  expect(
    ["[12]S!A1", "[3]S!A1", "'[c.XLSM]S'!A1", "S!A1", "[x]"].map((text) => linkIn(text, linked)),
  ).toEqual(["b.xlsx", "[3]S!A1", "c.XLSM", undefined, undefined]);
  expect(linkIn("[1]S!A1", bookOf())).toBe("[1]S!A1");
});
