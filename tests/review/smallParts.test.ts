/** What the rules stand on, each by its own comment; figures by hand, prices by the ranges that the table states (common practice, no source). */
import { isBeyondUs, withStoredWhereBeyondUs } from "../../src/review/beyondUs";
import { namesOfBoth, pairedCells } from "../../src/review/carriedOver";
import { conditionOf } from "../../src/review/conditionOf";
import { isSameSize, metresIn } from "../../src/review/dishFitting";
import { areCopies, apartFromFloor, fedLike, groupsOf, linesOf } from "../../src/review/floors";
import { strangeNames } from "../../src/review/knownWords";
import { median } from "../../src/review/median";
import { middleOf } from "../../src/review/middleOf";
import { shownNumber } from "../../src/review/numberFormat";
import { onlyOne } from "../../src/review/onlyOne";
import { allowed, learnedRows, type Learned } from "../../src/review/ranges/learned";
import { sizeOf } from "../../src/review/ranges/measures";
import { usualPrice } from "../../src/review/ranges/partPrices";
import { quoteRanges } from "../../src/review/ranges/quoteRanges";
import { lettersApart, nearest } from "../../src/review/spelling";
import { tellsInside, tellsMoney, tellsPath } from "../../src/review/tellsInside";
import { withChanges } from "../../src/review/withChanges";
import type { Book, BookSheet } from "../../src/workbooks/book";
import { bookOf, columns, emptySheet } from "../support/books";

test("the middle", () => {
  expect([median([3]), median([10, 2, 9]), median([10, 2, 9, 4])]).toEqual([3, 9, 6.5]);
  expect(middleOf([1, 2, 30])).toBe(2);
  expect(middleOf([1, "a", "a", 3])).toBe(2);
  expect(middleOf([1, "a", "a", "b"])).toBe("a");
  expect(middleOf(["b", "a", "b"])).toBe("b");
  expect(middleOf([])).toBeUndefined();
});

test("the only one of the first list that holds no other", () => {
  expect(onlyOne(["a", "a"])).toBe("a");
  expect(onlyOne(["a", "b"], [], ["c"], ["d"])).toBe("c");
  expect(onlyOne(["a", "b"], [])).toBeUndefined();
});

describe("a condition of the template", () => {
  const book = columns({
    kind: ["splitter", "Tap", "", "amplifier"],
    place: ["in", "in", "out", ""],
    unit: ["ft"],
    count: [0, 2, "", { error: "#N/A" }],
  });
  const rows = (condition: true | string | undefined): boolean[] => {
    const holds = conditionOf(condition, book);
    return [0, 1, 2, 3].map((index) => holds(index));
  };
  test.each<[true | string | undefined, boolean[]]>([
    [true, [true, true, true, true]],
    [undefined, [false, false, false, false]],
    ['kind="tap"', [false, true, false, false]],
    ['kind<>"tap"', [true, false, true, true]],
    ['kind=""', [false, false, true, false]],
    ['kind<>""', [true, true, false, true]],
    ['(kind="splitter")*(place="in")', [true, false, false, false]],
    ['(kind<>"")*(place="in")*(kind<>"tap")', [true, false, false, false]],
    ['((kind="tap")+(place="out")>0)', [false, true, true, false]],
    ['(kind="tap")+(kind="splitter")', [true, true, false, false]],
    // A field has one cell for every row.
    ['unit="ft"', [true, true, true, true]],
    ["IFERROR(count>0,TRUE)", [false, true, false, true]],
    // What it cannot read accuses no row.
    ["IFERROR(count>0,FALSE)", [false, false, false, false]],
    ["IFERROR(count>1,TRUE)", [false, false, false, false]],
    ["SUM(count)>0", [false, false, false, false]],
    ['kind>"a"', [false, false, false, false]],
    ["kind=3", [false, false, false, false]],
    ["((", [false, false, false, false]],
  ])("%s", (condition, wanted) => expect(rows(condition)).toEqual(wanted));
});

