/** Figures of a typed quote, the columns that they stand in, and what is told of them. How they are written is common practice, no source. */
import type { ImportedCell } from "../../../src/workbooks/imported/table";
import { comesTo, isHeadAgain, quoteColumns } from "../../../src/workbooks/quoteReview/typed/quoteColumns";
import { quoteInWords } from "../../../src/workbooks/quoteReview/typed/quoteInWords";
import {
  decimalSignIn,
  figureOf,
  figuresIn,
  isOfAName,
  plainFigures,
} from "../../../src/workbooks/quoteReview/typed/quoteNumbers";
import type { Remark, TypedQuote } from "../../../src/workbooks/quoteReview/typed/typedQuote";
import { linesOf } from "../../support/surveyTables";

const plain = (value: number, more: object = {}): object => ({
  value,
  isPercent: false,
  isMoney: false,
  ...more,
});
const money = (value: number, more: object = {}): object => plain(value, { isMoney: true, ...more });

describe("a cell", () => {
  test.each<[ImportedCell, "." | "," | undefined, unknown]>([
    ["12", ".", plain(12)],
    ["12.5", ".", plain(12.5)],
    [".5", ".", plain(0.5)],
    ["1½", ".", plain(1.5)],
    ["½", ".", plain(0.5)],
    // Cents or a currency: money.
    ["12.50", ".", money(12.5)],
    ["€ 12", ".", money(12)],
    ["12 EUR", ".", money(12)],
    ["$1,234.50", ".", money(1234.5)],
    ["1.234,50", ",", money(1234.5)],
    ["1 234,50", ",", money(1234.5)],
    ["1'234.50", ".", money(1234.5)],
    // As in India.
    ["1,54,000.00", ".", money(154_000)],
    ["12,-", ",", plain(12)],
    ["12.--", ".", plain(12)],
    ["= 12", ".", plain(12)],
    ["@ 12", ".", plain(12)],
    ["x 3", ".", plain(3)],
    ["à 12", ".", plain(12)],
    // Less than nothing, as it is written in several ways.
    ["-12", ".", plain(-12)],
    ["12-", ".", plain(-12)],
    ["(12.50)", ".", money(-12.5)],
    ["+12", ".", plain(12)],
    ["19 %", ".", { value: 19, isPercent: true, isMoney: false }],
    ["12 m", ".", plain(12, { unit: "m" })],
    ["12 PCS", ".", plain(12, { unit: "pcs" })],
    ["per 100 m", ".", plain(100, { unit: "m" })],
    ["0.45 / m", ".", money(0.45, { unit: "m" })],
    ["٣٢", ".", plain(32)],
    ["۴۵", ".", plain(45)],
    // Neither figures nor units.
    ["", ".", undefined],
    ["words", ".", undefined],
    ["12 kg", ".", undefined],
    ["12)", ".", undefined],
    ["12 and 13", ".", undefined],
    ["=A1*2", ".", "formula"],
    ["=SUM(A1:A3)", ".", "formula"],
    ["+A1", ".", "formula"],
    ["@here", ".", "formula"],
    ["1234567890123456", ".", "lost"],
  ])("%j with %s", (cell, style, wanted) => {
    expect(figureOf(cell, style)).toEqual(wanted);
  });

  test.each<[ImportedCell, unknown]>([
    [{ number: 12, shown: "12" }, plain(12)],
    [{ number: 12.5, shown: "12.5" }, money(12.5)],
    [{ number: 12, shown: "12", format: "€ 0" }, money(12)],
    [{ number: 12, shown: "12", unit: "m" }, plain(12, { unit: "m" })],
    [
      { number: 1, shown: "100%", format: "0%" },
      { value: 1, isPercent: true, isMoney: false },
    ],
  ])("a number of a workbook: %j", (cell, wanted) => {
    expect(figureOf(cell, ".")).toEqual(wanted);
  });

  test("none", () => {
    expect(figureOf(undefined, ".")).toBeUndefined();
  });
});

