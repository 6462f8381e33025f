/** Columns, figures and sums of a typed quote where one reading alone comes out. All quotes are invented. */
import { quoteColumns } from "../../../src/workbooks/quoteReview/typed/quoteColumns";
import { figuresIn } from "../../../src/workbooks/quoteReview/typed/quoteNumbers";
import { readTypedQuote } from "../../../src/workbooks/quoteReview/typed/readQuote";
import type { TypedQuote } from "../../../src/workbooks/quoteReview/typed/typedQuote";
import { linesOf, tableOf } from "../../support/surveyTables";

const read = (...lines: string[]): TypedQuote => {
  const quote = readTypedQuote([tableOf(lines)]);
  if (typeof quote === "string") throw new Error(quote);
  return quote;
};
const HEAD = "Description;Qty;Unit;Unit price;Total";
/** 296 + 104 = 400. */
const LINES = [HEAD, "dish with mount;2;pcs;148.00;296.00", "splitter;4;pcs;26.00;104.00"];

describe("columns whose head says other than what stands below", () => {
  const rolesOf = (...lines: string[]) => quoteColumns(linesOf(lines), ".")?.roles;
  test("running numbers below “Item”, the words below no head", () =>
    expect(rolesOf("Item;;Qty;Each", "1;dish;2;8.00", "2;mast;1;9.00")).toEqual([
      "position",
      "part",
      "quantity",
      "each",
    ]));
  test("nothing below “Item”", () =>
    expect(rolesOf("Item;;Qty;Each", ";dish;2;8.00", ";mast;1;9.00")).toEqual([
      undefined,
      "part",
      "quantity",
      "each",
    ]));
  test("words below “Position”", () =>
    expect(rolesOf("Position;Qty;Each", "dish;2;8.00", "mast;1;9.00")).toEqual(["part", "quantity", "each"]));
});

test("what has a unit is a figure, whatever hangs on the unit; what has none is of a name", () => {
  const valuesIn = (text: string) => figuresIn(text, ".").map(({ value }) => value);
  expect(valuesIn("12 m-coil")).toEqual([12]);
  expect(valuesIn("12-coil")).toEqual([]);
});

describe("the net", () => {
  const netOf = (...sums: string[]) => read(...LINES, ...sums).figures.net;
  test("is what makes the total with its tax, though the lines come to another sum", () =>
    // 380 + 76 = 456.
    expect(netOf("Subtotal;;;;400.00", "Total;;;;380.00", "VAT 20 %;;;;76.00", "Total;;;;456.00")).toBe(380));
  test("else what the lines come to", () =>
    expect(netOf("Subtotal;;;;400.00", "Total;;;;380.00", "VAT 20 %;;;;76.00", "Total;;;;460.00")).toBe(400));
});

describe("lines of two figures", () => {
  const told = (net: string) =>
    read("splitter 4 x 26.00", "mast 2 x 10.00", net).lines.map(({ part, quantity, each, sum }) => ({
      part,
      quantity,
      each,
      sum,
    }));
  test("“x” stands between how many and how dear", () =>
    expect(told("Net 124.00")).toMatchObject([
      { part: "splitter", quantity: 4, each: 26 },
      { part: "mast", quantity: 2, each: 10 },
    ]));
  const unsigned = (net: string) =>
    read("4 splitter 26.00", "2 mast 10.00", net).lines.map(({ quantity, each, sum }) => [
      quantity,
      each,
      sum,
    ]);
  // 4 · 26 + 2 · 10 = 124; 26 + 10 = 36.
  test("the second is the price of one where the net comes out only so", () =>
    expect(unsigned("Net 124.00")).toEqual([
      [4, 26, undefined],
      [2, 10, undefined],
    ]));
  test("the second is the sum where the net comes out so, or in no way", () => {
    for (const net of ["Net 36.00", "Net 50.00"])
      expect(unsigned(net)).toEqual([
        [4, undefined, 26],
        [2, undefined, 10],
      ]);
  });
});

describe("the price of a head unit", () => {
  const priceOf = (...lines: string[]) => read(HEAD, ...lines).headPrice;
  test("is that of the first that has one", () => {
    const lump = "head unit, 8 bands;;;;296.00";
    expect(
      priceOf(lump, "head unit, 16 bands;2;pcs;148.00;296.00", "head unit, 4 bands;1;pcs;90.00;90.00"),
    ).toBe(148);
    expect(priceOf(lump)).toBeUndefined();
  });
  test("is not that of its bracket", () =>
    expect(priceOf("bracket for head unit;1;pcs;9.00;9.00", "head unit;1;pcs;148.00;148.00")).toBe(148));
});

test("a line of net, tax and both together is all three", () => {
  const { figures } = read(HEAD, "dish;2;pcs;50.00;100.00", "Total;;100.00;20.00;120.00");
  expect(figures).toMatchObject({ net: 100, tax: 20, total: 120 });
});

test("hours and minutes are hours; other cells stay", () => {
  const { figures } = read(HEAD, "Labour;30 h 30 min;;40.00;1220.00");
  expect(figures).toMatchObject({ hours: 30.5, rate: 40, labour: 1220 });
});

test("a date by itself is done with, in a list of lines as in a table", () => {
  const { remarks } = read("9.11.2026", "Date: 9.11.2026", "dish 2 x 148.00 = 296.00", "Net 296.00");
  expect(remarks).toEqual([]);
  const table = read(...LINES, "Date: 9.11.2026;;;;", "Valid until 2026-12-18;;;;", "Net;;;;400.00");
  expect(table.remarks).toEqual([]);
  // 46000 is the ninth of December 2025: a year and nine days before.
  expect(table.until).toBe(46_000 + 365 + 9);
});
