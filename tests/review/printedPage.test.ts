/** What is said of how the pages come out: each finding whole, by a template of a few cells. */
import { printedPage } from "../../src/review/rules/printedPage";
import type { Book } from "../../src/workbooks/book";
import type { SavedFile, SavedMargin, SavedPage, SavedSheet } from "../../src/workbooks/savedFile";
import { layOut } from "../../src/workbooks/layOut";
import { emptySheet } from "../support/books";
import { fewSheets, messagesOfFile, ofFile, type Change } from "./fewSheets";
import { found } from "./smallBook";

const of = (change?: Change, names: SavedFile["names"] = []) => ofFile(printedPage, change, {}, { names });
const messages = (change?: Change, names: SavedFile["names"] = []) =>
  messagesOfFile(printedPage, change, {}, { names });
const top = (sheet: string) => ({ sheet, cell: "A1" });
/** A name of Quote, which has a net of 3 and a total of 6. */
const withName = (name: string, text: string, more: Change = () => undefined, sheet = "Quote") =>
  of(
    (sheets, book, file) => {
      Object.assign(sheets["Quote"]!.results, { B5: 3, B6: 6 });
      Object.assign(sheets["Office"]!.results, { B7: 2 });
      more(sheets, book, file);
    },
    [{ name, text, sheet }],
  );
/** A file's own words of one sheet. */
const saved =
  (more: Partial<Omit<SavedSheet, "page">>, page: Partial<SavedPage> = {}, sheet = "Quote"): Change =>
  (_, __, file) =>
    void Object.assign(file[sheet]!, more, { page: { rowBreaks: [], ...page } });

describe("the print area", () => {
  const area = (text: string, more?: Change, sheet?: string) =>
    withName("_xlnm.Print_Area", text, more, sheet);
  const LEAVES = {
    weight: "wrong",
    place: { sheet: "Quote", cell: "B6" },
    message: "The print area of Quote, A1:C5, leaves 2 filled cells outside, among them Quote 5/1 (B6).",
    expected: "As far as the sheet is filled, the template's A1:C6.",
    effect: "They are not printed; what is on the page no longer is what is quoted.",
    remedy: "Set the print area again over all that is filled: Page Layout, Print Area.",
  };
  test("leaves a figure out", () => {
    for (const text of ["Quote!$A$1:$C$5", "'Quote'!$A$1:$C$5"]) expect(area(text)).toStrictEqual([LEAVES]);
  });
  test("leaves words alone out, as far as 50 letters are shown", () =>
    expect(
      area("Quote!$A$1:$C$5", ({ Quote }) => {
        delete Quote!.results["B6"];
        Quote!.cells["A6"]!.value = "T".repeat(60);
      }),
    ).toStrictEqual([
      {
        ...LEAVES,
        place: { sheet: "Quote", cell: "A6" },
        message: `The print area of Quote, A1:C5, leaves 1 filled cell outside, among them “${"T".repeat(50)}” (A6).`,
      },
    ]));
  test("of a sheet of the office", () =>
    expect(area("Office!$A$1:$B$6", undefined, "Office")).toMatchObject([
      {
        weight: "worth knowing",
        message:
          "The print area of Office, A1:B6, leaves 2 filled cells outside, among them Office 6/1 (B7).",
      },
    ]));
  test("leaves out what is not the template's: only if it was given a look", () => {
    const beside = (look?: number) => (sheets: Parameters<Change>[0]) =>
      void (sheets["Quote"]!.cells["C6"] = { value: "mine", ...(look !== undefined && { look }) });
    const [plain] = area("Quote!$A$1:$B$6", beside());
    expect(plain).toBeUndefined();
    expect(area("Quote!$A$1:$B$6", beside(0))[0]!.message).toMatch(/^.*, leaves 1 filled cell .*“mine”/);
    const spilt: Change = ({ Quote }) => void (Quote!.results["C6"] = 5);
    expect(area("Quote!$A$1:$B$6", spilt)).toEqual([]);
    // Below the template's own area nobody asks for it.
    const below: Change = ({ Quote }) => void (Quote!.cells["A9"] = { value: "mine", look: 0 });
    expect(area("Quote!$A$1:$C$6", below)).toEqual([]);
  });
  test("two areas that together have it all, no name, an empty one, or another sheet's: nothing", () =>
    expect([
      area("Quote!$A$1:$C$5,Quote!$A$6:$C$6"),
      area(""),
      of(),
      area("Quote!$A$1:$C$5", undefined, "Price"),
      area("nowhere"),
    ]).toEqual([[], [], [], [], []]));
  test("lost", () =>
    expect(area("Quote!#REF!")).toStrictEqual([
      {
        weight: "doubtful",
        place: top("Quote"),
        message: "The print area of Quote (the name _xlnm.Print_Area) is lost: it leads to #REF!.",
        effect: "What is printed is then the program's choice.",
        remedy: "Set the print area again: choose the cells, Page Layout, Print Area.",
      },
    ]));
  test("is not looked at without the template, of an earlier version, or without what the file says", () => {
    const names = [{ name: "_xlnm.Print_Area", text: "#REF!", sheet: "Quote" }];
    const told = (more: object, change?: Change) => ofFile(printedPage, change, more, { names });
    expect(told({})).toHaveLength(1);
    expect(told({ definition: undefined })).toEqual([]);
    expect(told({ earlier: { others: [] } })).toEqual([]);
    expect(told({}, (_, __, file) => delete file["Quote"])).toEqual([]);
    expect(found(printedPage, layOut(fewSheets), { definition: fewSheets })).toEqual([]);
  });
});