test.each<[readonly string[], "." | "," | undefined]>([
  [["12.50", "3"], "."],
  [["12,50", "3"], ","],
  [["1.234,50"], ","],
  // As many the one as the other way.
  [["12.50", "12,50"], undefined],
  // Cents tell more than a length.
  [["0.9", "12,50"], ","],
  [["0.9", "1.5", "12,50"], ","],
  // Dates have no decimals, nor have numbers of parts.
  [["12.11.2031"], undefined],
  [["A12.50", "3.50B"], undefined],
  [["12", "words"], undefined],
  [[], undefined],
])("the decimal sign of %j is %s", (texts, sign) => {
  expect(decimalSignIn(texts)).toBe(sign);
});

describe("figures within a line", () => {
  const valuesIn = (text: string, style: "." | "," = ".", byBlanks = false): unknown =>
    figuresIn(plainFigures(text), style, byBlanks).map(({ value }) => value);

  test.each<[string, readonly number[]]>([
    ["2 head units at 148.00 is 296.00", [2, 148, 296]],
    ["discount -5.00", [-5]],
    ["discount (5.00)", [-5]],
    ["discount 5.00-", [-5]],
    ["splitters - 4", [-4]],
    ["€ 12 and 13 EUR", [12, 13]],
    ["1,234.50 in all", [1234.5]],
    ["a 6-way splitter", []],
    ["part B12, 2x3", [2]],
    ["no figures", []],
  ])("%s", (text, values) => {
    expect(valuesIn(text)).toEqual(values);
  });

  test("blanks part thousands only where that is known", () => {
    expect(valuesIn("sum 1 234,50", ",")).toEqual([1, 234.5]);
    expect(valuesIn("sum 1 234,50", ",", true)).toEqual([1234.5]);
  });

  test("with their units, and where they stand", () => {
    expect(figuresIn("a 12 m b", ".")).toEqual([plain(12, { unit: "m", from: 2, to: 6 })]);
    // A word that is no unit is not of it.
    expect(figuresIn("a 12 big", ".")).toEqual([plain(12, { from: 2, to: 5 })]);
    expect(figuresIn("tax 20 %", ".")).toEqual([
      { value: 20, isPercent: true, isMoney: false, from: 4, to: 8 },
    ]);
    expect(figuresIn("at 4.00/m", ".")).toEqual([money(4, { unit: "m", from: 3, to: 9 })]);
  });

  test("what says what a part is, and not how many", () => {
    const of = (text: string): boolean => isOfAName(figuresIn(text, ".")[0]!);
    expect(["16 bands", "75 ohm", "4 ports"].map(of)).toEqual([true, true, true]);
    expect(["16 pcs", "75 m", "4"].map(of)).toEqual([false, false, false]);
  });

  test("no more of a line than 400 signs is looked at", () => {
    expect(plainFigures("x".repeat(500))).toHaveLength(400);
    expect(plainFigures("a\u202a12\u202c")).toBe("a12");
  });
});

