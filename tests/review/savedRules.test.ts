/** What is said of guards that are gone, of looks, words and drawings, by a template of a few cells: each finding whole. */
import type { Finding } from "../../src/review/finding";
import { changedWords } from "../../src/review/rules/changedWords";
import { conditionalLooks } from "../../src/review/rules/conditionalLooks";
import { covered } from "../../src/review/rules/covered";
import { guardsGone } from "../../src/review/rules/guardsGone";
import type { BookSheet } from "../../src/workbooks/book";
import { layOut } from "../../src/workbooks/layOut";
import type { SavedCondition, SavedDrawing, SavedFile } from "../../src/workbooks/savedFile";
import { fewSheets, messagesOfFile as messages, ofFile as of, type Change } from "./fewSheets";
import { found } from "./smallBook";

test("as it was laid out: nothing; nor of a workbook that comes from no file", () => {
  for (const rule of [guardsGone, conditionalLooks, changedWords, covered]) {
    expect(of(rule)).toEqual([]);
    expect(found(rule, layOut(fewSheets), { definition: fewSheets })).toEqual([]);
  }
});

describe("modes of the file", () => {
  const MODES: Partial<SavedFile> = { macros: true, dates1904: true };
  const told = [
    {
      weight: "wrong",
      message: "By its content type the file is a macro workbook (.xlsm), and it comes as .xlsx.",
      effect: "Excel refuses to open it: format and extension do not match.",
      remedy: "Save it anew as an Excel workbook (.xlsx) without macros.",
    },
    {
      weight: "wrong",
      message: "The file counts its dates from 1904: every date reads four years and a day later.",
      effect: "The quote's date, its validity and those of prices are not what was entered.",
      remedy: "Switch off “Use 1904 date system” in the options for this workbook, and look at all dates.",
    },
  ];
  const open: Change = ({ Office }) => void (Office!.protected = false);
  test("are told of any file, guards only of one of today's template", () => {
    expect(of(guardsGone, undefined, {}, MODES)).toStrictEqual(told);
    expect(of(guardsGone, open, {}, MODES)).toHaveLength(3);
    expect(of(guardsGone, open, { definition: undefined }, MODES)).toStrictEqual(told);
    expect(of(guardsGone, open, { earlier: { others: [] } }, MODES)).toStrictEqual(told);
  });
});

describe("protection", () => {
  const open =
    (...names: string[]): Change =>
    (sheets) =>
      names.forEach((name) => (sheets[name]!.protected = false));
  const OPEN = {
    weight: "worth knowing",
    effect: "A stray key can overwrite formulas.",
    remedy: "Protect them again, without a password: Review, Protect Sheet.",
  };
  test.each<[string[], string]>([
    [["Quote"], "The protection of Quote is removed."],
    [["Quote", "Price", "One", "Two"], "The protection of Quote, Price, One, Two is removed."],
    [
      ["Quote", "Price", "One", "Two", "Three"],
      "The protection of Quote, Price, One, Two and 1 more sheet is removed.",
    ],
  ])("of %j", (names, message) =>
    expect(of(guardsGone, open(...names))).toStrictEqual([
      { ...OPEN, place: { sheet: "Quote", cell: "A1" }, message },
    ]),
  );
  test("of all", () =>
    expect(of(guardsGone, open("Office", "Quote", "Price", "One", "Two", "Three"))).toStrictEqual([
      { ...OPEN, message: "No sheet is protected any more." },
    ]));

  const unlock =
    (...cells: [sheet: string, cell: string][]): Change =>
    (sheets, book) => {
      (book as { looks: object[] }).looks = [...book.looks, { locked: false }];
      for (const [name, cell] of cells) sheets[name]!.cells[cell]!.look = book.looks.length - 1;
    };
  test("of calculated cells", () => {
    const told = {
      weight: "worth knowing",
      place: { sheet: "Quote", cell: "B5" },
      effect: "It can be typed over in spite of the sheet's protection.",
      remedy: "Lock it again: Format Cells, Protection.",
    };
    expect(of(guardsGone, unlock(["Quote", "B5"]))).toStrictEqual([
      { ...told, message: "Quote 4/1 is calculated and its cell is unlocked." },
    ]);
    expect(of(guardsGone, unlock(["Quote", "B5"], ["Quote", "B6"]))).toStrictEqual([
      { ...told, message: "Quote 4/1 is calculated and its cell is unlocked, and 1 more of this sheet." },
    ]);
  });
  test("of a label, of an input, or of what is no formula any more: nothing", () => {
    expect(of(guardsGone, unlock(["Quote", "A5"]))).toEqual([]);
    expect(of(guardsGone, (sheets) => void (sheets.Office!.cells.B5!.formula = "1+1"))).toEqual([]);
    expect(
      of(guardsGone, (sheets, book, file) => {
        unlock(["Quote", "B5"])(sheets, book, file);
        sheets.Quote!.cells.B5 = { value: 3, look: sheets.Quote!.cells.B5!.look! };
      }),
    ).toEqual([]);
  });
});

