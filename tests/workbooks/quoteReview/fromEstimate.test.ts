/** What the review of an estimate begins with, from a few of the estimate's cells. */
import type { Named } from "../../../src/formula/build";
import type { BookResult } from "../../../src/workbooks/book";
import { estimate } from "../../../src/workbooks/multiRoom/names";
import { price } from "../../../src/workbooks/multiRoom/names/price";
import { taxesQuoted } from "../../../src/workbooks/multiRoom/names/quote";
import { fromEstimate } from "../../../src/workbooks/quoteReview/fromEstimate";
import { quoteReviewStart } from "../../../src/workbooks/quoteReview/jobInputs";
import { namedBook } from "../../support/namedBook";

type Cells = readonly (readonly [Named, ...(BookResult | undefined)[]])[];
const begins = (...cells: Cells) =>
  fromEstimate(namedBook(Object.fromEntries(cells.map(([{ name }, ...values]) => [name, values]))));

const { site, count, headsNeeded, heads, crew, quote, workTogether } = estimate;
const { unitsBought: units, suppliesBought: supplies, cablesBought: cables, platesBought: plates } = estimate;
const FAULT: BookResult = { error: "#VALUE!" };

describe("its figures", () => {
  const fields = (...cells: Cells) => begins(...cells).fields!;
  /** What there is of an estimate in which nothing stands. */
  const NOTHING = { review_tolerance: 0.05, review_lines_are: "a part", review_cable: 0, review_extras: 0 };

  test("of an empty estimate only what is nought; errors, words and what is endless are no figures", () => {
    expect(fields()).toEqual(NOTHING);
    expect(
      fields([count.outlets, FAULT], [quote.net, "soon"], [site.margin, ""], [price.cost, Infinity]),
    ).toEqual(NOTHING);
  });

  test("each stands in the cell of its name, money in cents", () => {
    expect(
      fields(
        [site.job, "House"],
        [quote.number, "D-24"],
        [site.prepared_by, "a firm"],
        [site.until, 46_000],
        [count.outlets, 24],
        [headsNeeded.wanted, 28],
        [heads.fed.bands, "", 8, 16, FAULT, ""],
        [count.heads, 3],
        [cables.needed, "", 300, "", 90.5, ""],
        [price.reception, 1000.001],
        [price.cable, 200.002],
        [price.fittings, 30.003],
        [price.sites, 4.004],
        [workTogether.total_hours, 31.234],
        [crew.rate, 58],
        [price.labour, 1798.128],
        [site.contingency, 0.03],
        [site.overhead, 0.12],
        [price.cost, 3504.638],
        [site.margin, 0.22],
        [price.sell, 4493.126],
        [quote.provisional, 100.004],
        [quote.options, 80],
        [quote.discount, -30],
        [quote.net, 4643.13],
        [price.taxable, 4600],
        [site.tax, 0.2],
        [quote.tax, 920],
        [quote.total, 5563.13],
      ),
    ).toEqual({
      review_tolerance: 0.05,
      review_lines_are: "a part",
      review_job: "House",
      review_quote: "D-24",
      review_by: "a firm",
      review_until: 46_000,
      review_outlets: 24,
      review_tuners: 28,
      review_bands: 16,
      review_heads: 3,
      review_cable: 390.5,
      // 1234.01 of 1000.001 + 200.002 + 30.003 + 4.004 = 1234.010
      review_materials: 1234.01,
      review_hours: 31.234,
      review_rate: 58,
      review_labour: 1798.13,
      review_contingency: 0.03,
      review_overhead: 0.12,
      review_cost: 3504.64,
      review_margin: 0.22,
      review_price: 4493.13,
      // 100.004 + 80 - 30
      review_extras: 150,
      review_net: 4643.13,
      review_taxed: 4600,
      review_rate_tax: 0.2,
      review_tax: 920,
      review_total: 5563.13,
    });
  });

  test("materials of which one group is in error have no sum", () => {
    const groups: Cells = [
      [price.reception, 1],
      [price.cable, 2],
      [price.fittings, 3],
    ];
    expect(fields(...groups, [price.sites, FAULT]).review_materials).toBeUndefined();
    expect(fields(...groups, [price.sites, 4]).review_materials).toBe(10);
  });

  test.each<[string, Cells, object]>([
    [
      "together",
      [
        [quote.net, 200],
        [quote.tax, 30],
      ],
      { review_taxed: 200, review_rate_tax: 0.15 },
    ],
    [
      "of nothing",
      [
        [quote.net, 0],
        [quote.tax, 0],
      ],
      { review_taxed: 0 },
    ],
    [
      "in error",
      [
        [quote.net, 200],
        [quote.tax, FAULT],
      ],
      { review_taxed: 200 },
    ],
    [
      "of a net in error",
      [
        [quote.net, FAULT],
        [quote.tax, 30],
      ],
      {},
    ],
  ])("of several rates of tax the one that all of it bears: %s", (_, cells, expected) => {
    const named = [taxesQuoted.name, "", "parts", "work"] as const;
    const made = fields(named, [price.taxable, 150], [site.tax, 0.2], ...cells);
    expect({
      ...(made.review_taxed !== undefined && { review_taxed: made.review_taxed }),
      ...(made.review_rate_tax !== undefined && { review_rate_tax: made.review_rate_tax }),
    }).toEqual(expected);
  });

  test("blank names are no rates", () => {
    const made = fields(
      [taxesQuoted.name, "", undefined, ""],
      [price.taxable, 150],
      [site.tax, 0.2],
      [quote.net, 200],
    );
    expect([made.review_taxed, made.review_rate_tax]).toEqual([150, 0.2]);
  });

  test("a head unit's price is the first that is one; a metre's the sum over all metres, in cents", () => {
    const { review_head_price, review_cable_price } = fields(
      [units.price, "", 0, FAULT, 148, 200, ""],
      [cables.needed, "", 200, 100, ""],
      [cables.sum, "", 100, 60, ""],
    );
    // 160 / 300 = 0.5333
    expect([review_head_price, review_cable_price]).toEqual([148, 0.53]);
  });

  test.each<[string, number, number]>([
    ["no metres", 0, 100],
    ["nothing to pay", 200, 0],
  ])("%s make no price of a metre", (_, metres, sum) =>
    expect(fields([cables.needed, metres], [cables.sum, sum])).not.toHaveProperty("review_cable_price"),
  );
});