describe("columns", () => {
  const rolesOf = (...lines: string[]) => quoteColumns(linesOf(lines), ".")?.roles;

  test("by their heads", () => {
    expect(
      rolesOf("Pos;Description;Qty;Unit;Unit price;Total;VAT", "1;head unit;2;pcs;148.00;296.00;20"),
    ).toEqual(["position", "part", "quantity", "unit", "each", "sum", "other"]);
    expect(rolesOf("Pos.;Bezeichnung;Menge;Einzelpreis;Gesamt", "1;Kabel;2;3.00;6.00")).toEqual([
      "position",
      "part",
      "quantity",
      "each",
      "sum",
    ]);
    // Words and an address may stand above.
    const found = quoteColumns(linesOf(["To the owner", "Part;Qty;Each;Sum", "dish;1;9.00;9.00"]), ".");
    expect(found!.head!.line).toBe(2);
  });

  test("without heads: by what comes out when it is multiplied", () => {
    expect(rolesOf("dish;2;9.50;19.00", "mast;3;4.00;12.00")).toEqual(["part", "quantity", "each", "sum"]);
    expect(rolesOf("19.00;9.50;2;dish", "12.00;4.00;3;mast")).toEqual(["sum", "each", "quantity", "part"]);
    // Nothing to multiply: the last is the sum.
    expect(rolesOf("dish;19.00", "mast;12.00")).toEqual(["part", "sum"]);
    expect(rolesOf("dish;2;19.00", "mast;1;12.00")).toEqual(["part", "quantity", "sum"]);
  });

  test("two heads of one kind", () => {
    // The later of two sums, the earlier of two quantities; a price behind a price is the sum.
    expect(rolesOf("Part;Qty;Qty;Price;Total;Total", "dish;2;9;8.00;15.00;16.00")!.indexOf("sum")).toBe(5);
    expect(rolesOf("Part;Qty;Unit cost;Cost", "dish;2;8.00;16.00")).toEqual([
      "part",
      "quantity",
      "each",
      "sum",
    ]);
    // Running numbers below "Item", words below "Description".
    expect(rolesOf("Item;Description;Qty;Each", "1;dish;2;8.00", "2;mast;1;9.00")!.slice(0, 2)).toEqual([
      "position",
      "part",
    ]);
  });

  test("words alone are no table", () => {
    expect(rolesOf("one", "two")).toBeUndefined();
    expect(rolesOf("one;two", "three;four")).toBeUndefined();
    expect(rolesOf()).toBeUndefined();
  });

  test("a head again", () => {
    const isHead = (line: string): boolean => isHeadAgain(linesOf([line])[0]!);
    expect(isHead("Description;Qty;Unit price;Total")).toBe(true);
    expect(isHead("Description;;Total;")).toBe(true);
    expect(isHead("Description;words;more words")).toBe(false);
    expect(isHead("Total;Sum;296.00")).toBe(false);
    expect(isHead("Description;Qty;12")).toBe(false);
  });

  test("a product comes out within the rounding of cents", () => {
    // A price rounded to a cent, and a sum: a cent and a half.
    expect([comesTo(3, 9.5, 28.5), comesTo(3, 9.5, 28.515), comesTo(3, 9.5, 28.485)]).toEqual([
      true,
      true,
      true,
    ]);
    expect([comesTo(3, 9.5, 28.52), comesTo(3, 9.5, 28.48)]).toEqual([false, false]);
  });
});

describe("what was read, in words", () => {
  const remark = (line: number, kind: Remark["kind"], text = "some text"): Remark => ({
    line,
    text,
    kind,
    why: "it is odd",
  });
  const quote = (more: Partial<TypedQuote>): TypedQuote =>
    ({
      source: "text",
      lines: [],
      figures: {},
      remarks: [],
      ...more,
    }) as TypedQuote;
  const line = (optional: boolean) => ({ part: "dish", ...(optional && { optional }) });

  test.each([
    [0, 0, 0, "0 lines, 0 figures (text)"],
    [1, 0, 1, "1 line, 1 figure (text)"],
    [2, 1, 2, "2 lines and 1 option beside them, 2 figures (text)"],
    [1, 2, 0, "1 line and 2 options beside them, 0 figures (text)"],
  ])("%i lines, %i options, %i figures", (lines, options, figures, words) => {
    const all = [
      ...Array.from({ length: lines }, () => line(false)),
      ...Array.from({ length: options }, () => line(true)),
    ];
    const found = Object.fromEntries(Array.from({ length: figures }, (_, at) => [`f${at}`, 1]));
    expect(quoteInWords(quote({ lines: all, figures: found } as unknown as Partial<TypedQuote>)).read).toBe(
      words,
    );
  });

  test("what to look at, and what is only words", () => {
    const remarks = [remark(1, "unread"), remark(2, "words"), remark(3, "off")];
    expect(quoteInWords(quote({ remarks }))).toMatchObject({
      look: ["line 1, “some text”: it is odd", "line 3, “some text”: it is odd"],
      words: ["line 2, “some text”: it is odd"],
    });
  });

  test("a text of more than 100 signs is cut, and beyond 20 they are counted", () => {
    const told = (text: string): string =>
      quoteInWords(quote({ remarks: [remark(1, "off", text)] })).look[0]!;
    expect(told("x".repeat(100))).toBe(`line 1, “${"x".repeat(100)}”: it is odd`);
    expect(told("x".repeat(101))).toBe(`line 1, “${"x".repeat(99)}…”: it is odd`);
    const many = (count: number): readonly string[] =>
      quoteInWords(quote({ remarks: Array.from({ length: count }, (_, at) => remark(at, "off")) })).look;
    expect(many(20)).toHaveLength(20);
    expect(many(22)).toHaveLength(21);
    expect(many(22).at(-1)).toBe("and 2 more");
  });
});