describe("floors that are copies of each other", () => {
  const of = (outlets: string[], from: string[] = outlets.map(() => "")) => columns({ outlets, from });
  const named = { name: "outlets" } as never;
  const house = [1, 2, 3, 4].flatMap((floor) => ["01", "02", "03"].map((room) => `${floor}-${room}`));

  test("a name's floor, and the rest", () => {
    expect(
      linesOf(of(["B2-4", "10-06-1", "lobby", "3", " 2.07 "]), named).map(({ floor, rest }) => [floor, rest]),
    ).toEqual([
      ["2", "b*-4"],
      ["10", "*-06-1"],
      ["2", "*.07"],
    ]);
    expect(
      [...groupsOf(linesOf(of(["1-1", "2-1", "2-2"]), named))].map(([rest, lines]) => [rest, lines.length]),
    ).toEqual([
      ["*-1", 2],
      ["*-2", 1],
    ]);
    expect([
      apartFromFloor("B1-2"),
      apartFromFloor("b2-2"),
      apartFromFloor("Lobby "),
      apartFromFloor(undefined),
    ]).toEqual(["b*-2", "b*-2", "lobby", ""]);
  });

  test("twelve rows, of which four in five have their like on two other floors", () => {
    const are = (outlets: string[]): boolean => areCopies(linesOf(of(outlets), named));
    expect(are(house)).toBe(true);
    expect(are(house.slice(1))).toBe(false);
    // Two of twelve alone: 10 of 12 are more than four in five; three of fifteen are just that, four of sixteen not.
    expect(are([...house.slice(0, 12), "1-a", "1-b", "1-c"])).toBe(true);
    expect(are([...house, "1-a", "1-b", "1-c", "1-d"])).toBe(false);
    // On one other floor only.
    expect(are([1, 2].flatMap((floor) => Array.from({ length: 6 }, (_, room) => `${floor}-${room}`)))).toBe(
      false,
    );
  });

  test("fed as its likes on other floors are, where two of them agree", () => {
    const fed = (from: string[]): string | undefined => {
      const book = of(["1-01", "2-01", "3-01", "4-01"], from);
      const lines = linesOf(book, named);
      return fedLike(book, { name: "from" } as never, lines, lines[3]!);
    };
    expect(fed(["H1", "H2", "H3", ""])).toBe("H4");
    expect(fed(["H1", "H2", "", ""])).toBe("H4");
    expect(fed(["H1", "", "", ""])).toBeUndefined();
    expect(fed(["H1", "H2", "U3", ""])).toBeUndefined();
    expect(fed(["H7", "H7", "H7", ""])).toBeUndefined();
  });
});

test.each([
  ["dish 0.9 m with mount", 0.9],
  ["Spiegel 85 cm", 0.85],
  ["parabole 1,2 m", 1.2],
  ["dish", undefined],
  ["dish 90 mm", undefined],
])("%s tells %s m", (name, metres) => expect(metresIn(name)).toBe(metres));

test("dishes of 5 cm more or less are of one size", () =>
  expect([
    isSameSize(0.9, 0.85),
    isSameSize(0.9, 0.95),
    isSameSize(0.9, 0.84),
    isSameSize(0.9, 0.96),
  ]).toEqual([true, true, false, false]));

test("names that stand nowhere in a workbook", () => {
  const book: Book = bookOf({
    ...emptySheet("Price"),
    cells: { A1: { value: "Harbour House" }, A2: { value: 5 } },
    results: { B1: "Pension Adler", B2: 3 },
  });
  expect(strangeNames(book, "Quotation for Harbour HOUSE and Adler, Price: Miller's Inn")).toEqual([
    "Miller's",
    "Inn",
  ]);
  expect(strangeNames(book, "all in small letters")).toEqual([]);
});