describe("rules of entry", () => {
  const ruled =
    (change: (all: BookSheet["validations"]) => object[]): Change =>
    ({ Office }) =>
      void (Office!.validations = change(Office!.validations) as BookSheet["validations"]);
  const GONE = {
    weight: "worth knowing",
    effect: "Words in numbers, shares over 100 % and wrong dates can be typed there unchecked.",
    remedy: "Copy the sheet's cells from a new workbook with Paste Special, Validation.",
  };
  test("that are gone", () => {
    expect(
      of(
        guardsGone,
        ruled(() => []),
      ),
    ).toStrictEqual([
      {
        ...GONE,
        place: { sheet: "Office", cell: "B5" },
        message: "2 of 2 rules of entry (data validation) of Office are gone.",
      },
    ]);
    expect(
      of(
        guardsGone,
        ruled((all) => all.slice(0, 1)),
      ),
    ).toStrictEqual([
      {
        ...GONE,
        place: { sheet: "Office", cell: "B6" },
        message: "1 of 2 rules of entry (data validation) of Office are gone.",
      },
    ]);
    // In another column, above or below it is another cell's.
    for (const range of ["C5", "B4", "B7"])
      expect(
        of(
          guardsGone,
          ruled(([first, ...others]) => [{ ...first, range }, ...others]),
        ),
      ).toHaveLength(1);
  });
  const number = (min: number | undefined, max: number | undefined, more = {}) =>
    ruled(([first, ...others]) => [{ ...first, rule: { kind: "number", min, max }, ...more }, ...others]);
  const LOOSE = {
    weight: "worth knowing",
    place: { sheet: "Office", cell: "B5" },
    expected: "Its width. A number from 0 to 9.",
    effect: "It takes what the template refuses.",
    remedy: "Set it again as in the template, or copy the cell from a new workbook.",
  };
  const LOOSENED = "The rule (data validation) of Office 4/1 was loosened";
  test.each<[string, Change, string | undefined]>([
    ["a higher most", number(0, 10), `${LOOSENED}.`],
    ["a lower least", number(-1, 9), `${LOOSENED}.`],
    ["no least", number(undefined, 9), `${LOOSENED}.`],
    ["no most", number(0, undefined), `${LOOSENED}.`],
    ["stricter ones", number(1, 8), undefined],
    ["a warning alone", number(0, 9, { warnOnly: true }), `${LOOSENED}: it only warns.`],
    [
      "another kind",
      ruled(([first, ...others]) => [{ ...first, rule: { kind: "date" } }, ...others]),
      undefined,
    ],
    [
      "a looser one beside its own",
      ruled(([first, ...others]) => [
        first!,
        { ...first, rule: { kind: "number", min: 0, max: 90 } },
        ...others,
      ]),
      undefined,
    ],
    // Of more cells than one the first is the thin row's.
    [
      "over the cells below",
      number(0, 10, { range: "B5:B6" }),
      "The rule (data validation) of Office 5/1 was loosened.",
    ],
  ])("loosened: %s", (_, change, message) =>
    expect(of(guardsGone, change)).toStrictEqual(message === undefined ? [] : [{ ...LOOSE, message }]),
  );
  test("loosened and gone at once: both", () =>
    expect(
      messages(
        guardsGone,
        ruled(([first]) => [{ ...first, rule: { kind: "number", min: 0, max: 10 } }]),
      ),
    ).toEqual([`${LOOSENED}.`, "1 of 2 rules of entry (data validation) of Office are gone."]));

  const silent =
    (...rules: [ranges: string[], silent?: true][]): Change =>
    (_, __, file) => {
      file.Office = {
        ...file.Office,
        rules: rules.map(([ranges, is]) => ({ ranges, formulas: [], ...(is && { silent: is }) })),
      };
      file.Quote = { ...file.Quote, rules: [{ ranges: ["B5"], formulas: [] }] };
    };
  test("that show no alert", () => {
    const told = {
      weight: "worth knowing",
      place: { sheet: "Office", cell: "B5" },
      effect: "It is there and takes everything.",
      remedy: "Tick “Show error alert” in Data Validation again.",
    };
    expect(of(guardsGone, silent([["B5", "D1"], true]))).toStrictEqual([
      { ...told, message: "The rule (data validation) of Office 4/1 shows no alert when it is broken." },
    ]);
    expect(of(guardsGone, silent([["B5:B6"], true], [["B6"], true]))).toStrictEqual([
      {
        ...told,
        message:
          "The rule (data validation) of Office 5/1 shows no alert when it is broken, nor does 1 more of Office.",
      },
    ]);
    expect(of(guardsGone, silent([["B6"]], [["B5"], true]))).toHaveLength(1);
  });
  test("that show one, stand where the template has none, or never tell: nothing", () => {
    expect(of(guardsGone, silent([["B5"]]))).toEqual([]);
    expect(of(guardsGone, silent([["D9"], true]))).toEqual([]);
    expect(
      of(
        guardsGone,
        (_, __, file) =>
          void (file.Office = { ...file.Office, rules: [{ ranges: ["B5"], formulas: [], silent: true }] }),
      ),
    ).toEqual([]);
  });
});

