/**
 * Forty suppliers' lists of somebody who had not seen the reader, held to what a careful buyer reads from them
 * (tests/fixtures/priceLists, whose README says how the first run went). No line may be read wrongly without a word.
 */
import { readdirSync } from "node:fs";
import path from "node:path";
import { casesIn, play, type Case, type Played } from "./played";

const FOLDER = path.join(__dirname, "../../fixtures/priceLists");
const cases = casesIn(
  FOLDER,
  readdirSync(FOLDER)
    .filter((name) => name.endsWith(".json"))
    .sort(),
);

/** Where the preview is another one on purpose. */
const OTHERWISE: Readonly<Record<string, string>> = {
  "19.csv": "a list in another currency is refused, new articles and all; the case shows them as new",
  "34.xlsx": "of three sheets that read as lists one is chosen, and the others are taken after it",
};

let played: readonly { readonly one: Case; readonly first: Played; readonly answered: Played }[];
beforeAll(async () => {
  played = await Promise.all(
    cases.map(async (one) => ({
      one,
      first: await play(FOLDER, one, false),
      answered: await play(FOLDER, one, true),
    })),
  );
});

const sum = (count: (one: (typeof played)[number]) => number): number =>
  played.reduce((total, one) => total + count(one), 0);

test("all forty are there", () => {
  expect(cases).toHaveLength(40);
  expect(sum(({ one }) => one.lines.length)).toBe(450);
});

describe.each(["first", "answered"] as const)("%s", (which) => {
  test("no line is read otherwise, or taken where a buyer takes none", () => {
    expect(
      played.flatMap(({ one, [which]: { wrong } }) => wrong.map((said) => `${one.file}: ${said}`)),
    ).toEqual([]);
  });

  test("no line that a buyer reads is passed over", () => {
    const left = played.flatMap(({ one, [which]: found }) =>
      one.file in OTHERWISE ? [] : found.left.map((said) => `${one.file}: ${said}`),
    );
    expect(left).toEqual([]);
  });
});

test("whatever had to be asked is asked, in a sentence that says of what", () => {
  const missed = played.flatMap(({ one, first: { asksMissed, otherWords } }) =>
    [...asksMissed, ...otherWords].map((said) => `${one.file}: ${said}`),
  );
  // It asks of the whole list, which answers for this line too.
  expect(missed.filter((said) => !said.startsWith("32.csv: line 15"))).toEqual([]);
});

test("once the buyer has answered, the preview is the buyer's", () => {
  const off = played.flatMap(({ one, answered: { previewWrong } }) =>
    one.file in OTHERWISE ? [] : previewWrong.map((said) => `${one.file}: ${said}`),
  );
  expect(off).toEqual([]);
  // Lines that need no question: none of their own, and none of the list as a whole.
  const plain = played.map(({ one, first }) => {
    const whole = one.asks.some(({ line }) => line === 0);
    const lines = whole ? [] : one.lines.filter(({ line }) => !one.mayAsk?.includes(line));
    return { all: lines.length, right: lines.filter(({ line }) => first.right.includes(line)).length };
  });
  const count = (of: "all" | "right"): number => plain.reduce((total, one) => total + one[of], 0);
  process.stdout.write(
    `price lists: of ${sum(({ one }) => one.lines.length)} lines ${sum(({ first }) => first.right.length)} are right at once, ${sum(({ answered }) => answered.right.length)} with the buyer's answers; of ${count("all")} that need no question, ${count("right")} at once; the others are asked\n`,
  );
});

test("the lodge's list: every article right, the one that stands twice said", async () => {
  const lodge: Case = {
    file: "lodge-prices.csv",
    why: "worked by hand from the file",
    currency: "EUR",
    supplier: "any",
    known: [],
    // Article, unit, pack, price of one, price of the pack, as the file has them; its last day on each line.
    lines: LODGE.map(([line, article, unit, pack, price, packPrice]) => ({
      line,
      article,
      description: "",
      unit,
      pack,
      price,
      packPrice,
      validTo: "2027-03-31",
    })),
    asks: [{ line: 8, about: "twice", words: ["12.4"] }],
    mayAsk: [],
    preview: { new: LODGE.map(([line]) => line), changed: [], gone: [], suspicious: [] },
    heads: "sure",
  };
  const found = await play(FOLDER, lodge, false);
  expect(found).toMatchObject({
    right: LODGE.map(([line]) => line),
    asked: [],
    left: [],
    wrong: [],
    asksMissed: [],
    otherWords: [],
    previewWrong: [],
  });
  expect(found.list.questions).toEqual([]);
});

const LODGE: readonly (readonly [number, string, string, number, number, number])[] = [
  [3, "K-110", "m", 100, 0.39, 39],
  [4, "K-120", "m", 100, 0.76, 76],
  [5, "K-210", "m", 150, 1.79, 268.5],
  [6, "S-02", "piece", 1, 7.6, 7.6],
  [7, "S-03", "piece", 1, 9.1, 9.1],
  [8, "S-04", "piece", 1, 11.9, 11.9],
  [9, "S-06", "piece", 1, 16.4, 16.4],
  [10, "S-08", "piece", 1, 19.8, 19.8],
  [11, "T-10", "piece", 1, 8.2, 8.2],
  [12, "T-12", "piece", 1, 8.2, 8.2],
  [13, "T-15", "piece", 1, 8.2, 8.2],
  [14, "H-08", "piece", 1, 118, 118],
  [15, "H-16", "piece", 1, 186, 186],
  [16, "I-24", "piece", 1, 34.5, 34.5],
  [17, "W-01", "piece", 10, 4.15, 41.5],
  [18, "W-02", "piece", 10, 5.6, 56],
  [19, "F-06", "piece", 100, 0.42, 42],
  [20, "F-11", "piece", 20, 1.35, 27],
  [21, "D-90", "piece", 1, 96, 96],
  [22, "E-75", "piece", 10, 0.55, 5.5],
  [23, "C-01", "piece", 100, 0.04, 4],
];