describe("words of the office", () => {
  test.each([
    "our cost",
    "CostPrice",
    "Margin 22 %",
    "mark-up",
    "markup",
    "we bought from a friend",
    "room to go",
    "we come down to 90",
    "lowest offer",
    "haggling",
    "internal use",
    "office only",
    "Confidential",
    "min price",
  ])("%s", (text) => expect(tellsInside(text)).toBe(true));
  test.each(["costume", "marginal", "the room", "internal walls", "come down the stairs", "price"])(
    "%s tells nothing",
    (text) => expect(tellsInside(text)).toBe(false),
  );
  test("money and paths", () => {
    expect(["12.50", "1'200", "5 %", "5%"].map(tellsMoney)).toEqual([true, true, true, true]);
    expect(["5", "none", "a1"].map(tellsMoney)).toEqual([false, false, false]);
    expect(
      ["C:\\jobs\\a", "see D:/x", "\\\\server\\share", "file:///a", "old.xlsx", "a.xls", "b.XLSM"].map(
        tellsPath,
      ),
    ).toEqual(Array(7).fill(true));
    expect(["a: b", "AC:DC", "x/y", "xlsx", "page 1:2"].map(tellsPath)).toEqual(Array(5).fill(false));
  });
});

test("what is stored where ours cannot compute counts", () => {
  const of = (a: unknown, b: unknown): boolean => isBeyondUs(a as never, b as never);
  const name = { error: "#NAME?" };
  expect([of(5, name), of("x", { error: "#BAD_EXPR" })]).toEqual([true, true]);
  expect([of(undefined, name), of(name, name), of(5, 6), of(5, { error: "#N/A" })]).toEqual([
    false,
    false,
    false,
    false,
  ]);
  const book = (results: BookSheet["results"], more: BookSheet[] = []): Book =>
    bookOf({ ...emptySheet("A"), results }, ...more);
  const computed = book({ A1: name, A2: 7 } as never, [{ ...emptySheet("B"), results: { A1: 2 } }]);
  const shown = withStoredWhereBeyondUs(book({ A1: 5, A2: 6 }), computed);
  expect(shown.sheets.map(({ results }) => results)).toEqual([{ A1: 5, A2: 7 }, { A1: 2 }]);
});

test("changes leave looks and notes, and all other cells and books, as they are", () => {
  const before = bookOf(
    {
      ...emptySheet("A"),
      cells: { A1: { value: 1, look: 2, note: "n" }, A2: { formula: "A1" }, A3: { value: 9 } },
    },
    { ...emptySheet("B"), cells: { A1: { value: 1 } } },
  );
  const at = (cell: string, sheet = "A") => ({ sheet, cell });
  const after = withChanges(before, [
    { place: at("A1"), value: 0 },
    { place: at("A2"), formula: "A3" },
    { place: at("A3") },
    { place: at("A4"), value: "new" },
    { place: at("A1", "none"), value: 3 },
  ]);
  expect(after.sheets[0]!.cells).toEqual({
    A1: { value: 0, look: 2, note: "n" },
    A2: { formula: "A3" },
    A3: {},
    A4: { value: "new" },
  });
  expect(after.sheets[1]).toBe(before.sheets[1]);
  expect(before.sheets[0]!.cells.A1!.value).toBe(1);
});

describe("two books with the same names", () => {
  const book = (ranges: Readonly<Record<string, string>>, results = {}): Book => ({
    ...bookOf({ ...emptySheet("S"), results }),
    names: Object.entries(ranges).map(([name, range]) => ({ name, sheet: "S", range })),
  });
  test("share those that are as wide", () => {
    const one = book({ a: "A1:A3", b: "B1:C3", c: "D1" }, { A1: 5 });
    const other = book({ a: "C2:C9", b: "D1:D3", d: "E1" });
    const both = namesOfBoth(one, other);
    expect(both.map(({ name }) => name)).toEqual(["a"]);
    expect(both[0]).toMatchObject({
      from: { sheet: "S", zone: { top: 0, left: 0, bottom: 2, right: 0 }, results: { A1: 5 } },
      to: { sheet: "S", zone: { top: 1, left: 2, bottom: 8, right: 2 }, results: {} },
    });
    expect(namesOfBoth(one, { ...other, sheets: [] })).toEqual([]);
  });
  test("cell by cell as far as both reach", () => {
    const zone = (top: number, left: number, bottom: number, right: number) => ({ top, left, bottom, right });
    expect([...pairedCells(zone(0, 0, 1, 1), zone(4, 2, 9, 3))]).toEqual([
      ["A1", "C5"],
      ["B1", "D5"],
      ["A2", "C6"],
      ["B2", "D6"],
    ]);
    expect([...pairedCells(zone(0, 0, 5, 0), zone(2, 1, 2, 3))]).toEqual([["A1", "B3"]]);
  });
});

