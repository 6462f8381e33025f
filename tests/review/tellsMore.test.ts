/** What is said of what goes out with a file and is not on its pages: each finding whole, by a template of a few cells. */
import { tellsMore } from "../../src/review/rules/tellsMore";
import type { BookCell, BookSheet } from "../../src/workbooks/book";
import type { SavedFile, SavedNote, SavedSheet } from "../../src/workbooks/savedFile";
import { layOut } from "../../src/workbooks/layOut";
import { emptySheet } from "../support/books";
import { fewSheets, ofFile, type Change } from "./fewSheets";
import { found } from "./smallBook";

const of = (change?: Change, saved: Partial<SavedFile> = {}) => ofFile(tellsMore, change, {}, saved);
const onSheet =
  (sheet: string, more: Partial<SavedSheet>): Change =>
  (_, __, file) =>
    void Object.assign(file[sheet]!, more);

test("a file that holds nothing more: nothing; nor without the template", () => {
  expect(of()).toEqual([]);
  expect(ofFile(tellsMore, undefined, { definition: undefined }, { trackedBy: [] })).toEqual([]);
  expect(found(tellsMore, layOut(fewSheets), { definition: fewSheets })).toEqual([]);
});

describe("notes", () => {
  const note = (text: string, more: Partial<SavedNote> = {}, sheet = "Quote") =>
    of(onSheet(sheet, { notes: [{ cell: "B6", text, author: "", ...more }] }));
  const NOTE = {
    place: { sheet: "Quote", cell: "B6" },
    effect: "Whoever gets the file can read it.",
    remedy: "Delete it before the file goes out (Review, Delete).",
  };
  const INSIDE = "It tells cost, margin or other internal words to whoever gets the file.";
  test("on the customer's page", () => {
    expect(note("  call\n  back ")).toStrictEqual([
      { ...NOTE, weight: "worth knowing", message: "A note (comment) at Quote 5/1 says “call back”." },
    ]);
    expect(note("ask for 1,200", { author: "Ada", thread: true })).toStrictEqual([
      {
        ...NOTE,
        weight: "doubtful",
        message: "A threaded comment of Ada at Quote 5/1 says “ask for 1,200”.",
      },
    ]);
    expect(note("our margin")).toStrictEqual([
      {
        ...NOTE,
        weight: "wrong",
        message: "A note (comment) at Quote 5/1 says “our margin”.",
        effect: INSIDE,
      },
    ]);
  });
  test("on the office's, inside words alone, as far as 120 letters are shown", () =>
    expect(note(`Our cost ${"x".repeat(120)}`, {}, "Office")).toStrictEqual([
      {
        ...NOTE,
        weight: "doubtful",
        place: { sheet: "Office", cell: "B6" },
        message: `A note (comment) at Office 5/1 says “Our cost ${"x".repeat(111)}”.`,
        effect: INSIDE,
      },
    ]));
  test("an author's number is no sum", () =>
    expect(note("user 42: call back", { author: "user 42" })[0]!.weight).toBe("worth knowing"));
  test("its place is counted in letters", () =>
    expect(note("call", { cell: "AB12" })[0]!.message).toMatch(" at Quote 11/27 says "));
  test.each<[string, string]>([
    ["call back", "Office"],
    ["Frozen: its cost", "Quote"],
    ["its cost\nFrozen: 5", "Quote"],
    ["  ", "Quote"],
  ])("%j on %s: nothing", (text, sheet) => expect(note(text, {}, sheet)).toEqual([]));
  test("one in which “Frozen” stands further on is a person's", () =>
    expect(note("is it Frozen: yes")).toHaveLength(1));
});