describe("rows that repeat on every page", () => {
  const titles = (rows: string, more?: Change) => withName("_xlnm.Print_Titles", rows, more);
  test("hold figures", () =>
    expect(titles("Quote!$5:$6")).toStrictEqual([
      {
        weight: "doubtful",
        place: { sheet: "Quote", cell: "A5" },
        message:
          "Rows 5 to 6 of Quote, which hold figures, are set as print titles: they repeat on every page.",
        effect: "A reader of the second page takes them as charged again.",
        remedy: "Set “Rows to repeat at top” to the row of the sheet's title: Page Layout, Print Titles.",
      },
    ]));
  test.each<[string, number]>([
    ["$5:$5", 1],
    ["$3:$4", 0],
    ["$7:$9", 0],
    ["$1:$1", 0],
    ["$1:$2", 1],
    ["$A:$B", 0],
  ])("%s, with figures in rows 1, 2, 5 and 6", (rows, wanted) => {
    const figures: Change = ({ Quote }) => Object.assign(Quote!.results, { B1: 1, B2: 2 });
    expect(titles(`Quote!${rows}`, figures)).toHaveLength(wanted);
  });
});

describe("the scale", () => {
  const SCALE = {
    weight: "doubtful",
    place: top("Quote"),
    message: "Quote prints at a scale of 39 % (39%).",
    effect: "Its letters come out too small to read.",
    remedy: "Set the scaling back to fit one page wide: Page Layout.",
  };
  test("too small and too large", () => {
    expect(of(saved({}, { scale: 39 }))).toStrictEqual([SCALE]);
    expect(of(saved({}, { scale: 201 }))).toStrictEqual([
      {
        ...SCALE,
        message: "Quote prints at a scale of 201 % (201%).",
        effect: "It falls apart over many pages, the figures away from what they are for.",
      },
    ]);
  });
  test.each<[number, string, string | undefined]>([
    [40, "Quote", undefined],
    [200, "Quote", undefined],
    [20, "Quote", "doubtful"],
    [19, "Quote", "wrong"],
    [19, "Office", "worth knowing"],
  ])("%d of %s", (scale, sheet, weight) => expect(of(saved({}, { scale }, sheet))[0]?.weight).toBe(weight));
  test("of a sheet that is one page", () =>
    expect(of(saved({}, { scale: 30 }, "Two"))[0]!.remedy).toBe(
      "Set the scaling back to fit one page: Page Layout.",
    ));
  /** Filled down to a row; 720 points of a page upright and 480 across, 15 for a row, hold 48 and 32 rows. */
  const fitted = (tall: number, row: number, sheet = "Quote", orientation?: "landscape", value = "end") =>
    of((sheets, book, file) => {
      sheets[sheet]!.cells[`A${row}`] = { value };
      if (orientation) Object.assign(sheets[sheet]!.print!, { orientation });
      saved({}, { fit: { wide: 1, tall } }, sheet)(sheets, book, file);
    });
  test("a long list fitted on one page", () =>
    expect(fitted(1, 161)).toStrictEqual([
      {
        weight: "worth knowing",
        place: top("Quote"),
        message:
          "Quote is fitted on one page: its 161 rows come out at a scale of some 30 %, too small to read.",
        remedy: "Set it to one page wide and any number tall: Page Layout, Height automatic.",
      },
    ]));
  test("on two, and across", () => {
    expect(fitted(2, 480)[0]!.message).toBe(
      "Quote is fitted on 2 pages: its 480 rows come out at a scale of some 20 %, too small to read.",
    );
    expect(fitted(1, 107, "Office", "landscape")).toHaveLength(1);
  });
  test("what still is read, any number of pages, blanks, or one page by design: nothing", () =>
    expect([
      fitted(1, 160),
      fitted(1, 106, "Office", "landscape"),
      fitted(0, 900),
      fitted(1, 900, "Quote", undefined, " "),
      fitted(1, 900, "Two"),
    ]).toEqual([[], [], [], [], []]));
});