describe("spelling", () => {
  test.each([
    ["", "abc", 3],
    ["abc", "", 3],
    ["abcd", "acbd", 1],
    ["abcd", "badc", 2],
    ["kitten", "sitting", 3],
    ["a".repeat(61), "a".repeat(61), 10],
  ])("%s and %s", (a, b, apart) => expect(lettersApart(a, b, 9)).toBe(apart));
  test("of sixty letters are compared, and no farther than is asked", () => {
    expect(lettersApart("a".repeat(60), "a".repeat(60), 9)).toBe(0);
    expect(lettersApart("abc", "abcdef", 2)).toBe(3);
  });
  // A quarter of the letters may be off, one in any word and four at the most.
  test.each([
    ["abc", ["abd"], "abd"],
    ["abc", ["ade"], undefined],
    ["abcdefg", ["abcdexy"], undefined],
    ["abcdefgh", ["abcdefxy"], "abcdefxy"],
    ["x".repeat(20) + "abcd", ["x".repeat(20) + "efgh"], "x".repeat(20) + "efgh"],
    ["x".repeat(24) + "abcde", ["x".repeat(24) + "fghij"], undefined],
    ["Trunk", ["trunk"], undefined],
    ["trunk1", ["trunk2", "trunk"], undefined],
    ["trunnk", ["drop", "Trunk"], "Trunk"],
  ])("%s of %j", (word, among, wanted) => expect(nearest(word, among)).toBe(wanted));
});

// ECMA-376 part 1, 18.8.31, by hand.
test.each<[string, number, string]>([
  ["0.00;(0.00)", -2.5, "(2.50)"],
  ["[<5]0.0;[<10]0.00;0", 4, "4.0"],
  ["[<5]0.0;[<10]0.00;0", 7, "7.00"],
  ["[<5]0.0;[<10]0.00;0", 12, "12"],
  ["[<=5]0.0;0", 5, "5.0"],
  ["[>=5]0.0;0", 5, "5.0"],
  ["[>5]0.0;0", 5, "5"],
  ["[<5]0.0;0", 5, "5"],
  ["[=5]0.0;0", 5, "5.0"],
  ["[<>5]0.0;0", 5, "5"],
  ["0000", 42, "0042"],
  [".00", 0.5, ".50"],
  ["0.0%", 1.5, "150.0%"],
  ["#,##0", 999, "999"],
  ["#,##0", 1234567, "1,234,567"],
  ["#,##0", -1234, "-1,234"],
  ['0 "pcs"', 3, "3 pcs"],
  ["0\\m", 3, "3m"],
  ["@", 3, "3"],
  ["General", 0.1 + 0.2, "0.3"],
  ["yyyy", 46328, "2026"],
  ["yy", 46328, "26"],
  ["mm", 46328, "11"],
  ["m/d", 46328, "11/2"],
  ["mmm d, yyyy", 46328, "Nov 2, 2026"],
  ["dd.mm.yyyy", 46328, "02.11.2026"],
  ["d", 2_958_466, "########"],
  ["yyyy", -1, "########"],
  ["yyyy", 2_958_465, "9999"],
])("%s shows %d as “%s”", (format, value, text) => expect(shownNumber(format, value).text).toBe(text));