describe("its lines", () => {
  const list = (
    of: typeof units | typeof cables | typeof plates | typeof supplies,
    rows: readonly BookResult[][],
  ): Cells => [
    [of.name, "", ...rows.map(([name]) => name)],
    [of.quantity, "", ...rows.map(([, many]) => many)],
    [of.price, "", ...rows.map(([, , one]) => one)],
    [of.sum, "", ...rows.map(([, , , all]) => all)],
  ];

  test("of all lists together, the dearest first; ranges and questions are those of every review", () => {
    const { blocks } = begins(
      ...list(units, [["head unit", 2, 148, 296]]),
      ...list(cables, [
        ["drop", 4, 52, 208],
        ["trunk", 1, 300, 300],
      ]),
      ...list(plates, [["plate", 24, 6.5, 156]]),
    );
    expect(blocks).toEqual({
      ...quoteReviewStart.blocks,
      lines: [
        { part: "trunk", quantity: 1, each: 300, sum: 300 },
        { part: "head unit", quantity: 2, each: 148, sum: 296 },
        { part: "drop", quantity: 4, each: 52, sum: 208 },
        { part: "plate", quantity: 24, each: 6.5, sum: 156 },
      ],
    });
    expect([blocks!.ranges!.length, blocks!.asked!.length]).toEqual([7, 9]);
  });

  test.each([
    ["units", estimate.unitsBought],
    ["feeds", estimate.feedsBought],
    ["supplies", estimate.suppliesBought],
    ["cables", estimate.cablesBought],
    ["passives", estimate.passivesBought],
    ["plates", estimate.platesBought],
    ["fittings", estimate.fittingsBought],
    ["resistors", estimate.resistorsBought],
  ])("whatever is bought may be the dearest: %s", (part, of) =>
    expect(begins(...list(of as typeof plates, [[part, 2, 5, 10]])).blocks!.lines).toEqual([
      { part, quantity: 2, each: 5, sum: 10 },
    ]),
  );

  test("a row that lacks something, or costs nothing, is no line", () => {
    const rows: BookResult[][] = [
      ["sound", 1, 5, 5],
      ["", 1, 5, 5],
      [7, 1, 5, 5],
      ["no quantity", "", 5, 5],
      ["no price", 1, FAULT, 5],
      ["no sum", 1, 5, ""],
      ["free", 1, 0, 0],
    ];
    expect(begins(...list(supplies, rows)).blocks!.lines).toEqual([
      { part: "sound", quantity: 1, each: 5, sum: 5 },
    ]);
  });

  test("twelve are looked at", () => {
    const rows = Array.from({ length: 14 }, (_, index) => [`part ${index}`, 1, index + 1, index + 1]);
    const lines = begins(...list(plates, rows)).blocks!.lines!;
    expect(lines.map(({ sum }) => sum)).toEqual([14, 13, 12, 11, 10, 9, 8, 7, 6, 5, 4, 3]);
  });
});
