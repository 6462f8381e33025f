/** Each finding of a quote review whole, on a few cells that nothing computes, and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { correctedInWords, quoteSlips, slipsIn, totalsOf } from "../../src/review/rules/quoteSlips";
import { at, atField, found, smallBook, type Row } from "./smallBook";

const lines = (...rows: Row[]): Finding[] => slipsIn(smallBook({ lines: rows }));
const fields = (values: Row): Finding[] => slipsIn(smallBook({}, values));
const NA = { error: "#N/A" };

test("only a quote review is looked at, and by what it comes to", () => {
  const book = smallBook({}, { review_total_word: "look", review_total_again: 5 });
  expect(found(quoteSlips, book)).toEqual([]);
  const review = { ...book, template: "quote-review" };
  expect(found(quoteSlips, review)).toHaveLength(1);
  expect(found(quoteSlips, review, { computed: smallBook({}) })).toEqual([]);
});

describe("a line", () => {
  test("that is off, that stands twice, that cannot be worked again, and two that are fine", () =>
    expect(
      lines(
        { part: "bracket", quantity: 4, each: 14.8, again: 59.2, sum: 49.2, word: "look" },
        { part: "screen", quantity: 1, each: 1500, again: 1500, sum: 1500, word: "twice" },
        { part: "cabinet", quantity: "two", each: 3, again: 0, sum: 6, word: "missing" },
        { part: "door", quantity: 1, each: 3, again: NA, sum: 6, word: NA },
        { part: "key", quantity: 1, each: 6, again: 6, sum: 6, word: "good" },
        { part: undefined, word: "" },
      ),
    ).toStrictEqual([
      {
        weight: "wrong",
        place: at("lines_sum", 1),
        message: "“bracket” is 49.20; 4 times 14.8 is 59.20.",
        remedy: "Correct the sum, the quantity or the price, and the sums that follow from it.",
        expected: "59.20.",
      },
      {
        weight: "wrong",
        place: at("lines_part", 2),
        message: "“screen” stands twice, each time with 1,500.00.",
        remedy: "Delete one of the lines, or say in its words how they differ.",
      },
      ...["cabinet", "door"].map((part, index) => ({
        weight: "doubtful",
        place: at("lines_sum", 3 + index),
        message: `“${part}” cannot be worked again: quantity, price of one or sum is missing or is no number.`,
        remedy: "Type what the quote has, or ask its maker.",
      })),
    ]));
  test("of which nothing but the word is there", () =>
    expect(lines({ word: "look" })[0]!.message).toBe("“” is 0.00; 0 times 0 is 0.00."));
});

describe("a figure", () => {
  const SUMS: readonly [string, string][] = [
    ["materials", "Materials, cost"],
    ["labour", "Labour, cost"],
    ["cost", "Cost"],
    ["price", "Selling price"],
    ["net", "Price without tax"],
    ["tax", "Tax, sum"],
    ["total", "Total"],
  ];
  test.each(SUMS)("%s that is off", (name, label) =>
    expect(
      fields({
        [`review_${name}`]: 1234.5,
        [`review_${name}_again`]: 1200,
        [`review_${name}_word`]: "look",
      }),
    ).toStrictEqual([
      {
        weight: "wrong",
        place: atField(`review_${name}`),
        message: `${label} is 1,234.50; worked again it is 1,200.00.`,
        remedy: "Correct it, and what follows from it.",
        expected: "1,200.00.",
      },
    ]),
  );
  test("that is fine", () =>
    expect(fields({ review_cost: 1, review_cost_again: 2, review_cost_word: "good" })).toEqual([]));
  test.each([
    ["its word is an error", { review_tax_word: NA, review_tax_again: 3 }],
    ["nothing is worked again", { review_tax_word: "look", review_tax_again: "" }],
  ])("that cannot be worked again: %s", (_, values) =>
    expect(fields({ review_tax: 7, ...values })).toStrictEqual([
      {
        weight: "doubtful",
        place: atField("review_tax"),
        message: "Tax, sum cannot be worked again.",
        remedy: "Look at the figures above it that it follows from.",
      },
    ]),
  );
  test("has no place where its cell is not named", () => {
    const [finding] = fields({ review_total_word: "look", review_total_again: 3 });
    expect(finding).not.toHaveProperty("place");
  });
  test("the net says what it is with the lines as they were quoted, where lines are off", () => {
    const net = (off: number | undefined) =>
      fields({
        review_net: 900,
        review_net_again: 1000,
        review_net_word: "look",
        review_total: 900,
        review_total_again: 1000,
        review_total_word: "look",
        corrected_lines: off,
      }).map(({ expected }) => expected);
    expect(net(undefined)).toEqual(["1,000.00.", "1,000.00."]);
    expect(net(0)).toEqual(["1,000.00.", "1,000.00."]);
    expect(net(30)).toEqual(["1,000.00; 970.00 with its lines as quoted.", "1,000.00."]);
  });
  test("a markup is told first and whole, and in the place of the price", () => {
    const found = fields({
      review_slip: "look",
      review_cost: 1000,
      review_cost_word: "look",
      review_cost_again: 990,
      review_margin: 0.2,
      review_price: 1200,
      review_price_word: "look",
      review_price_again: 1250,
    });
    expect(found).toStrictEqual([
      {
        weight: "wrong",
        place: atField("review_price"),
        message:
          "The margin of 20 % was added to the cost as a markup: 1,000.00 and 20 % of it are 1,200.00.",
        remedy: "Divide the cost by 1 less the margin, or agree the smaller margin.",
        expected: "1,250.00, of which the margin is 20 %.",
      },
      expect.objectContaining({ message: "Cost is 1,000.00; worked again it is 990.00." }),
    ]);
  });
});

describe("head units", () => {
  const heads = (more: Row): Finding[] =>
    fields({
      review_heads: 2,
      review_tuners: 70,
      review_bands: 16,
      review_heads_again: 5,
      review_heads_word: "look",
      ...more,
    });
  const SHORT = {
    weight: "wrong",
    place: atField("review_heads"),
    message: "2 head units of 16 user bands serve 32 of the 70 tuners.",
    remedy: "Add what is missing, or feed those outlets otherwise.",
    effect: "Some of the tuners get no user band.",
  };
  test("too few, with and without the price of one", () => {
    expect(heads({})).toStrictEqual([{ ...SHORT, expected: "5 head units." }]);
    expect(heads({ review_head_price: 100 })).toStrictEqual([
      { ...SHORT, expected: "5 head units: 3 more at 100.00." },
    ]);
  });
  test("enough", () => expect(heads({ review_heads_word: "good" })).toEqual([]));
});

describe("a ratio", () => {
  const ratio = (row: Row, values: Row = {}): Finding[] => slipsIn(smallBook({ ranges: [row] }, values));
  const LOOK = {
    weight: "doubtful",
    place: at("ranges_value", 1),
    remedy: "Look at the figures that it comes from, and at their units.",
  };
  test("out of its range, with what it is made of as far as that is there", () =>
    expect(
      ratio(
        {
          ratio: "price per outlet",
          low: 100,
          high: 300,
          basis: " our last ten jobs ",
          value: 412.3456,
          word: "look",
        },
        { review_price: 4123.456, review_net: "none", review_outlets: 10 },
      ),
    ).toStrictEqual([
      {
        ...LOOK,
        message: "The price per outlet is 412.3 (Selling price 4123, Outlets 10).",
        expected: "Usually 100 to 300 (our last ten jobs).",
      },
    ]));
  test.each([
    ["margin that the price has", "Margin"],
    ["materials, share of direct cost", undefined],
  ])("%s: a share in percent", (label, of) =>
    expect(
      ratio({ ratio: label, low: 0.05, high: 0.12344, value: 0.125, word: "look" }, { review_margin: 0.125 }),
    ).toStrictEqual([
      {
        ...LOOK,
        message: `The ${label} is 12.5 %${of ? ` (${of} 12.5 %)` : ""}.`,
        expected: "Usually 5 % to 12.34 %.",
      },
    ]),
  );
  test("that cannot be found; one that is fine, or not judged", () => {
    expect(ratio({ ratio: "of our own", low: 1, high: 2, basis: " ", value: NA, word: NA })).toStrictEqual([
      { ...LOOK, message: "The of our own cannot be found.", expected: "Usually 1 to 2." },
    ]);
    for (const word of ["good", ""]) expect(ratio({ ratio: "price per outlet", value: 9, word })).toEqual([]);
  });
});

test.each([
  ["contingency", "Contingency", 0.25, "25 %", "(common practice, no source)"],
  ["overhead", "Overhead", 0.6, "60 %", "(common practice, no source)"],
  ["rate_tax", "Tax", 0.3, "30 %", "no country's tax on such work is higher (from memory)"],
])("the share %s: at its bound nothing, beyond it the cell", (name, label, most, shown, because) => {
  expect(fields({ [`review_${name}`]: most })).toEqual([]);
  expect(fields({ [`review_${name}`]: "9" })).toEqual([]);
  expect(fields({ [`review_${name}`]: 0.75 })).toStrictEqual([
    {
      weight: "doubtful",
      place: atField(`review_${name}`),
      message: `${label} is 75 %.`,
      expected: `Usually at most ${shown} ${because}.`,
      remedy: "Look at the figure; ask its maker.",
    },
  ]);
});

describe("the price of a part", () => {
  const priced = (part: string, ...each: readonly (number | string)[]): Finding[] =>
    lines(...each.map((one) => ({ part, each: one })));
  const FAR = {
    weight: "doubtful",
    remedy: "Look at the point, at the unit (a metre, a reel, a pack) and at the price list.",
  };
  test("at either bound nothing, beyond it its cell", () => {
    expect(priced("connector", 0.1, 15, 0, -4, "99")).toEqual([]);
    expect(priced("connector", 0.09, 15.1)).toStrictEqual(
      [0.09, 15.1].map((each, index) => ({
        ...FAR,
        place: at("lines_each", 1 + index),
        message: `“connector” is ${each} for one.`,
        expected: "Usually 0.1 to 15 (common practice, no source).",
      })),
    );
    expect(priced("something else", 0.001, 99_999)).toEqual([]);
    expect(slipsIn(smallBook({ lines: [{ part: 7, each: 9 }] }))).toEqual([]);
  });
  test("an hour of the crew as well", () => {
    for (const rate of [12, 250, 0, "99"]) expect(fields({ review_rate: rate })).toEqual([]);
    expect(fields({ review_rate: 251 })).toStrictEqual([
      {
        ...FAR,
        place: atField("review_rate"),
        message: "“Rate” is 251 for one.",
        expected: "Usually 12 to 250 (common practice, no source).",
      },
    ]);
  });
  // A connector is 0.1 to 15, its middle the root of 1.5; of four prices the root of the two inner ones counts.
  test("in another currency beside the other prices: those of 20 times as much are 2 to 300", () =>
    expect(priced("connector", 1.9, 10, 60, 301)).toStrictEqual(
      [1, 4].map((row) => ({
        ...FAR,
        place: at("lines_each", row),
        message: `“connector” is ${row === 1 ? 1.9 : 301} for one.`,
        expected: "Usually 2 to 300 (common practice, no source; by the other prices of this quote).",
      })),
    ));
  test.each([
    ["3.9 times", [1.5, 1.5, 15.21, 15.21], 2],
    ["4.1 times", [1.5, 1.5, 16.81, 16.81], 0],
    ["0.26 times", [0.08, 0.08, 1.2675, 1.2675], 2],
    ["0.24 times", [0.08, 0.08, 1.08, 1.08], 0],
    ["20 times, of three prices", [24.5, 24.5, 24.5], 3],
  ])("%s: whether it is another currency", (_, each, count) =>
    expect(priced("connector", ...each)).toHaveLength(count),
  );
});

test("slips of each kind, in the order of the sheet", () =>
  expect(
    slipsIn(
      smallBook(
        {
          lines: [{ part: "connector", quantity: 2, each: 16, again: 32, sum: 30, word: "look" }],
          ranges: [{ ratio: "cable per outlet", low: 1, high: 2, value: 3, word: "look" }],
        },
        {
          review_overhead: 0.75,
          review_heads: 1,
          review_heads_word: "look",
          review_tax: 1,
          review_tax_again: 2,
          review_tax_word: "look",
        },
      ),
    ).map(({ place }) => place!.sheet),
  ).toEqual(["lines_sum", "review_tax", "review_heads", "ranges_value", "review_overhead", "lines_each"]));

describe("the headline", () => {
  const book = (quoted?: number | string, shouldBe?: number | string, tolerance?: number) =>
    smallBook({}, { review_total: quoted, corrected_total: shouldBe, review_tolerance: tolerance });
  test("has the totals that are numbers", () => {
    expect(totalsOf(book(100, 90))).toStrictEqual({ quoted: 100, shouldBe: 90 });
    expect(totalsOf(book("100", 90))).toStrictEqual({ shouldBe: 90 });
    expect(totalsOf(book(100, "90"))).toStrictEqual({ quoted: 100 });
  });
  test.each([
    [book(undefined, 90), "It has no total; type it on Review."],
    [book(1100, 1000), "Quoted 1,100.00; without its slips it comes to 1,000.00."],
    [book(1000, 1100), "Quoted 1,000.00; without its slips it comes to 1,100.00."],
    [book(1100, 1000, 100), "Quoted 1,100.00, and that is what it comes to."],
    [book(1101, 1000, 100), "Quoted 1,101.00; without its slips it comes to 1,000.00."],
    [book(1100), "Quoted 1,100.00, and that is what it comes to."],
  ])("in words %#", (of, words) => expect(correctedInWords(of)).toBe(words));
});
