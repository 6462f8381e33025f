/** What is said of what stands on a page and cannot be read there, by a template of a few cells. */
import { unreadable } from "../../src/review/rules/unreadable";
import type { BookResult, Look } from "../../src/workbooks/book";
import { found } from "./smallBook";
import { fewSheets, ofFile, type Change } from "./fewSheets";

const of = (change: Change, more?: Parameters<typeof ofFile>[2]) => ofFile(unreadable, change, more);
/** Quote has words in A5 and A6, a net in B5 and a total in B6. */
const looking =
  (look: Look, at: readonly string[] = ["B6"], value: BookResult = 6): Change =>
  ({ Quote }, book) => {
    for (const cell of at) {
      Quote!.cells[cell] = { ...Quote!.cells[cell], look: book.looks.length };
      if (cell.startsWith("B")) Quote!.results[cell] = value;
    }
    book.looks.push(look);
  };

describe("looks", () => {
  const B6 = { sheet: "Quote", cell: "B6" };
  const COLOUR = {
    weight: "wrong",
    place: B6,
    effect: "It counts and cannot be read, on screen or on paper.",
    remedy: "Give it a dark colour of font again, on a light fill.",
  };
  const unseen = (on: string) =>
    `cannot be seen: its letters have the colour of the fill behind them (${on}).`;
  test.each<[Look, object]>([
    [{ color: "FFFFFF" }, { ...COLOUR, message: `Quote 5/1 (B6) ${unseen("white on white")}` }],
    [{ fill: "000000" }, { ...COLOUR, message: `Quote 5/1 (B6) ${unseen("000000 on 000000")}` }],
    [
      { size: 4.9 },
      {
        weight: "doubtful",
        place: B6,
        message: "Quote 5/1 (B6) stands in a size of 4.9 point: too small to read.",
        effect: "It is on the page and nobody reads it.",
        remedy: "Give it the usual size again (10 point).",
      },
    ],
    [
      { odd: { symbols: "Signs" } },
      {
        weight: "wrong",
        place: B6,
        message: "Quote 5/1 (B6) stands in the symbol font Signs: its letters and digits are pictures.",
        effect: "Nobody can read it.",
        remedy: "Give it a font of letters again.",
      },
    ],
    [
      { odd: { repeats: true } },
      {
        weight: "wrong",
        place: B6,
        message: "Quote 5/1 (B6) is aligned to fill: it is repeated until the cell is full.",
        effect: "A figure that is repeated reads as another, longer one.",
        remedy: "Set the horizontal alignment to right again (for words, left).",
      },
    ],
    [
      { odd: { struck: true } },
      {
        weight: "doubtful",
        place: B6,
        message: "Quote 5/1 (B6) is struck through.",
        effect: "A reader takes it as withdrawn; it counts all the same.",
        remedy: "Take the strike-through away, or the figure out of the job.",
      },
    ],
    [
      { odd: { turned: 90 } },
      {
        weight: "doubtful",
        place: B6,
        message: "Quote 5/1 (B6) is turned by 90 degrees: rotated, it can hardly be read in its row.",
        effect: "Of a figure in a low row only a part is seen.",
        remedy: "Set the orientation to 0 degrees again.",
      },
    ],
  ])("%j", (look, finding) => expect(of(looking(look))).toStrictEqual([finding]));
  test.each([
    [91, "-1 degrees"],
    [135, "-45 degrees"],
    [255, "standing its letters one above the other"],
  ])("turned by %d", (turned, told) =>
    expect(of(looking({ odd: { turned } }))[0]!.message).toMatch(` is turned by ${told}: `),
  );
  test.each<[string, string, boolean]>([
    // 1.05 / (0.7011 + 0.05) = 1.398 and 1.05 / (0.6939 + 0.05) = 1.411
    ["DADADA", "FFFFFF", true],
    ["D9D9D9", "FFFFFF", false],
    ["FFFFFF", "DADADA", true],
    // 1.05 / (0.7152 + 0.05) = 1.37; red and blue are darker on white.
    ["00FF00", "FFFFFF", true],
    ["FF0000", "FFFFFF", false],
    ["0000FF", "FFFFFF", false],
    ["FF00FF", "FFFFFF", false],
    // On black (0.0722 + 0.05) / 0.05 = 2.4, (0.0722 · 0.1329 + 0.05) / 0.05 = 1.19 and (0.003 + 0.05) / 0.05 = 1.06.
    ["0000FF", "000000", false],
    ["000066", "000000", true],
    ["0A0A0A", "000000", true],
    // (0.0232 + 0.05) / 0.05 = 1.46, and of 1A 1.21
    ["2A2A2A", "000000", false],
    ["1A1A1A", "000000", true],
    ["80FFFFFF", "FFFFFF", true],
  ])("%s on %s", (color, fill, told) =>
    expect(of(looking({ color, fill })).map(({ message }) => message)).toEqual(
      told ? [`Quote 5/1 (B6) ${unseen(color === fill ? "white on white" : `${color} on ${fill}`)}`] : [],
    ),
  );
  test.each<[Look]>([[{ size: 5 }], [{ odd: { shrinks: true } }], [{ odd: {} }], [{ bold: true }]])(
    "%j: nothing",
    (look) => expect(of(looking(look))).toEqual([]),
  );
  test("several cells are told once, at the first figure", () => {
    const struck: Look = { odd: { struck: true } };
    expect(of(looking(struck, ["A5", "B5", "B6"])).map(({ place, message }) => [place, message])).toEqual([
      [{ sheet: "Quote", cell: "B5" }, "Quote 4/1 (B5) is struck through, and 2 more cells of this sheet."],
    ]);
    expect(of(looking(struck, ["A5", "A6"])).map(({ message }) => message)).toEqual([
      "Quote 4/0 (A5) is struck through, and 1 more cell of this sheet.",
    ]);
  });
  test("words without a label of their own are told by themselves, as far as 60 letters", () => {
    const labelAt = () => "column A";
    const words: Change = (sheets, book, file) => {
      sheets["Quote"]!.cells["A6"]!.value = "T".repeat(70);
      looking({ size: 1 }, ["A6"])(sheets, book, file);
    };
    expect(of(words, { labelAt })[0]!.message).toMatch(`“${"T".repeat(60)}” stands in a size of 1 point`);
    expect(of(looking({ size: 1 }), { labelAt })[0]!.message).toMatch(/^column A \(B6\) stands /);
  });
  test("a blank, and a cell that the template does not have: nothing", () => {
    expect(of(looking({ size: 1 }, ["B6"], ""))).toEqual([]);
    expect(
      of((sheets, book, file) => {
        sheets["Quote"]!.cells["C9"] = { value: 5 };
        looking({ size: 1 }, ["C9"])(sheets, book, file);
      }),
    ).toEqual([]);
  });
  test("is not looked at without the template, of an earlier version, or without a file", () => {
    const small = looking({ size: 1 });
    expect(of(small, { definition: undefined })).toEqual([]);
    expect(of(small, { earlier: { others: [] } })).toEqual([]);
    expect(
      of((sheets, book, file) => {
        small(sheets, book, file);
        expect(found(unreadable, book, { definition: fewSheets })).toEqual([]);
      }),
    ).toHaveLength(1);
  });
});