test("the parts of a shown number", () => {
  expect(shownNumber('"EUR" 0.00', 5)).toMatchObject({
    beside: "EUR",
    currency: "",
    decimals: 2,
    kind: "number",
  });
  expect(shownNumber("€ 0.0%", 5)).toMatchObject({
    currency: "€",
    percent: true,
    decimals: 1,
    exponent: false,
  });
  expect(shownNumber("[$CHF-807] 0", 5)).toMatchObject({ currency: "CHF", percent: false });
  expect(shownNumber("0.0E+00", 5)).toMatchObject({ exponent: true });
  expect(shownNumber("General", 1.25)).toMatchObject({ decimals: 2 });
  expect(shownNumber("h:mm", 0.5)).toMatchObject({ kind: "date", shows: new Set(["time"]) });
  expect(shownNumber("yyyy-mm-dd", 46328).shows).toEqual(new Set(["year", "month", "day"]));
  expect(shownNumber("mm:ss", 0.5).shows).toEqual(new Set(["time"]));
  expect(shownNumber("ddd", 46328).shows).toEqual(new Set());
  expect([shownNumber("0,,", 5e6).thousandsAway, shownNumber("0.0,", 5e6).thousandsAway]).toEqual([2, 1]);
  expect(shownNumber("0".repeat(256), 5).text).toBe("5");
});

describe("what a part usually costs", () => {
  const HEAD = [30, 1200];
  const CLIP = [0.02, 40];
  const LEAD = [0.5, 30];
  const PARTING = [1.5, 90];
  const PLATE = [1.5, 60];
  const PLUG = [0.1, 15];
  const EARTH = [1, 60];
  const END = [0.2, 15];
  const DISH = [20, 900];
  const METRE = [0.1, 3.2];
  test.each<[string, number[] | undefined]>([
    ["Head unit, 8 bands", HEAD],
    ["head-unit", HEAD],
    ["headunit", HEAD],
    ["Kopfstelle", HEAD],
    ["unité de tête", HEAD],
    ["cabecera", HEAD],
    ["cable clips", CLIP],
    ["Schellen", CLIP],
    ["receiver lead 2 m", LEAD],
    ["Anschlusskabel", LEAD],
    ["4-way splitter", PARTING],
    ["tap 12 dB", PARTING],
    ["répartiteur", PARTING],
    ["Abzweiger", PARTING],
    ["tape", undefined],
    ["wall plate", PLATE],
    ["wallplate", PLATE],
    ["Antennendose", PLATE],
    ["toma de pared", PLATE],
    ["compression connector", PLUG],
    ["Stecker", PLUG],
    ["earthing block", EARTH],
    ["mise à la terre", EARTH],
    ["end resistor", END],
    ["terminator", END],
    ["Abschlußwiderstand", END],
    ["Dish 0.9 m", DISH],
    ["Spiegel 85 cm", DISH],
    ["dishes", undefined],
    ["dish mount", undefined],
    ["dish cable", METRE],
    ["coax", METRE],
    ["Kabel", METRE],
    ["cable, reel of 100 m", undefined],
    ["cable 100 m", undefined],
    ["cable 100m", undefined],
    ["cable 7 mm", METRE],
    ["ladder", undefined],
  ])("%s", (part, range) => {
    const found = usualPrice(part);
    expect(found && [found.low, found.high]).toEqual(range);
  });
});