test("marks that are removed, of a sheet of the office", () => {
  const unmarked =
    (name: string): Change =>
    (_, __, file) =>
      void (file[name] = { ...file[name], marked: false });
  expect(of(guardsGone, unmarked("Office"))).toStrictEqual([
    {
      weight: "worth knowing",
      place: { sheet: "Office", cell: "A1" },
      message: "The conditional formats of Office are removed.",
      effect: "Words that need attention no longer stand out.",
      remedy: "Copy the sheet's formats from a new workbook (Paste Special, Formats).",
    },
  ]);
  // The customer's page has its marks for the office alone; Price has none.
  expect([of(guardsGone, unmarked("Quote")), of(guardsGone, unmarked("Price"))]).toEqual([[], []]);
});

describe("a conditional format", () => {
  const over = (
    condition: Partial<SavedCondition>,
    look: object = {},
    values: (number | string)[] = [1500, 900],
  ): Finding[] =>
    of(conditionalLooks, ({ Quote }, book, file) => {
      (book as { looks: object[] }).looks = [...book.looks, look];
      values.forEach((value, index) => {
        Quote!.results[`B${index + 5}`] = value;
        Quote!.cells[`B${index + 5}`]!.look = book.looks.length - 1;
      });
      file.Quote = {
        ...file.Quote,
        conditions: [
          { ranges: ["B5:B6"], kind: "cellIs", operator: "greaterThan", formulas: ["1000"], ...condition },
        ],
      };
    });
  const LOOK = {
    weight: "wrong",
    place: { sheet: "Quote", cell: "B5" },
    remedy: "Delete the rule: Home, Conditional Formatting, Manage Rules.",
  };
  const UNREAD = { ...LOOK, effect: "It counts and cannot be read." };
  test("that hides a figure", () => {
    expect(over({ color: "FFFFFF" })).toStrictEqual([
      {
        ...UNREAD,
        message:
          "A conditional format gives Quote 4/1 (B5) the colour of its ground, white on white: the figure is hidden.",
      },
    ]);
    expect(over({ color: "FFE7E7E7" })).toStrictEqual([
      {
        ...UNREAD,
        message: "A conditional format gives Quote 4/1 (B5) the colour of its ground: the figure is hidden.",
      },
    ]);
  });
  // Of 24 less in a part of the colour nothing is seen: FF less 18 is E7.
  test.each<[string, Partial<SavedCondition>, object, boolean]>([
    ["25 apart in one part", { color: "FFFFE6" }, {}, false],
    ["24 apart in one", { color: "E7FFFF" }, {}, true],
    ["25 apart in the first", { color: "E6FFFF" }, {}, false],
    ["the ground of the cell", { color: "1F2933" }, { fill: "1F2933" }, true],
    ["another ground of the cell", { color: "FFFFFF" }, { fill: "1F2933" }, false],
    ["a ground of its own", { fill: "1F2933" }, { color: "1F2933" }, true],
    ["a black ground under black by default", { fill: "000000" }, {}, true],
    ["both of its own", { fill: "FFFFFF", color: "000000" }, { color: "FFFFFF" }, false],
    ["neither", {}, { color: "FFFFFF" }, false],
  ])("%s: hidden is %4$s", (_, condition, look, isHidden) =>
    expect(over(condition, look)).toHaveLength(isHidden ? 1 : 0),
  );
  test.each<[string, string[], string[]]>([
    ["greaterThan", ["900"], ["wrong B5"]],
    ["greaterThanOrEqual", ["1500"], ["wrong B5"]],
    ["greaterThanOrEqual", ["1501"], []],
    ["lessThan", ["1500"], ["wrong B6"]],
    ["lessThan", ["900"], []],
    ["lessThanOrEqual", ["900"], ["wrong B6"]],
    ["lessThanOrEqual", ["899"], []],
    ["greaterThan", ["1500"], []],
    ["equal", ["900"], ["wrong B6"]],
    ["notEqual", ["1500"], ["wrong B6"]],
    ["between", ["900", "1000"], ["wrong B6"]],
    ["between", ["800", "900"], ["wrong B6"]],
    ["between", ["901", "1499"], []],
    ["notBetween", ["1000", "1500"], ["wrong B6"]],
    ["notBetween", ["900", "1500"], []],
    ["notBetween", ["900", "1000"], ["wrong B5"]],
    // What cannot be told from the file may hold.
    ["between", ["900"], ["doubtful B5"]],
    ["notBetween", ["900", "total"], ["doubtful B5"]],
    ["greaterThan", ["total"], ["doubtful B5"]],
    ["greaterThan", [" "], ["doubtful B5"]],
    ["greaterThan", [], ["doubtful B5"]],
    ["containsText", ["900"], ["doubtful B5"]],
  ])("%s %j", (operator, formulas, wanted) =>
    expect(
      over({ operator, formulas, color: "FFFFFF" }).map(({ weight, place }) => `${weight} ${place!.cell}`),
    ).toEqual(wanted),
  );
  test("by a formula it may hold; by a value it holds of no text, nor of what is blank or elsewhere", () => {
    expect(over({ kind: "expression", color: "FFFFFF" })).toMatchObject([{ weight: "doubtful" }]);
    expect(over({ kind: "expression", color: "FFFFFF" }, {}, ["good", 900])).toMatchObject([
      { place: { cell: "B5" } },
    ]);
    expect(over({ color: "FFFFFF" }, {}, ["good", 1500])).toMatchObject([{ place: { cell: "B6" } }]);
    expect(over({ kind: "expression", color: "FFFFFF" }, {}, ["", " "])).toEqual([]);
    expect(over({ color: "FFFFFF", ranges: ["C1:C9", "B6"] })).toEqual([]);
    expect(over({ color: "FFFFFF", ranges: ["C1:C9", "B5"] })).toHaveLength(1);
  });
  const OTHERWISE = { ...LOOK, effect: "The page shows another figure than the cell holds." };
  test("that shows another figure", () => {
    expect(over({ format: "0.0," })).toStrictEqual([
      {
        ...OTHERWISE,
        message:
          "A conditional format shows Quote 4/1 (B5) as “1.5” by the number format 0.0,, thousands scaled away.",
      },
    ]);
    expect(over({ format: "0.0" })).toStrictEqual([
      {
        ...OTHERWISE,
        weight: "doubtful",
        message: "A conditional format shows Quote 4/1 (B5) as “1500.0” by the number format 0.0.",
      },
    ]);
    expect(over({ format: '"free"' })).toStrictEqual([
      {
        ...OTHERWISE,
        message: 'A conditional format shows Quote 4/1 (B5) as “free” by the number format "free".',
      },
    ]);
    expect([
      over({ format: "0" }),
      over({ format: "0.0" }, { format: "0.0" }),
      over({ format: "0.0" }, {}, ["good", 900]),
    ]).toEqual([[], [], []]);
  });
});