describe("a page break between the lines and their total", () => {
  const named = (book: Book, sheet: string): void =>
    void book.names.push(
      { name: "quote_reception", sheet, range: "B5" },
      { name: "quote_total", sheet, range: "B8" },
    );
  const breaks = (rowBreaks: number[], page: Partial<SavedPage> = {}, names = "Quote", sheet = "Quote") =>
    of((sheets, book, file) => {
      named(book, names);
      saved({}, { ...page, rowBreaks }, sheet)(sheets, book, file);
    });
  test("is told", () =>
    expect(breaks([3, 5])).toStrictEqual([
      {
        weight: "worth knowing",
        place: { sheet: "Quote", cell: "A6" },
        message: "A page break below row 5 parts the total from the lines that it adds.",
        effect: "The total stands on another page and can be left behind.",
        remedy: "Take the page break out: Page Layout, Breaks, Reset.",
      },
    ]));
  test("before, behind, fitted on one page, or elsewhere: nothing", () => {
    expect(breaks([7], { fit: { wide: 1, tall: 0 } })).toHaveLength(1);
    expect([
      breaks([4, 8]),
      breaks([6], { fit: { wide: 1, tall: 1 } }),
      breaks([6], {}, "Office"),
      breaks([6], {}, "Office", "Office"),
      of(saved({}, { rowBreaks: [6] })),
    ]).toEqual([[], [], [], [], []]);
  });
});