describe("a column made too narrow", () => {
  const narrow = (width: number, look: Look = {}, more: Change = () => undefined) =>
    of((sheets, book, file) => {
      looking(look, ["B6"], 1_234_567.891)(sheets, book, file);
      sheets["Quote"]!.columnWidths[1] = width;
      more(sheets, book, file);
    });
  const NARROW = {
    weight: "wrong",
    place: { sheet: "Quote", cell: "B6" },
    message: "Column B is 6.9 wide, too narrow for a figure: Quote 5/1 and what is like it shows ####.",
    expected: "A width of 38.",
    effect: "Page and screen show no figure there.",
    remedy: "Make the column wider: double-click the edge of its head.",
  };
  test("for a figure", () => {
    expect(narrow(6.9)).toStrictEqual([NARROW]);
    expect(narrow(6.9, { odd: { shrinks: true } })).toStrictEqual([
      { ...NARROW, message: NARROW.message.replace("####", "####, or shrinks to a few points") },
    ]);
  });
  test("for two, of which the bold one is told", () => {
    const two: Change = (sheets, book, file) => {
      sheets["Quote"]!.results["B5"] = 7_654_321;
      looking({ bold: true }, ["B6"], 1_234_567)(sheets, book, file);
    };
    expect(narrow(6, {}, two)).toMatchObject([
      {
        place: { cell: "B6" },
        message: "Column B is 6 wide, too narrow for 2 figures: Quote 5/1 and what is like it shows ####.",
      },
    ]);
    const plain: Change = ({ Quote }) => void (Quote!.results["B5"] = 7_654_321);
    expect(narrow(6, {}, plain)).toMatchObject([{ place: { cell: "B5" } }]);
  });
  test.each<[number, Look, number]>([
    // Seven digits; bold ones are wider by 7 %; points and commas are half a digit.
    [7, {}, 0],
    [7.48, { bold: true }, 1],
    [7.5, { bold: true }, 0],
    [13.9, { size: 20 }, 1],
    [14, { size: 20 }, 0],
    [10.4, { format: "#,##0.00" }, 1],
    [10.5, { format: "#,##0.00" }, 0],
  ])("%d wide, %j", (width, look, wanted) => expect(narrow(width, look)).toHaveLength(wanted));
  test("a hidden one, one as wide as the template's, words, or a cell that is not the template's: nothing", () => {
    const hide: Change = ({ Quote }) => void (Quote!.hiddenColumns = [1]);
    const words: Change = ({ Quote }) => void (Quote!.results["B6"] = "a long word");
    const beside: Change = ({ Quote }) => {
      Quote!.results["B6"] = 1;
      Quote!.cells["B9"] = { value: 12_345 };
    };
    expect([
      narrow(3, {}, hide),
      narrow(38, { size: 100 }),
      narrow(3, {}, words),
      narrow(3, {}, beside),
    ]).toEqual([[], [], [], []]);
    expect(narrow(37.9, { size: 100 })).toHaveLength(1);
  });
});

