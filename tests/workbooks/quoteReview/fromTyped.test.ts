/** What a typed quote becomes on the sheet Review: its figures, its lines, and what is asked of the rest. */
import { fromTyped } from "../../../src/workbooks/quoteReview/fromTyped";
import { quoteReviewStart } from "../../../src/workbooks/quoteReview/jobInputs";
import {
  NUMBER_KEYS,
  type Remark,
  type TypedLine,
  type TypedQuote,
} from "../../../src/workbooks/quoteReview/typed/typedQuote";

const quote = (given: Partial<TypedQuote>): TypedQuote => ({
  source: "a list",
  lines: [],
  linesAre: "a part",
  figures: {},
  words: {},
  inFeet: false,
  remarks: [],
  ...given,
});

describe("its figures", () => {
  /** But for what lines are, which is always told. */
  const fields = (given: Partial<TypedQuote>): Record<string, unknown> => {
    const { review_lines_are, ...rest } = fromTyped(quote(given)).fields!;
    expect(review_lines_are).toBe(given.linesAre ?? "a part");
    return rest;
  };
  const TOLERANCE = { review_tolerance: 0.05 };

  test("each has the cell of its key, as have words and the date", () => {
    const figures = Object.fromEntries(NUMBER_KEYS.map((key, index) => [key, index + 1]));
    const given = { figures, words: { job: "House", quote: "D-31", by: "a firm" }, until: 46_000 };
    expect(fields({ ...given, headPrice: 148, cablePrice: 0.52 })).toEqual({
      ...TOLERANCE,
      review_outlets: 1,
      review_tuners: 2,
      review_bands: 3,
      review_heads: 4,
      review_cable: 5,
      review_materials: 6,
      review_hours: 7,
      review_rate: 8,
      review_labour: 9,
      review_contingency: 10,
      review_overhead: 11,
      review_cost: 12,
      review_margin: 13,
      review_price: 14,
      review_extras: 15,
      review_net: 16,
      review_taxed: 17,
      review_rate_tax: 18,
      review_tax: 19,
      review_total: 20,
      review_job: "House",
      review_quote: "D-31",
      review_by: "a firm",
      review_until: 46_000,
      review_head_price: 148,
      review_cable_price: 0.52,
    });
  });

  test.each<[string, Partial<TypedQuote>, object]>([
    ["nothing", {}, {}],
    ["a total alone", { figures: { total: 120 } }, { review_total: 120 }],
    [
      "a net and its tax: all of it is taxed, and makes the price",
      { figures: { net: 100, tax: 20 } },
      { review_net: 100, review_tax: 20, review_taxed: 100, review_rate_tax: 0.2, review_price: 100 },
    ],
    [
      "a total and its tax: the net is the rest, to the cent",
      { figures: { total: 120.3, tax: 0 } },
      { review_total: 120.3, review_tax: 0, review_taxed: 120.3, review_rate_tax: 0 },
    ],
    [
      "a total and its tax, in cents",
      { figures: { total: 120.3, tax: 20.1, taxRate: 0.2 } },
      { review_total: 120.3, review_tax: 20.1, review_taxed: 100.2, review_rate_tax: 0.2 },
    ],
    ["a tax alone", { figures: { tax: 20 } }, { review_tax: 20 }],
    [
      "a part that is taxed",
      { figures: { total: 120, tax: 20, taxed: 80 } },
      { review_total: 120, review_tax: 20, review_taxed: 80, review_rate_tax: 0.2 },
    ],
    [
      "nothing that could be taxed",
      { linesAre: "the whole price", figures: { net: 0, tax: 0 } },
      { review_net: 0, review_tax: 0, review_taxed: 0 },
    ],
    [
      "a net of lines that are all of it",
      { linesAre: "the whole price", figures: { net: 100 } },
      { review_net: 100 },
    ],
    ["a net beside its price", { figures: { net: 100, price: 90 } }, { review_net: 100, review_price: 90 }],
    ["a net beside its cost", { figures: { net: 100, cost: 80 } }, { review_net: 100, review_cost: 80 }],
    ["made round by cents", { rounding: 0.03 }, {}],
    ["made round by more", { rounding: -0.4 }, { review_tolerance: 0.4 }],
    ["made round by almost one", { rounding: 0.99 }, { review_tolerance: 0.99 }],
    ["off by a whole one, which is no rounding", { rounding: 1 }, {}],
    ["off by minus one", { rounding: -1 }, {}],
  ])("%s", (_, given, more) => expect(fields(given)).toEqual({ ...TOLERANCE, ...more }));
});

