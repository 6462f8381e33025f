/** Alternates of which another is chosen, and currencies with other decimals, worked by hand. */
import { recalculate } from "../../src/hosts/headless/recalculate";
import { layOut } from "../../src/workbooks/layOut";
import { multiRoom } from "../../src/workbooks/multiRoom/definition";
import { startingPoint } from "../../src/workbooks/multiRoom/startingPoint";
import { namedColumn, namedValue } from "../../src/workbooks/named";
import type { Book } from "../../src/workbooks/book";

type Row = Readonly<Record<string, number | string>>;

const quoted = (options: readonly Row[], fields: Row = {}, more: Record<string, readonly Row[]> = {}): Book =>
  recalculate(
    layOut(multiRoom, {
      fields: { ...startingPoint.fields, site_tax: 0.2, ...fields },
      blocks: { provisional: [{ name: "all of it", sum: 1000 }], options, ...more },
    }),
  );
const totals = (book: Book): unknown[] => namedColumn(book, "options_quoted_total").slice(1);

test("an alternate stands in place of the one that is chosen for the same thing", () => {
  const book = quoted([
    { name: "A", quantity: 1, each: 100, chosen: "yes", instead: "single outlet" },
    { name: "B", quantity: 1, each: 200, chosen: "no", instead: "single outlet" },
    { name: "C", quantity: 1, each: 200, chosen: "no" },
  ]);
  // (1000 + 100) · 1.2; (1000 + 200) · 1.2; (1000 + 100 + 200) · 1.2.
  expect(totals(book).slice(0, 3)).toEqual([1320, 1440, 1560]);
});

test("one in another class of tax than the chosen one is left open, not told wrongly", () => {
  const book = quoted(
    [
      { name: "A", quantity: 1, each: 100, chosen: "yes", instead: "single outlet", tax: "reduced" },
      { name: "B", quantity: 1, each: 200, chosen: "no", instead: "single outlet" },
    ],
    {},
    { taxes: [{ name: "reduced", rate: 0.1 }] },
  );
  // 1000 · 1.2 + 100 · 1.1.
  expect(totals(book).slice(0, 2)).toEqual([1310, "open"]);
});

test("hours are of one option, and what lacks a cost leaves no price", () => {
  const option = { name: "more outlets", quantity: 5, chosen: "no" };
  const made = (rows: readonly Row[]): unknown =>
    namedColumn(
      quoted([option], { labour_rate: 60 }, { made: rows.map((row) => ({ option: option.name, ...row })) }),
      "options_quoted_sum",
    )[1];
  // Five of an hour and a half at 60, and two plates of 6.40 for each.
  expect(
    made([
      { part: "fitting", hours: 1.5 },
      { part: "plate", quantity: 2, each: 6.4 },
    ]),
  ).toBe(514);
  expect(made([{ part: "plate", quantity: 2, each: 6.4 }, { part: "plate that goes out" }])).toBe("open");
  expect(made([{ part: "plate", quantity: "2 pcs", each: 6.4 }])).toBe("open");
  // A plate against one that costs the same: nothing to pay is a price.
  expect(
    made([
      { part: "one", quantity: 1, each: 6.4 },
      { part: "other", quantity: -1, each: 6.4 },
    ]),
  ).toBe(0);
});

test.each([
  [0, "#,##0", 1235],
  [3, "#,##0.000", 1234.567],
] as const)("with %i decimals money is rounded and shown so", (decimals, format, net) => {
  const book = quoted(
    [],
    { site_decimals: decimals },
    { provisional: [{ name: "all of it", sum: 1234.567 }] },
  );
  expect(namedValue(book, "quote_net")).toBe(net);
  const { sheet, range } = book.names.find(({ name }) => name === "quote_net")!;
  const look = book.sheets.find(({ name }) => name === sheet)!.cells[range]!.look!;
  expect(book.looks[look]!.format).toBe(format);
});