describe("settings of a sheet", () => {
  const FORMULAS = {
    weight: "wrong",
    place: top("Quote"),
    message: "Quote is set to show formulas instead of their values.",
    effect: "On screen and on paper the formulas stand in the place of the figures.",
    remedy: "Switch Show Formulas off (Formulas, or Ctrl and the key left of 1).",
  };
  test("that hide or show what they should not", () => {
    expect(of(saved({ showsFormulas: true, rowsHidden: true, zerosHidden: true }))).toStrictEqual([
      FORMULAS,
      {
        weight: "doubtful",
        place: top("Quote"),
        message: "Quote hides every row without a height of its own.",
        effect: "What stands there counts without being seen.",
        remedy: "Choose all rows and show them again.",
      },
      {
        weight: "worth knowing",
        place: top("Quote"),
        message: "Quote does not show zeros.",
        effect: "A price or a length of 0 looks like an empty cell.",
        remedy: "Tick “Show a zero in cells that have zero value” in the options for this sheet.",
      },
    ]);
    expect(of(saved({ showsFormulas: true }, {}, "Office"))[0]!.weight).toBe("doubtful");
  });
  const notes = ["n".repeat(90), "two", "three"].map((text, index) => ({
    cell: `B${5 + index}`,
    text,
    author: "",
  }));
  const ALL = {
    notesPrinted: true,
    firstNumber: 4,
    otherPaper: 11,
    headings: true,
    gridLines: true,
    errorsAs: "blank",
  } as const;
  test("of the page that the customer gets", () =>
    expect(of(saved({ notes }, ALL))).toStrictEqual([
      {
        weight: "wrong",
        place: { sheet: "Quote", cell: "B5" },
        message: `The notes (comments) of Quote are printed: “${"n".repeat(80)}” and 2 more.`,
        effect: "The customer reads them with the quote.",
        remedy: "Set comments to “(None)” in the page setup, and delete the notes.",
      },
      {
        weight: "worth knowing",
        place: top("Quote"),
        message: "The first page number of Quote is set to 4: the foot says page 4 of 1.",
        effect: "A reader takes pages as missing.",
        remedy: "Set the first page number to automatic in the page setup.",
      },
      {
        weight: "doubtful",
        place: top("Quote"),
        message: "Quote is set to paper of the size A5: a whole page of A4 is made that small.",
        effect: "Its letters come out too small to read.",
        remedy: "Set the size of the paper to A4 or Letter: Page Layout, Size.",
      },
      {
        weight: "worth knowing",
        place: top("Quote"),
        message: "Quote prints the headings of rows and columns and the gridlines.",
        effect: "Nothing is false by that; it looks like a working print.",
        remedy: "Take the tick away: Page Layout, Sheet Options.",
      },
      {
        weight: "worth knowing",
        place: top("Quote"),
        message: "Quote prints errors as blank.",
        effect: "A sum that cannot be computed would print as nothing.",
        remedy: "Let cell errors be printed as displayed (page setup, sheet).",
      },
    ]));
  test.each<[Partial<SavedPage>, SavedSheet["notes"], string[]]>([
    [{ notesPrinted: true }, notes.slice(1, 2), ["The notes (comments) of Quote are printed: “two”."]],
    [{ notesPrinted: true }, [], []],
    [{}, notes, []],
    [{ firstNumber: 1 }, [], []],
    // A3 is no small paper.
    [{ otherPaper: 8 }, [], []],
    [{ headings: true }, [], ["Quote prints the headings of rows and columns."]],
    [{ gridLines: true }, [], ["Quote prints the gridlines."]],
  ])("%j", (page, of, wanted) => expect(messages(saved({ notes: of }, page))).toEqual(wanted));
  test("the office's own pages may be as they are", () =>
    expect(of(saved({ notes }, ALL, "Office"))).toEqual([]));
});