describe("ranges", () => {
  const learned = (more: Partial<Learned>): Learned => ({
    name: "cables_price",
    what: "Price",
    of: "",
    unit: "EUR",
    low: 10,
    middle: 12,
    high: 20,
    quotes: 3,
    ...more,
  });
  test.each<[string, Partial<Learned>, number, number]>([
    ["a quarter beyond", {}, 8, 25],
    ["of a whole job half as much again", { name: "job_price_per_outlet", low: 15 }, 10, 30],
    ["of levels 3 dB", { unit: "dBµV" }, 7, 23],
    ["of temperatures 3", { unit: "°C", low: -15, high: 5 }, -18, 8],
    ["of what may be 0 or less by as much", { low: 0 }, -3, 23],
  ])("%s", (_, more, low, high) => expect(allowed(learned(more))).toEqual({ low, high }));

  test("jobs of like size, within a factor of four", () =>
    expect([1, 3, 4, 15, 16, 63, 64].map(sizeOf)).toEqual([
      "jobs of 1 to 3 outlets",
      "jobs of 1 to 3 outlets",
      "jobs of 4 to 15 outlets",
      "jobs of 4 to 15 outlets",
      "jobs of 16 to 63 outlets",
      "jobs of 16 to 63 outlets",
      "jobs of 64 to 255 outlets",
    ]));

  test("rows that a person left half filled say nothing", () => {
    const row = { known: "a", what: "A", of: "x", unit: "m", low: 1, middle: 2, high: 4, quotes: 5 };
    expect(learnedRows([row, { ...row, keep: "yes" }, { ...row, keep: "no" }])).toEqual([
      { name: "a", what: "A", of: "x", unit: "m", low: 1, middle: 2, high: 4, quotes: 5 },
      { name: "a", what: "A", of: "x", unit: "m", low: 1, middle: 2, high: 4, quotes: 5, keep: "yes" },
      { name: "a", what: "A", of: "x", unit: "m", low: 1, middle: 2, high: 4, quotes: 5 },
    ]);
    expect(learnedRows([{ known: "a", low: 1, high: 4 }])).toEqual([
      { name: "a", what: "", of: "", unit: "", low: 1, middle: 2.5, high: 4, quotes: 0 },
    ]);
    expect(learnedRows([{ known: "a", low: 3, high: 3 }])).toHaveLength(1);
    expect(
      learnedRows([
        { low: 1, high: 4 },
        { known: "a", high: 4 },
        { known: "a", low: 1 },
        { known: "a", low: 5, high: 4 },
        { known: "a", low: "1", high: 4 },
      ]),
    ).toEqual([]);
  });

  const at = (rows: ReturnType<typeof quoteRanges>, start: RegExp) =>
    rows.find(({ ratio }) => start.test(String(ratio)))!;
  test("a quote's are what is usual, in its unit of length and in money like the euro", () => {
    const [metres, feet, far] = [
      quoteRanges([], 24, false, "EUR"),
      quoteRanges([], 24, true, "USD"),
      quoteRanges([], 24, false, "JPY"),
    ] as const;
    const each = metres.map(({ low, high }) => [low, high]);
    expect(each).toContainEqual([40, 1500]);
    expect(each).toContainEqual([4, 80]);
    // 4 m are 13.1 ft and 80 m 262; a metre's price of 0.1 to 4 is 0.0305 to 1.22 a foot.
    expect(feet.map(({ low, high }) => [low, high])).toContainEqual([13.1, 262]);
    expect(feet.map(({ low, high }) => [low, high])).toContainEqual([0.0305, 1.22]);
    expect(far.filter(({ low }) => low === undefined)).toHaveLength(2);
    expect(metres.filter(({ basis }) => basis === "common practice, no source")).toHaveLength(7);
    expect(metres.filter(({ basis }) => basis === "EN 50607: 32 bands at most")).toHaveLength(1);
    expect(quoteRanges([], 24, false).filter(({ low }) => low === undefined)).toEqual([]);
  });
  test("or learned, of jobs of like size and of three quotes at least", () => {
    const price = (more: Partial<Learned>) =>
      quoteRanges(
        [
          learned({
            name: "job_price_per_outlet",
            of: "jobs of 16 to 63 outlets",
            low: 150,
            high: 300,
            ...more,
          }),
        ],
        24,
        false,
        "JPY",
      )[0]!;
    expect(price({})).toMatchObject({
      low: 100,
      high: 450,
      basis: "learned from 3 accepted quotes, jobs of 16 to 63 outlets",
    });
    expect(price({ of: "", quotes: 4 }).basis).toBe("learned from 4 accepted quotes");
    expect(price({ quotes: 2 }).low).toBeUndefined();
    expect(price({ of: "jobs of 4 to 15 outlets" }).low).toBeUndefined();
    // Minutes are told in hours; labour's share of the cost as that of the rest: 1 − 0.9 and 1 − 0.2.
    const minutes = quoteRanges(
      [learned({ name: "job_minutes_per_outlet", low: 90, high: 120 })],
      undefined,
      false,
    );
    expect(minutes.map(({ low, high }) => [low, high])).toContainEqual([1, 3]);
    const share = quoteRanges([learned({ name: "job_labour_share", low: 0.3, high: 0.6 })], 0, false);
    expect(share.map(({ low, high }) => [low, high])).toContainEqual([0.1, 0.8]);
    expect(at(share, /./)).toBeDefined();
  });
});