describe("its lines", () => {
  const rows = (lines: readonly Partial<TypedLine>[], more: Partial<TypedQuote> = {}) =>
    fromTyped(quote({ lines: lines.map((one) => ({ line: 1, part: "plate", ...one })), ...more })).blocks!
      .lines;

  test("options are no part of a price, nor work a part of materials", () => {
    const lines: Partial<TypedLine>[] = [
      { part: "dish" },
      { part: "mast", optional: true },
      { part: "fitting", labour: true },
      { part: "survey", labour: true, optional: true },
    ];
    expect(rows(lines)).toEqual([{ part: "dish" }]);
    expect(rows(lines, { linesAre: "all materials" })).toEqual([{ part: "dish" }]);
    expect(rows(lines, { linesAre: "the whole price" })).toEqual([{ part: "dish" }, { part: "fitting" }]);
  });

  test.each<[string, Partial<TypedLine>, object]>([
    ["a lump sum", { sum: 200 }, { sum: 200 }],
    ["a price for one", { quantity: 4, each: 14.8, sum: 59.2 }, { quantity: 4, each: 14.8, sum: 59.2 }],
    ["a price for a hundred", { each: 45, per: 100 }, { each: 0.45 }],
    ["a price with something off", { each: 10, discount: 0.25 }, { each: 7.5 }],
    ["twelve digits of a price", { each: 1, per: 3 }, { each: 0.333333333333 }],
    [
      "a credit, whose sum has the minus",
      { quantity: -2, each: 5, sum: -10 },
      { quantity: 2, each: 5, sum: -10 },
    ],
    ["a credit by its price", { quantity: -2, each: -5 }, { quantity: -2, each: -5 }],
    ["some taken back at no price", { quantity: -2, each: 0 }, { quantity: -2, each: 0 }],
    ["some taken back, no price told", { quantity: -2 }, { quantity: -2 }],
  ])("%s", (_, line, row) => expect(rows([line])).toEqual([{ part: "plate", ...row }]));

  test("the same on another floor has the floor's name; twice on one floor has not, nor what differs", () => {
    const parts = (...lines: Partial<TypedLine>[]) => rows(lines)!.map(({ part }) => part);
    const [up, down] = [{ section: "Up" }, { section: "Down" }];
    expect(parts(up, { ...down, part: "Plate" }, up)).toEqual(["plate", "Plate (Down)", "plate"]);
    expect(parts({}, up, {})).toEqual(["plate", "plate (Up)", "plate"]);
    expect(parts(up, {})).toEqual(["plate", "plate"]);
    for (const other of [{ quantity: 2 }, { each: 3 }, { sum: 6 }, { part: "cover" }])
      expect(parts(up, { ...down, ...other })).toEqual(["plate", other.part ?? "plate"]);
  });

  test("tax that is in the prices is taken out by a line of its own", () => {
    expect(rows([{ sum: 120 }], { taxInside: 20 })).toEqual([
      { part: "plate", sum: 120 },
      { part: "Tax that is in the prices above, taken out", sum: -20 },
    ]);
  });

  test("ranges are those of every review", () => {
    expect(fromTyped(quote({})).blocks!.ranges).toBe(quoteReviewStart.blocks!.ranges);
  });
});

describe("what is asked", () => {
  const USUAL = quoteReviewStart.blocks!.asked!;
  /** Before what every quote is asked. */
  function asked(given: Partial<TypedQuote>): unknown[] {
    const all = fromTyped(quote(given)).blocks!.asked!;
    expect(all.slice(-USUAL.length)).toEqual(USUAL);
    return all.slice(0, -USUAL.length).map(({ question }) => question);
  }
  const remark = (line: number, more: Partial<Remark> = {}): Remark => ({
    line,
    text: "3 x ???",
    why: "no price was read",
    kind: "unread",
    ...more,
  });

  test("nothing more where all was taken; words were no figures", () => {
    expect(asked({ lines: [{ line: 1, part: "dish" }], remarks: [remark(2, { kind: "words" })] })).toEqual(
      [],
    );
  });

  test("what was not taken, then each option, with its sum where it has one", () => {
    expect(
      asked({
        remarks: [remark(4), remark(7, { kind: "off", why: "it is not the sum" })],
        lines: [
          { line: 2, part: "mast", optional: true, sum: 90 },
          { line: 3, part: "dish" },
          { line: 5, part: "cover", optional: true },
        ],
      }),
    ).toEqual([
      "Line 4, “3 x ???”: no price was read",
      "Line 7, “3 x ???”: it is not the sum",
      "Line 2, “mast” for 90, is an option: is it left out of the price on purpose?",
      "Line 5, “cover”, is an option: is it left out of the price on purpose?",
    ]);
  });

  test("a long line is cut after 119 letters", () => {
    const [whole, cut] = asked({
      remarks: [remark(1, { text: "a".repeat(120) }), remark(2, { text: "a".repeat(121) })],
    });
    expect(whole).toBe(`Line 1, “${"a".repeat(120)}”: no price was read`);
    expect(cut).toBe(`Line 2, “${"a".repeat(119)}…”: no price was read`);
  });

  test.each([
    [12, []],
    [13, ["And 1 more line of the list was not taken: is it looked at?"]],
    [15, ["And 3 more lines of the list were not taken: are they looked at?"]],
  ])("of %i the first twelve, and how many more", (many, last) => {
    const said = asked({ remarks: Array.from({ length: many }, (_, index) => remark(index + 1)) });
    expect(said).toHaveLength(12 + last.length);
    expect(said[11]).toBe("Line 12, “3 x ???”: no price was read");
    expect(said.slice(12)).toEqual(last);
  });
});