describe("head and foot", () => {
  const job: Change = (_, book) => {
    const values = { site_quote: "Q-7", site_revision: 2, site_date: 46_082 };
    const site = emptySheet("Site");
    Object.entries(values).forEach(([name, value], index) => {
      site.cells[`A${index + 1}`] = { value };
      book.names.push({ name, sheet: "Site", range: `A${index + 1}` });
    });
    book.sheets.push(site);
  };
  const margin = (text: string, more: Partial<SavedMargin> = {}, sheet = "Quote", filled: Change = job) =>
    of((sheets, book, file) => {
      filled(sheets, book, file);
      saved({ margins: [{ at: "footer", pages: "odd", text, ...more }] }, {}, sheet)(sheets, book, file);
    });
  const CHANGE = {
    place: top("Quote"),
    remedy: "Change the footer: Page Layout, Page Setup, Header/Footer.",
  };
  test("tell of the office's cost", () => {
    expect(margin('&L&"Arial,Bold"&12Cost && &K00FF00profit&R&D &P', { at: "header" })).toStrictEqual([
      {
        weight: "wrong",
        place: top("Quote"),
        message: "The header of Quote prints “Cost &  profit”: cost or other internal words.",
        effect: "Whoever gets the page reads it.",
        remedy: "Change the header: Page Layout, Page Setup, Header/Footer.",
      },
    ]);
    expect(margin("Margin 20", { pages: "even" }, "Office")).toMatchObject([
      {
        weight: "doubtful",
        message: "The even page's footer of Office prints “Margin 20”: cost or other internal words.",
      },
    ]);
  });
  test("tell a path of the office's", () => {
    const tail = "x".repeat(90);
    expect(margin(`&L&Z  &F${tail}`)).toStrictEqual([
      {
        ...CHANGE,
        weight: "doubtful",
        message: `The footer of Quote prints a path or file name of the office's disc (&L&Z &F${tail.slice(0, 73)}).`,
        effect: "Names of folders tell names, other jobs and more.",
      },
    ]);
    expect(margin("&z", {}, "Office")[0]!.weight).toBe("worth knowing");
    expect(margin("C:\\jobs\\a")[0]!.message).toMatch(/ prints a path .*\(C:\\jobs\\a\)\.$/);
    expect(margin("A &&Z and &F")).toEqual([]);
  });
  const FOOT = "&LQuote&CPage &P of &N&R";
  const EFFECT = "Head and foot of one page name two quotes.";
  test("name another quote, or another revision of this", () => {
    const told = (is: string) =>
      `The footer of Quote says “${is}”, and the quote's own number, revision and date are “Q-7, revision 2, 2026-03-01”.`;
    expect(margin(`${FOOT}Q-6, revision 2, 2026-03-01`)).toStrictEqual([
      { ...CHANGE, weight: "wrong", message: told("Q-6, revision 2, 2026-03-01"), effect: EFFECT },
    ]);
    expect(margin(`${FOOT}Q-7, revision 1`)).toStrictEqual([
      { ...CHANGE, weight: "worth knowing", message: told("Q-7, revision 1"), effect: EFFECT },
    ]);
    expect(margin(`${FOOT}2026-02-01`)[0]).toMatchObject({ weight: "wrong", message: told("2026-02-01") });
  });
  test.each<[string, Partial<SavedMargin>, string]>([
    ["Q-7, revision 2, 2026-03-01", {}, "Quote"],
    ["Q-6, revision 2", { at: "header" }, "Quote"],
    ["Q-6, second revision", {}, "Quote"],
    ["Q-6, revision 2", {}, "Office"],
  ])("%j %j of %s: nothing", (text, more, sheet) => expect(margin(FOOT + text, more, sheet)).toEqual([]));
  test("a job without a number names none", () =>
    expect(margin(`${FOOT}Q-6, revision 2`, {}, "Quote", () => undefined)).toEqual([]));
  test("name what stands nowhere else", () => {
    expect(margin("&RZephyr Arcadia Zephyr Total", { at: "header" })).toStrictEqual([
      {
        weight: "doubtful",
        place: top("Quote"),
        message:
          "The header of Quote prints “Zephyr Arcadia Zephyr Total”: Zephyr, Arcadia stand nowhere else in this workbook.",
        effect: "It may name another customer or job than the quote.",
        remedy: "Change the header: Page Layout, Page Setup, Header/Footer.",
      },
    ]);
    expect(margin("Ada Bea Cleo Dora Eva")[0]!.message).toMatch(/: Ada, Bea, Cleo, Dora stand /);
    expect(margin("Zephyr Zephyr Total")).toEqual([]);
    expect(margin("Zephyr Arcadia", {}, "Office")).toEqual([]);
  });
});
