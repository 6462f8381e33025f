/** What the review names in a quote review: just inside each limit nothing, just beyond it the cell; and the headline. */
import { recalculate, trials } from "../../src/hosts/headless/recalculate";
import { startFromTyped } from "../../src/review/ranges/quoteStart";
import { quoteRanges } from "../../src/review/ranges/quoteRanges";
import type { Learned } from "../../src/review/ranges/learned";
import { reviewInFull } from "../../src/review/reviewInFull";
import { slipsIn } from "../../src/review/rules/quoteSlips";
import type { JobInputs } from "../../src/workbooks/definition";
import { layOut } from "../../src/workbooks/layOut";
import { quoteReview } from "../../src/workbooks/quoteReview/definition";
import { placeOfName } from "../../src/workbooks/named";
import type { TypedQuote } from "../../src/workbooks/quoteReview/typed/typedQuote";

/** 10 plates, 100 m of cable and 20 hours: 60 + 50 + 800 = 910, and a tax of 20 %, 182. */
const SOUND: TypedQuote = {
  source: "",
  linesAre: "the whole price",
  inFeet: false,
  words: {},
  remarks: [],
  lines: [
    { line: 1, part: "wall plate", quantity: 10, each: 6, sum: 60 },
    { line: 2, part: "coaxial cable", quantity: 100, each: 0.5, sum: 50 },
    { line: 3, part: "labour", quantity: 20, each: 40, sum: 800, unit: "h", labour: true },
  ],
  figures: {
    outlets: 10,
    tuners: 32,
    bands: 16,
    heads: 2,
    cable: 100,
    hours: 20,
    rate: 40,
    labour: 800,
    net: 910,
    taxRate: 0.2,
    tax: 182,
    total: 1092,
  },
};

const withFigures = (figures: TypedQuote["figures"]): JobInputs =>
  startFromTyped({ ...SOUND, figures: { ...SOUND.figures, ...figures } });
const withLine = (
  line: Partial<TypedQuote["lines"][number]>,
  figures: TypedQuote["figures"] = {},
): JobInputs =>
  startFromTyped({
    ...SOUND,
    lines: [{ ...SOUND.lines[0]!, ...line }, ...SOUND.lines.slice(1)],
    figures: { ...SOUND.figures, ...figures },
  });
const bookOf = (inputs: JobInputs) => recalculate(layOut(quoteReview, inputs));
const messages = (inputs: JobInputs): string[] => slipsIn(bookOf(inputs)).map(({ message }) => message);

test("a sound quote has nothing to say", () => expect(messages(startFromTyped(SOUND))).toEqual([]));

test.each([
  [
    "a sum of a line",
    withLine({ sum: 60.05 }),
    withLine({ sum: 60.06 }),
    /^“wall plate” is 60\.06; 10 times 6 is 60\.00\.$/,
  ],
  [
    "the net",
    withFigures({ net: 910.05, tax: 182.01, total: 1092.06 }),
    withFigures({ net: 910.06, tax: 182.01, total: 1092.07 }),
    /^Price without tax is 910\.06; worked again it is 910\.00\.$/,
  ],
  [
    "the tax",
    withFigures({ tax: 182.04, total: 1092.04 }),
    withFigures({ tax: 182.06, total: 1092.06 }),
    /^Tax, sum is 182\.06; worked again it is 182\.00\.$/,
  ],
  [
    "the total",
    withFigures({ total: 1092.05 }),
    withFigures({ total: 1092.06 }),
    /^Total is 1,092\.06; worked again it is 1,092\.00\.$/,
  ],
  [
    "tuners on two head units",
    withFigures({ tuners: 32 }),
    withFigures({ tuners: 33 }),
    /^2 head units of 16 user bands serve 32 of the 33 tuners\.$/,
  ],
  ["the overhead", withFigures({ overhead: 0.6 }), withFigures({ overhead: 0.61 }), /^Overhead is 61 %\.$/],
  [
    "the cable for each outlet",
    withFigures({ cable: 800 }),
    withFigures({ cable: 801 }),
    /^The cable per outlet is 80\.1 /,
  ],
])("%s: just inside nothing, just beyond its cell", (_, inside, beyond, message) => {
  expect(messages(inside)).toEqual([]);
  expect(messages(beyond)).toEqual([expect.stringMatching(message)]);
});

test("the price of a part: at the limit nothing, beyond it its cell", () => {
  const priced = (each: number): string[] => {
    const net = 850 + each * 10;
    return messages(withLine({ each, sum: each * 10 }, { net, tax: net * 0.2, total: net * 1.2 }));
  };
  expect(priced(60)).toEqual([]);
  expect(priced(61)).toEqual([expect.stringMatching(/^“wall plate” is 61 for one\.$/)]);
});

test("a line that stands twice is named once, and taken out of the corrected total", () => {
  const lines = [...SOUND.lines, SOUND.lines[0]!];
  const figures = { ...SOUND.figures, net: 970, tax: 194, total: 1164 };
  const found = reviewInFull(bookOf(startFromTyped({ ...SOUND, lines, figures })), trials);
  expect(found.findings.filter(({ rule }) => rule === "slip in a quote")).toEqual([
    expect.objectContaining({ message: "“wall plate” stands twice, each time with 60.00." }),
  ]);
  expect(found.headline).toMatchObject({ quoted: 1164, shouldBe: 1092 });
  expect(found.headline!.sentence).toMatch(
    /^Quoted 1,164\.00; should be about 1,092\.00, because Review A\d+: “wall plate”/,
  );
});

test("head units that are missing are in the corrected total at their own price, taxed", () => {
  const book = bookOf(
    startFromTyped({ ...SOUND, headPrice: 100, figures: { ...SOUND.figures, tuners: 33 } }),
  );
  expect(reviewInFull(book, trials).headline).toMatchObject({ quoted: 1092, shouldBe: 1212 });
});

test("a margin that was added as a markup is told as that, with the price that it asks for", () => {
  const inputs: JobInputs = {
    fields: { review_cost: 1000, review_margin: 0.2, review_price: 1200, review_tolerance: 0.05 },
  };
  const book = bookOf(inputs);
  const place = placeOfName(book, "review_price")!;
  expect(slipsIn(book)[0]).toMatchObject({
    place: { sheet: place.sheet, cell: place.at },
    message: "The margin of 20 % was added to the cost as a markup: 1,000.00 and 20 % of it are 1,200.00.",
    expected: "1,250.00, of which the margin is 20 %.",
  });
});

const LEARNED: Learned = {
  name: "job_minutes_per_outlet",
  what: "Minutes of labour an outlet",
  of: "jobs of 4 to 15 outlets",
  unit: "min",
  low: 90,
  middle: 100,
  high: 120,
  quotes: 6,
};

test("ranges are those of the accepted quotes of like size, told with where they come from; else common practice", () => {
  const hours = (outlets: number) =>
    quoteRanges([LEARNED], outlets, false).find(({ ratio }) => ratio === "crew hours per outlet");
  // 90 to 120 minutes, half as much again to either side, as whole jobs differ.
  expect(hours(10)).toEqual({
    ratio: "crew hours per outlet",
    low: 1,
    high: 3,
    basis: "learned from 6 accepted quotes, jobs of 4 to 15 outlets",
  });
  expect(hours(100)).toMatchObject({ basis: "common practice, no source" });
});

test("where money buys another amount, no range is given for it", () => {
  const [price] = quoteRanges([], 10, false, "INR");
  expect(price).toEqual({ ratio: "price per outlet" });
});