describe("a row made too low", () => {
  const low = (height: number, sheet = "Quote", more: Change = () => undefined) =>
    of((sheets, book, file) => {
      sheets[sheet]!.rowHeights[5] = height;
      more(sheets, book, file);
    });
  const total: Change = ({ Quote }) => {
    Quote!.results["B6"] = 6;
    Quote!.cells["C6"] = { value: "gross" };
  };
  test("is told at its figure", () => {
    expect(low(6.9, "Quote", total)).toStrictEqual([
      {
        weight: "wrong",
        place: { sheet: "Quote", cell: "B6" },
        message: "Row 6 has a height of 6.9 points: what stands there cannot be read.",
        effect: "It counts without being seen.",
        remedy: "Give the row its usual height again: double-click the edge below its number.",
      },
    ]);
    expect(low(1, "Office")).toMatchObject([{ weight: "doubtful", place: { sheet: "Office", cell: "A6" } }]);
  });
  test("high enough, hidden, or empty: nothing", () => {
    const hide: Change = ({ Quote }) => void (Quote!.hiddenRows = [5]);
    const empty: Change = ({ Quote }) => void (Quote!.cells["A6"]!.value = " ");
    expect([low(7), low(1, "Quote", hide), low(1, "Quote", empty)]).toEqual([[], [], []]);
  });
});

describe("merged cells", () => {
  const merged = (ranges: string[], more: Change = () => undefined, sheet = "Quote") =>
    of((sheets, book, file) => {
      sheets[sheet]!.merged = ranges;
      Object.assign(sheets["Quote"]!.results, { B5: 3, B6: { error: "#VALUE!" } });
      more(sheets, book, file);
    });
  test("cover what stands beside and below", () => {
    expect(merged(["A5:B6"])).toStrictEqual([
      {
        weight: "wrong",
        place: { sheet: "Quote", cell: "B5" },
        message: "A5:B6 is merged into one cell, which covers Quote 4/1 (B5) and 2 more.",
        effect: "What is covered counts and is not shown.",
        remedy: "Take the merging back (Home, Merge & Center).",
      },
    ]);
    expect(merged(["A6:B6"])[0]!.message).toBe("A6:B6 is merged into one cell, which covers Quote 5/1 (B6).");
    expect(merged(["A5:A6"], undefined, "Office")[0]!.weight).toBe("doubtful");
  });
  test("are looked at as far as 200 rows and columns", () => {
    const far =
      (...cells: string[]): Change =>
      ({ Quote }) =>
        cells.forEach((at) => (Quote!.cells[at] = { value: "x" }));
    expect(merged(["A10:A900"], far("A10", "A210"))).toHaveLength(1);
    expect(merged(["A10:A900"], far("A10", "A211"))).toEqual([]);
    // GS is the 201st column, GT the 202nd.
    expect(merged(["A10:ZZ10"], far("GS10"))).toHaveLength(1);
    expect(merged(["A10:ZZ10"], far("GT10"))).toEqual([]);
  });
  test("that cover nothing, or are nowhere: nothing", () =>
    expect([merged(["B6:C8"]), merged(["?"]), merged(["C5:D6"])]).toEqual([[], [], []]));
});
