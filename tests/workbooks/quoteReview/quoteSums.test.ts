/** What a typed quote comes to: its net, tax and total, its labour, cable and head units, and what contradicts the rest. All quotes are invented. */
import { fromTyped } from "../../../src/workbooks/quoteReview/fromTyped";
import { readTypedQuote } from "../../../src/workbooks/quoteReview/typed/readQuote";
import type { TypedQuote } from "../../../src/workbooks/quoteReview/typed/typedQuote";
import { tableOf } from "../../support/surveyTables";

const HEAD = "Description;Qty;Unit;Unit price;Total";
const quoteOf = (...lines: string[]): TypedQuote => {
  const quote = readTypedQuote([tableOf([HEAD, ...lines])]);
  if (typeof quote === "string") throw new Error(quote);
  return quote;
};
const figuresOf = (...lines: string[]) => quoteOf(...lines).figures;
const saidOf = (...lines: string[]) =>
  quoteOf(...lines).remarks.flatMap(({ line, kind, why }) => (kind === "words" ? [] : [[line, why]]));

/** 296 + 104 = 400. */
const LINES = ["dish with mount;2;pcs;148.00;296.00", "splitter;4;pcs;26.00;104.00"];

describe("net, tax and total", () => {
  test.each([
    [
      "all three",
      ["Net;;;;400.00", "VAT 20 %;;;;80.00", "Total;;;;480.00"],
      { net: 400, taxRate: 0.2, tax: 80, total: 480 },
    ],
    ["a total alone", ["Total;;;;400.00"], { total: 400 }],
    ["a net alone", ["Net total;;;;400.00"], { net: 400 }],
    [
      "a sum before the tax",
      ["Subtotal;;;;400.00", "VAT 20 %;;;;80.00", "Total;;;;480.00"],
      { net: 400, tax: 80, total: 480 },
    ],
    [
      "two sums of one name",
      ["Total;;;;400.00", "VAT 20 %;;;;80.00", "Total;;;;480.00"],
      { net: 400, tax: 80, total: 480 },
    ],
    ["a total before its tax", ["Total;;;;400.00", "VAT 20 %;;;;80.00"], { net: 400, tax: 80 }],
    [
      "two rates: what all of it bears together, 50 of 400",
      ["Net;;;;400.00", "VAT 20 %;;;;40.00", "VAT 5 %;;;;10.00", "Total;;;;450.00"],
      { net: 400, tax: 50, total: 450, taxRate: 0.125 },
    ],
    [
      "one tax that is told twice counts once",
      ["Net;;;;400.00", "VAT 20 %;;;;80.00", "VAT 20 %;;;;80.00", "Total;;;;480.00"],
      { net: 400, tax: 80, total: 480 },
    ],
  ])("%s", (_, sums, wanted) => {
    expect(figuresOf(...LINES, ...sums)).toMatchObject(wanted);
  });

  test("of lines that nobody names: what is the sum of all above it, its tax, and both together", () => {
    const quote = quoteOf(...LINES, "abc;;;;400.00", "def 20 %;;;;80.00", "ghi;;;;480.00");
    expect(quote.figures).toMatchObject({ net: 400, tax: 80, taxRate: 0.2, total: 480 });
    expect(quote.lines.map(({ part }) => part)).toEqual(["dish with mount", "splitter"]);
  });

  test("a subtotal that does not come out is told; one that does is not", () => {
    expect(saidOf(LINES[0]!, "Subtotal;;;;296.00", LINES[1]!, "Net;;;;400.00")).toEqual([]);
    expect(saidOf(LINES[0]!, "Subtotal;;;;290.00", LINES[1]!, "Net;;;;400.00")).toEqual([
      [3, "The lines above it come to 296.00, not 290.00."],
    ]);
    // Of all above it, or of those since the last.
    expect(saidOf(LINES[0]!, "Subtotal;;;;296.00", LINES[1]!, "Subtotal;;;;104.00", "Net;;;;400.00")).toEqual(
      [],
    );
    expect(saidOf(LINES[0]!, "Subtotal;;;;296.00", LINES[1]!, "Subtotal;;;;105.00", "Net;;;;400.00")).toEqual(
      [[5, "The lines above it come to 104.00, not 105.00."]],
    );
    // As near as 5 cents: each line was rounded by itself.
    expect(saidOf(LINES[0]!, "Subtotal;;;;296.05", LINES[1]!, "Net;;;;400.00")).toEqual([]);
    expect(saidOf(LINES[0]!, "Subtotal;;;;296.06", LINES[1]!, "Net;;;;400.00")).toHaveLength(1);
  });

  test("prices with the tax in them", () => {
    // 400 = 333.33 + 66.67.
    const inside = quoteOf(...LINES, "Net;;;;333.33", "VAT 20 %;;;;66.67", "Total;;;;400.00");
    expect(inside.taxInside).toBe(66.67);
    expect(quoteOf(...LINES, "Net;;;;400.00", "VAT 20 %;;;;80.00", "Total;;;;480.00")).not.toHaveProperty(
      "taxInside",
    );
    expect(fromTyped(inside).blocks!.lines!.at(-1)).toEqual({
      part: "Tax that is in the prices above, taken out",
      sum: -66.67,
    });
  });
});

describe("a discount", () => {
  test("with its sum, or as a share of what stands above it", () => {
    const sums = (...lines: string[]) => quoteOf(...LINES, ...lines).lines.map(({ sum }) => sum);
    expect(sums("Discount;;;;-20.00", "Net;;;;380.00")).toEqual([296, 104, -20]);
    // 5 % of 400.
    expect(sums("Discount;5 %;;;", "Net;;;;380.00")).toEqual([296, 104, -20]);
    expect(sums("Discount;;;;5 %", "Net;;;;380.00")).toEqual([296, 104, -20]);
  });
});