describe("words of the quote", () => {
  const typed =
    (name: string, cell: string, value: string): Change =>
    (sheets) =>
      void (sheets[name]!.cells[cell] = { ...sheets[name]!.cells[cell], value });
  test("that are typed over", () =>
    expect(of(changedWords, typed("Quote", "A6", "Net total"))).toStrictEqual([
      {
        weight: "doubtful",
        place: { sheet: "Quote", cell: "A6" },
        message: "The label “Total” of the template reads “Net total” here.",
        expected: "Total",
        effect: "The figure beside it is still what the template's label says.",
        remedy: "Write the template's label again; change tax, price or customer where they are entered.",
      },
    ]));
  test("with another blank, of another row, or on a sheet of the office: nothing", () => {
    expect([
      of(changedWords, typed("Quote", "A6", " Total ")),
      of(changedWords, typed("Quote", "A6", "Net")),
      of(changedWords, typed("Office", "A6", "Task")),
    ]).toEqual([[], [], []]);
    expect(of(changedWords, typed("Quote", "A6", "Task"), { definition: undefined })).toEqual([]);
    expect(of(changedWords, typed("Quote", "A6", "Task"), { earlier: { others: [] } })).toEqual([]);
  });
  // The page ends with column C.
  const add = (formulas: Record<string, string>, more: Partial<BookSheet> = {}): Finding[] =>
    of(changedWords, ({ Quote }) => {
      for (const [cell, formula] of Object.entries(formulas)) {
        Quote!.cells[cell] = { formula };
        Quote!.results[cell] = 3;
      }
      Object.assign(Quote!, more);
    });
  const REMEDY = { remedy: "Delete it here; keep such figures on a sheet of the office's own." };
  const PRINTED = { effect: "It is printed on the customer's page.", ...REMEDY };
  const SEEN = { effect: "Whoever gets the file can see it.", ...REMEDY };
  const b3 = { sheet: "Quote", cell: "B3" };
  test("costs that were added", () => {
    expect(add({ B2: "1+1", B3: "Price!B5*2", C3: "cost" })).toStrictEqual([
      {
        weight: "wrong",
        place: b3,
        message:
          "B3 and 1 more of Quote were added and show figures of the office, cost among them: =Price!B5*2.",
        ...PRINTED,
      },
    ]);
    const hiddenOne = {
      weight: "doubtful",
      place: b3,
      message:
        "B3 of Quote was added and shows figures of the office, cost among them: =cost (in a hidden column).",
      ...SEEN,
    };
    expect(add({ B3: "cost" }, { hiddenColumns: [1] })).toStrictEqual([hiddenOne]);
    expect(add({ E3: "cost" })[0]).toMatchObject({ weight: "doubtful", effect: SEEN.effect });
    expect(add({ E3: "cost" }, { print: undefined })[0]).toMatchObject({
      weight: "wrong",
      effect: PRINTED.effect,
    });
  });
  test("other formulas that were added", () => {
    expect(add({ B3: "total*2", C3: "1+1" })).toStrictEqual([
      {
        weight: "doubtful",
        place: b3,
        message: "B3 and 1 more of Quote hold a formula that the template does not have: =total*2.",
        ...PRINTED,
      },
    ]);
    expect(add({ E3: "total*2" })).toStrictEqual([
      {
        weight: "doubtful",
        place: { sheet: "Quote", cell: "E3" },
        message: "E3 of Quote holds a formula that the template does not have: =total*2.",
        ...SEEN,
      },
    ]);
    // The template's own formula, and a cell that it formats, were not added.
    expect(add({ B6: "total*3", A2: "1+1" })).toEqual([]);
  });
});