describe("the document's properties", () => {
  const properties = (...all: SavedFile["properties"]) => of(undefined, { properties: all });
  const one = (name: string, text: string, own?: boolean) =>
    properties({ name, text, ...(own && { own: true as const }) });
  const CLEAR = "Clear it: File, Info, Properties, or Inspect Document.";
  const COST = "It tells cost, margin or the lowest price to whoever opens File, Info.";
  const PATH = "A path of the office's disc tells names of folders, and other jobs.";
  test.each<[string, string]>([
    ["title", "a title"],
    ["subject", "a subject"],
    ["creator", "an author"],
    ["lastModifiedBy", "a last author"],
    ["keywords", "a keywords"],
    ["description", "a description"],
    ["category", "a category"],
    ["Company", "a company"],
    ["Manager", "a manager"],
    ["HyperlinkBase", "a hyperlink base"],
    ["status", "a status"],
    ["own Client", "a custom property Client"],
  ])("%s that tells of a margin", (name, called) =>
    expect(one(name.replace("own ", ""), "Our margin", name.startsWith("own "))).toStrictEqual([
      {
        weight: "doubtful",
        message: `The document's properties hold ${called}: “Our margin”.`,
        effect: COST,
        remedy: CLEAR,
      },
    ]),
  );
  test("a path, and a name that tells more than its text", () => {
    expect(one("description", `C:\\${"x".repeat(130)}`)).toStrictEqual([
      {
        weight: "doubtful",
        message: `The document's properties hold a description: “C:\\${"x".repeat(117)}”.`,
        effect: PATH,
        remedy: CLEAR,
      },
    ]);
    expect(one("OurCost", "12", true)[0]!.effect).toBe(COST);
    expect(one("OurCost", "12")).toEqual([]);
  });
  test("the persons who wrote it, each once, and no programs", () =>
    expect(
      properties(
        ...["Ada", "Rigsheet", "openpyxl 3", "Microsoft Office User", "admin"].map((text) => ({
          name: "creator",
          text,
        })),
        { name: "lastModifiedBy", text: "Bea" },
        { name: "lastModifiedBy", text: "Ada" },
        { name: "keywords", text: "Cleo" },
      ),
    ).toStrictEqual([
      {
        weight: "worth knowing",
        message: "The document's properties name an author: Ada, Bea.",
        remedy: "If that is not meant to go out: File, Info, Inspect Document.",
      },
    ]));
  const STRANGE = "it may name another";
  test("names that stand nowhere else", () => {
    expect(one("title", "Zephyr Arcadia Boreas Notus")).toStrictEqual([
      {
        weight: "worth knowing",
        message: "The document's properties hold a title: “Zephyr Arcadia Boreas Notus”.",
        effect: `Zephyr, Arcadia, Boreas stand nowhere in this workbook: ${STRANGE} customer or job, and a PDF takes it over.`,
        remedy: CLEAR,
      },
    ]);
    expect(one("Company", "Zephyr Arcadia")[0]!.effect).toBe(
      `Zephyr, Arcadia stand nowhere in this workbook: ${STRANGE} firm than the letterhead, and a PDF takes it over.`,
    );
  });
  test.each<[string, string, number]>([
    ["title", "Zephyr Total", 0],
    ["subject", "Zephyr Arcadia", 1],
    ["Manager", "Zephyr Arcadia", 0],
    ["Manager", "Zephyr Arcadia Boreas", 1],
    ["keywords", "Zephyr Arcadia Boreas", 0],
    // The template's own title.
    ["title", "Few", 0],
  ])("%s “%s”", (name, text, wanted) => expect(one(name, text)).toHaveLength(wanted));
});

describe("sheets that the template does not have", () => {
  /** Quote has a total of 6 and is the customer's. */
  const beside = (name: string, cells: Record<string, BookCell["value"]> = {}, total: number | string = 6) =>
    of((sheets, book) => {
      sheets["Quote"]!.results["B6"] = total;
      book.names.push({ name: "quote_total", sheet: "Quote", range: "B6" });
      const sheet: BookSheet = {
        ...emptySheet(name),
        cells: Object.fromEntries(Object.entries(cells).map(([at, value]) => [at, { value }])),
      };
      book.sheets.push(sheet);
    });
  const LIKE = {
    weight: "doubtful",
    effect: "Sooner or later the one is printed or sent for the other.",
    remedy: "Delete it, or give it a name of its own.",
  };
  test.each([
    ["quote ", "blanks or capitals"],
    ["Q\u200Buote", "an unseen character (a zero-width space or the like)"],
    ["Quоte", "a Cyrillic letter о that looks like o"],
  ])("called “%s”: %s", (name, by) =>
    expect(beside(name)).toStrictEqual([
      {
        ...LIKE,
        place: { sheet: name, cell: "A1" },
        message: `The sheet “${name}” looks like Quote by its name (${by}), and is another.`,
      },
    ]),
  );
  test("a sheet that was only renamed is not another", () =>
    expect(
      of((sheets) => {
        sheets["Price"]!.name = "price";
      }),
    ).toEqual([]));
  const SECOND = (sheet: string, other: string) => ({
    weight: "doubtful",
    place: { sheet, cell: "A1" },
    message: `The sheet ${sheet} looks like a second quote: its total is ${other}, and that of Quote 6.`,
    effect: "Two totals go out in one file.",
    remedy: "Delete the sheet that does not hold.",
  });
  test("a second quote, by its name or by what it calls itself", () => {
    expect(beside("Quote (2)", { A1: "Totally", D5: " Total incl. tax", E5: 7.5 })).toStrictEqual([
      SECOND("Quote (2)", "7.5"),
    ]);
    expect(beside("Other", { A1: "Quotation 9", A5: "Total", B5: "soon", C7: "TOTAL", D7: 8 })).toStrictEqual(
      [SECOND("Other", "8")],
    );
    expect(beside("Old quote", { A5: "Total", B5: 6.006 })).toHaveLength(1);
  });
  test.each<[string, Record<string, BookCell["value"]>, (number | string)?]>([
    ["the same total", { A5: "Total", B5: 6.004 }],
    ["no total beside", { A5: "Total", B5: "7" }],
    ["another word", { A5: "Subtotal", B5: 7 }],
    ["far to the right", { AB5: "Total", B5: 7, AC5: 7 }],
    ["the quote itself without one", { A5: "Total", B5: 7 }, "?"],
  ])("%s: nothing", (_, cells, total = 6) => expect(beside("Old quote", cells, total)).toEqual([]));
  test("one that is no quote: nothing", () => {
    expect(beside("Other", { A5: "Total", B5: 7 })).toEqual([]);
    expect(beside("Other", { A1: "my quotation", A5: "Total", B5: 7 })).toEqual([]);
  });
});