describe("labour", () => {
  test("lines in hours: hours, rate and sum", () => {
    const quote = quoteOf(...LINES, "Labour;10;h;40.00;400.00", "Net;;;;800.00");
    expect(quote.figures).toMatchObject({ hours: 10, rate: 40, labour: 400 });
    expect(quote.lines.map(({ labour }) => labour)).toEqual([undefined, undefined, true]);
  });

  test("of two rates none is the rate", () => {
    const { figures } = quoteOf(...LINES, "Labour, roof;10;h;40.00;400.00", "Labour, rooms;5;h;30.00;150.00");
    expect(figures).toMatchObject({ hours: 15, labour: 550 });
    expect(figures).not.toHaveProperty("rate");
  });

  test("a lump sum", () => {
    const { figures } = quoteOf(...LINES, "Installation;;;;500.00", "Net;;;;900.00");
    expect(figures.labour).toBe(500);
    expect(figures).not.toHaveProperty("hours");
  });
});

describe("cable and head units", () => {
  test.each([
    ["metres", ["indoor drop cable;250;m;0.40;100.00"], 250, 0.4],
    ["reels with their length", ["indoor drop cable 100 m;3;reels;40.00;120.00"], 300, 0.4],
    ["both", ["indoor drop cable 100 m;2;reels;40.00;80.00", "outdoor cable;50;m;0.80;40.00"], 250, 0.4],
  ])("%s", (_, lines, cable, price) => {
    const quote = quoteOf(...LINES, ...lines);
    expect([quote.figures.cable, quote.cablePrice, quote.inFeet]).toEqual([cable, price, false]);
  });

  test("a reel of unknown length leaves the cable unknown, and ties are no cable", () => {
    expect(quoteOf(...LINES, "indoor drop cable;2;reels;40.00;80.00").figures).not.toHaveProperty("cable");
    expect(quoteOf(...LINES, "cable ties;200;pcs;0.10;20.00").figures).not.toHaveProperty("cable");
  });

  test("in feet", () => {
    expect(quoteOf(...LINES, "indoor drop cable;250;ft;0.40;100.00").inFeet).toBe(true);
  });

  test("head units: how many, their bands and the price of one", () => {
    const quote = quoteOf(
      ...LINES,
      "head unit, 16 bands;2;pcs;150.00;300.00",
      "head unit bracket;3;pcs;9.00;27.00",
    );
    expect([quote.figures.heads, quote.figures.bands, quote.headPrice]).toEqual([2, 16, 150]);
    // Of several kinds what one serves on average: (2 × 16 + 1 × 8) / 3 = 13 and a third.
    const two = quoteOf("head unit, 16 bands;2;pcs;150.00;300.00", "head unit, 8 bands;1;pcs;90.00;90.00");
    expect([two.figures.heads, two.figures.bands]).toEqual([3, 13]);
  });
});

describe("what contradicts the rest is told", () => {
  test("a minus", () => {
    expect(saidOf(...LINES, "splitter;-2;pcs;26.00;52.00")).toContainEqual([
      4,
      "Its quantity is -2: was the minus meant?",
    ]);
  });

  test("half a piece", () => {
    expect(saidOf(...LINES, "mast;2.5;pcs;4;10.00")).toContainEqual([
      4,
      "2.5 pieces at 4: have quantity and price changed places?",
    ]);
    expect(saidOf(...LINES, "indoor drop cable;2.5;m;4;10.00")).toEqual([]);
  });

  test("options that are in the price all the same", () => {
    const lines = [...LINES, "Option: radio plate;1;pcs;50.00;50.00"];
    expect(saidOf(...lines, "Net;;;;400.00")).toEqual([]);
    expect(saidOf(...lines, "Net;;;;450.00")).toEqual([
      [
        4,
        "The price without tax has the options of 50.00 in it, which are said not to be in the total: without them it is 400.00.",
      ],
    ]);
  });

  test("wall plates that are not as many as outlets", () => {
    const plates = (count: number) =>
      saidOf("Outlets: 12", ...LINES, `wall plate;${count};pcs;5.00;${count * 5}.00`, "Net;;;;460.00").map(
        ([, why]) => why,
      );
    expect(plates(12)).toEqual([]);
    expect(plates(10)).toContain("There are 10 of them for 12 outlets.");
  });
});

describe("as the review begins with it", () => {
  const fields = (...lines: string[]): Readonly<Record<string, unknown>> =>
    fromTyped(quoteOf(...lines)).fields!;

  test("its figures, by their names on Review", () => {
    expect(fields(...LINES, "Net;;;;400.00", "VAT 20 %;;;;80.00", "Total;;;;480.00")).toMatchObject({
      review_net: 400,
      review_tax: 80,
      review_rate_tax: 0.2,
      review_total: 480,
      // All of it is taxed, unless it says otherwise.
      review_taxed: 400,
      review_lines_are: "the whole price",
      review_tolerance: 0.05,
    });
    const untaxed = fields(...LINES, "Total;;;;400.00");
    expect(untaxed).not.toHaveProperty("review_taxed");
    expect(untaxed).not.toHaveProperty("review_rate_tax");
  });

  test("the same part twice is kept; an option is asked about and is no line", () => {
    const { blocks } = fromTyped(quoteOf(...LINES, "Option: radio plate;1;pcs;50.00;50.00", "Net;;;;400.00"));
    expect(blocks!.lines).toEqual([
      { part: "dish with mount", quantity: 2, each: 148, sum: 296 },
      { part: "splitter", quantity: 4, each: 26, sum: 104 },
    ]);
    expect(blocks!.asked![0]!.question).toMatch(
      /^Line 4, “.*radio plate” for 50, is an option: is it left out/,
    );
  });
});