describe("a drawing", () => {
  const draw = (
    name: string,
    drawing: Partial<SavedDrawing>,
    results: Record<string, number> = { B5: 900, B6: 1800 },
  ): Finding[] =>
    of(covered, (sheets, _, file) => {
      sheets[name]!.results = results;
      file[name] = {
        ...file[name],
        drawings: [{ kind: "shape", name: "", text: "", top: 5, left: 1, bottom: 5, right: 1, ...drawing }],
      };
    });
  const b6 = { sheet: "Quote", cell: "B6" };
  test("that embeds a document", () => {
    const told = {
      weight: "doubtful",
      place: b6,
      effect: "Whoever gets the file can open it and read what is in it.",
      remedy: "Look what it holds, and delete it before the file goes out.",
    };
    expect(draw("Quote", { kind: "object", name: "Sheet 1" })).toStrictEqual([
      { ...told, message: "Another document is embedded in the sheet Quote (an OLE object, Sheet 1)." },
    ]);
    expect(draw("Quote", { kind: "object" })).toStrictEqual([
      { ...told, message: "Another document is embedded in the sheet Quote (an OLE object, of no name)." },
    ]);
  });
  test("whose text tells a path", () => {
    const path = "C:\\Users\\ann\\jobs\\plan.png";
    expect(draw("Quote", { kind: "picture", text: path })).toStrictEqual([
      {
        weight: "worth knowing",
        place: b6,
        message: `The alternative text of a picture at B6 holds a path of the office's disc: ${path}.`,
        effect: "Whoever gets the file can read it; it tells names of folders and people.",
        remedy: "Change it: right-click the picture, Edit Alt Text.",
      },
    ]);
    expect(draw("Quote", { kind: "shape", text: path })[0]!.weight).toBe("wrong");
  });
  const OVER = {
    weight: "wrong",
    place: b6,
    effect: "What lies under it counts and is not seen, on screen or on paper.",
    remedy: "Move it away, or delete it.",
  };
  test.each([
    ["picture", "A picture"],
    ["chart", "A chart"],
    ["text box", "A text box"],
    ["shape", "A shape"],
  ] as const)("a %s over a figure", (kind, what) =>
    expect(draw("Quote", { kind })).toStrictEqual([
      { ...OVER, message: `${what} (a drawing) covers B6 of the sheet Quote.` },
    ]),
  );
  test("over several cells, and over words alone", () => {
    expect(draw("Quote", { text: "new", left: 0 })).toStrictEqual([
      {
        ...OVER,
        message:
          "A shape (a drawing) with the text “new” covers A6 and 1 more filled cell of the sheet Quote.",
      },
    ]);
    expect(draw("Quote", { right: 0, left: 0 })).toStrictEqual([
      {
        ...OVER,
        weight: "doubtful",
        place: { sheet: "Quote", cell: "A6" },
        message: "A shape (a drawing) covers A6 of the sheet Quote.",
      },
    ]);
    // On a sheet of the office words are no matter, and a figure is doubtful.
    expect(draw("Price", { top: 4, bottom: 4, left: 0, right: 0 })).toEqual([]);
    expect(draw("Price", { top: 4, bottom: 4 }, { B5: 7 })).toMatchObject([
      { weight: "doubtful", place: { sheet: "Price", cell: "B5" } },
    ]);
  });
  test("of glass, or beside what is filled: nothing", () => {
    expect(draw("Quote", { clear: true })).toEqual([]);
    for (const beside of [
      { top: 6, bottom: 9 },
      { top: 0, bottom: 4, left: 1, right: 1 },
      { left: 2, right: 5 },
    ])
      expect(draw("Quote", beside, { B6: 1800 })).toEqual([]);
  });
  const figure = (text: string, more: Partial<SavedDrawing> = {}) =>
    draw("Quote", { kind: "text box", text, ...more });
  const OWN = {
    weight: "wrong",
    place: b6,
    effect: "The customer reads a figure that does not follow from the job.",
    remedy: "Delete the text box; give a discount in its own cells on Terms.",
  };
  test("that shows a figure of its own", () => {
    expect(figure("only 9,900.50!")).toStrictEqual([
      {
        ...OWN,
        message:
          "A text box (a drawing) with the text “only 9,900.50!” covers B6: the page shows a figure that no cell holds.",
      },
    ]);
    // One that the sheet shows, one under a hundred, one over words alone or of another kind is no other price.
    for (const text of ["1'800", "900.004", "99.9 %"])
      expect(figure(text)[0]).toMatchObject({ effect: OVER.effect });
    expect(figure("900.006")).toMatchObject([{ effect: OWN.effect }]);
    expect(figure("9900", { left: 0, right: 0 })).toMatchObject([{ effect: OVER.effect }]);
    expect(draw("Quote", { kind: "shape", text: "9900" })).toMatchObject([{ effect: OVER.effect }]);
    expect(draw("Price", { kind: "text box", text: "9900", top: 4, bottom: 4 }, { B5: 7 })).toMatchObject([
      { effect: OVER.effect },
    ]);
  });
});