describe("what the file keeps", () => {
  test("scenarios", () => {
    const scenarios = ["dear", "cheap"].map((name, index) => ({ name, cell: `B${5 + index}` }));
    const KEPT = {
      weight: "doubtful",
      place: { sheet: "Office", cell: "B5" },
      effect: "Data, What-If Analysis shows whoever has the file what else was thought of.",
      remedy: "Delete them in the Scenario Manager before the file goes out.",
    };
    expect(of(onSheet("Office", { scenarios }))).toStrictEqual([
      { ...KEPT, message: "Office keeps 2 scenarios: “dear”, “cheap”." },
    ]);
    expect(of(onSheet("Office", { scenarios: scenarios.slice(0, 1) }))).toStrictEqual([
      { ...KEPT, message: "Office keeps a scenario: “dear”." },
    ]);
  });
  test.each([
    [[], ""],
    [["Ada", "Bea"], ", by Ada, Bea"],
  ])("tracked changes by %j", (trackedBy, by) =>
    expect(of(undefined, { trackedBy })).toStrictEqual([
      {
        weight: "doubtful",
        message: `The file keeps tracked changes (a log of revisions)${by}.`,
        effect: "It holds who changed which figure, and from what.",
        remedy: "Stop sharing the workbook, which clears the log, and save it.",
      },
    ]),
  );
  const chosen = (...names: string[]) =>
    of((_, __, file) => names.forEach((name) => Object.assign(file[name]!, { chosen: true })));
  const CLICK = "Click one sheet's tab, so that it alone is selected, and save it.";
  test("sheets chosen together, the quote among them", () =>
    expect(chosen("Office", "Quote", "Price", "One", "Two")).toStrictEqual([
      {
        weight: "doubtful",
        message: "Office, Quote, Price, One, Two were selected together as a group when the file was saved.",
        effect:
          "Printing the quote prints the office's sheets with it, and what is typed into one goes into all.",
        remedy: CLICK,
      },
    ]));
  test("six of them, two of the office, and one alone", () => {
    expect(chosen("Office", "Quote", "Price", "One", "Two", "Three")[0]!.message).toMatch(
      /^Office, Quote, Price, One, Two and more were /,
    );
    expect(chosen("Office", "Price")).toStrictEqual([
      {
        weight: "worth knowing",
        message: "Office, Price were selected together as a group when the file was saved.",
        effect: "What is typed into one goes into all.",
        remedy: CLICK,
      },
    ]);
    expect(chosen("Quote")).toEqual([]);
  });
});

describe("links", () => {
  const link = (target: string, shown: string | undefined = undefined, cell = "B6:C6") =>
    of((sheets, book, file) => {
      if (shown !== undefined) sheets["Office"]!.cells["B6"] = { value: shown };
      onSheet("Office", { hyperlinks: [{ cell, target }] })(sheets, book, file);
    });
  const AT = { place: { sheet: "Office", cell: "B6" } };
  test("to a file of the office", () => {
    const tail = "x".repeat(130);
    expect(link(`file:///${tail}`)).toStrictEqual([
      {
        ...AT,
        weight: "doubtful",
        message: `A link (hyperlink) at B6:C6 leads to a file of the office: file:///${tail.slice(0, 112)}.`,
        effect: "It works for nobody outside, and its path tells names.",
        remedy: "Remove the link (right-click, Remove Hyperlink).",
      },
    ]);
    for (const target of ["\\\\disc\\jobs", "d:/jobs", "jobs/old.xlsx"]) expect(link(target)).toHaveLength(1);
  });
  const OTHER = {
    ...AT,
    weight: "worth knowing",
    effect: "A mail gateway may have put its own address, which follows who clicks, into its place.",
    remedy: "Enter the link again, or remove it.",
  };
  test("to another place than its text says", () => {
    expect(link("HTTPS://Gate.example:8080/x", "See www.Maker.example today")).toStrictEqual([
      {
        ...OTHER,
        message: "A link (hyperlink) at B6:C6 leads to gate.example, and its text says maker.example.",
      },
    ]);
    expect(link("https://gate.example/?a=1&URL=maker", "see here", "B6")).toStrictEqual([
      { ...OTHER, message: "A link (hyperlink) at B6 leads to gate.example." },
    ]);
    expect(link("https://gate.example/?u=maker")).toHaveLength(1);
  });
  test.each<[string, string | undefined]>([
    ["https://www.maker.example/a", "www.maker.example"],
    ["https://shop.maker.example", "maker.example"],
    ["https://maker.example/a", "their page"],
    ["https://maker.example/url=a", undefined],
    ["mailto:a@maker.example", "other.example"],
    ["https://gate.example", `${"x ".repeat(150)}maker.example`],
  ])("%s under %j: nothing", (target, shown) => expect(link(target, shown)).toEqual([]));
});
