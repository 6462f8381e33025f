/**
 * Which drawn numbers could be a real job's: an ordinary job, made up here, is
 * taken, and with one thing about it that no job has, or that no question could
 * be asked about, it is not. What is common on site is judged here, without a source.
 */
import { trainingSets } from "../../src/training/sets/all";
import { quoteRows, rightRows, KINDS, type QuoteNumbers } from "../../src/training/sets/badQuote";

type Values = Readonly<Record<string, unknown>>;

/** Each change by what is odd about it: of the numbers, and of their answers. */
type Odd = readonly (readonly [odd: string, numbers: Values, answers?: Values])[];

function held(id: string, numbers: Values, answers: Values, fine: Odd, odd: Odd): void {
  const { plausible } = trainingSets.find((set) => set.id === id)!;
  const is = (n: Values, a: Values = {}) =>
    plausible!({ ...numbers, ...n } as never, { ...answers, ...a } as never);
  expect(is({})).toBe(true);
  expect(fine.filter(([, n, a]) => !is(n, a)).map(([name]) => name)).toEqual([]);
  expect(odd.filter(([, n, a]) => is(n, a)).map(([name]) => name)).toEqual([]);
}

test("look angles", () => {
  held(
    "look-angles",
    { longitude: 10, slot: 20, declination: 4 },
    { azimuth: 165, elevation: 35, compass: 161 },
    [
      ["a slot to the west", { slot: 0 }],
      ["a declination to the west", { declination: -12 }],
      ["a low dish", {}, { elevation: 20 }],
      ["a high one", {}, { elevation: 50 }],
    ],
    [
      ["a slot straight to the south, where the side cannot be mixed up", { slot: 10 }],
      ["a slot nearly so", { slot: 8 }],
      ["a declination that nobody would miss", { declination: 0.5 }],
      ["a declination as near a pole", { declination: 40 }],
      ["one to the west", { declination: -40 }],
      ["a dish that looks into the trees", {}, { elevation: 5 }],
      ["a dish that looks up, where no wall stands before it", {}, { elevation: 80 }],
      ["an azimuth beside north, where a degree is a turn", {}, { azimuth: 1 }],
      ["the same on the other side", {}, { azimuth: 359 }],
      ["a bearing beside north", {}, { compass: 2 }],
      ["a bearing just before it", {}, { compass: 358.5 }],
    ],
  );
});

/** Low is below 47, high above 77 dBµV (EN 60728-1); a tenth beside an edge rounding decides. */
const NEAR_EDGES: Odd = [46.9, 47.1, 76.9, 77.1].map((level) => [
  `${level} dBµV, where rounding decides`,
  { wanted: level < 47 ? "low" : level > 77 ? "high" : "ok" },
  { level, verdict: level < 47 ? "low" : level > 77 ? "high" : "ok" },
]);
const AWAY: Odd = [
  ["a low level, wanted", { wanted: "low" }, { level: 42, verdict: "low" }],
  ["a high level, wanted", { wanted: "high" }, { level: 82, verdict: "high" }],
];
const BEYOND: Odd = [
  ["another verdict than was chosen", { wanted: "low" }],
  ["no signal at all", { wanted: "low" }, { level: 12, verdict: "low" }],
  ["more than a head unit gives", { wanted: "high" }, { level: 120, verdict: "high" }],
];

test("cable", () => {
  held(
    "cable",
    { wanted: "ok" },
    { high: 15, level: 60, verdict: "ok" },
    [...AWAY, ["a short run", {}, { high: 6 }], ["a long one", {}, { high: 28 }]],
    [
      ...NEAR_EDGES,
      ...BEYOND,
      ["a cord of a metre", {}, { high: 0.3 }],
      ["a run that needs an amplifier", {}, { high: 60 }],
    ],
  );
});

test("splitters", () => {
  held(
    "splitters",
    { wanted: "ok", ways: 4, ways2: 4, tap: 10, tap2: 14 },
    { level: 60, verdict: "ok" },
    [...AWAY, ["32 outputs", { ways: 8, ways2: 4 }]],
    [
      ...NEAR_EDGES,
      ...BEYOND,
      ["more outputs than a house has", { ways: 8, ways2: 8 }],
      ["two taps of one value, which could not be mixed up", { tap2: 10 }],
    ],
  );
});

test("tuners", () => {
  held(
    "tuners",
    { rooms: ["a", "b", "a", "a", "b"], frequency: 1201, band: 1400 },
    { units: 4 },
    [
      ["a fraction of three quarters", { frequency: 1203 }],
      ["two head units", {}, { units: 2 }],
    ],
    [
      ["one head unit, where nothing is divided", {}, { units: 1 }],
      ["more head units than a house has", {}, { units: 20 }],
      ["one kind in all rooms before", { rooms: ["a", "a", "a", "a", "b"] }],
      ["a word without a fraction", { frequency: 1200 }],
      ["a half, which is rounded by custom", { frequency: 1202 }],
    ],
  );
});

test("supply", () => {
  held(
    "supply",
    { least: 10, most: 13, wanted: "ok" },
    { volts: 12, run: 80, verdict: "ok" },
    [
      ["too low, wanted", { wanted: "low" }, { volts: 9, verdict: "low" }],
      ["too high, wanted", { wanted: "high" }, { volts: 13.5, verdict: "high" }],
    ],
    [
      ["another verdict than was chosen", { wanted: "high" }],
      ["volts at which nothing starts", { wanted: "low" }, { volts: 3, verdict: "low" }],
      ["so near the least that rounding decides", {}, { volts: 10.1 }],
      ["so near the greatest that rounding decides", {}, { volts: 12.95 }],
      ["a longest run that is none", {}, { run: 2 }],
      ["a longest run from here to the next town", {}, { run: 3000 }],
    ],
  );
});

test("pricing", () => {
  // Five runs of 55 m with 2 m of slack and 10 % of waste are 62.7 m each, 313.5 m in all: two reels of 200 m, one
  // with three runs and one with two. Of 100 m four would hold the length, but each holds one run only.
  const job = { runs: [55, 55, 55, 55, 55], slack: 2, waste: 10, outlets: 10, minutes: 45 };
  held(
    "pricing",
    { ...job, reel: 200 },
    { reels: 2 },
    [["minutes that are no whole hours", { minutes: 50 }]],
    [
      ["packing that needs more reels than the total", { reel: 100 }, { reels: 4 }],
      ["one reel, where nothing is divided", { reel: 500 }, { reels: 1 }],
      ["whole hours", { minutes: 60 }],
    ],
  );
});

test("a small job", () => {
  held(
    "small-job",
    {},
    { units: 3, level: 60, volts: 12 },
    [["a level of 45 dBµV", {}, { level: 45 }]],
    [
      ["one head unit, where nothing is divided", {}, { units: 1 }],
      ["no signal at all", {}, { level: 12 }],
      ["more than a head unit gives", {}, { level: 120 }],
      ["volts at which nothing starts", {}, { volts: 3 }],
    ],
  );
});

describe("the bad quote", () => {
  // 8 receivers and 4 recorders of two tuners are 16 tuners, two head units of 8.
  const quote: QuoteNumbers = {
    ...{ receivers: 8, recorders: 4, dropFeet: 1000, trunkFeet: 500 },
    ...{ outlets: 10, outletMinutes: 45, unitMinutes: 90, rate: 40, margin: 20, tax: 10 },
    prices: [100, 50, 200, 1, 2, 30, 40],
    mistakes: {
      reception: { row: 3, kind: KINDS.sum },
      cable: { row: 4, kind: KINDS.feet },
      labour: { row: 7, kind: KINDS.minutes },
      totals: { row: 12, kind: KINDS.tax },
    },
    off: { reception: 18, cable: 9, labour: 9, totals: 27 },
  };
  const set = trainingSets.find(({ id }) => id === "bad-quote")!;
  const plausible = (n: QuoteNumbers): boolean => set.plausible!(n as never, {});

  test("as it should be, by an office's arithmetic", () => {
    // 1000 ft are 304.8 m, 500 ft 152.4 m; 450 minutes are 7.5 hours, 180 are 3.
    const sums = [200, 100, 200, 304.8, 304.8, 60, 300, 120, 80];
    const cost = 1669.6;
    expect(rightRows(quote).map(({ sum }) => sum)).toEqual([...sums, cost, 2087, 208.7, 2295.7]);
  });
  test("as it is handed out: each mistake in its row, and what follows goes on from it", () => {
    // 18 too much for the dish; 1000 m of drop cable; 450 hours; the tax on the cost.
    const sums = [200, 100, 218, 1000, 304.8, 60, 18_000, 120, 80];
    expect(quoteRows(quote).map(({ sum }) => sum)).toEqual([
      ...sums,
      ...[20_082.8, 25_103.5, 2008.28, 27_111.78],
    ]);
  });
  test("each other mistake, alone with those", () => {
    const sumOf = (row: number, more: Partial<QuoteNumbers["mistakes"]>) =>
      quoteRows({ ...quote, mistakes: { ...quote.mistakes, ...more } })[row - 1]!;
    // One tuner a recorder: 12 tuners are two head units all the same; of 9 recorders 17 are three, not four.
    const nine = { ...quote, recorders: 9 };
    const counted = quoteRows({
      ...nine,
      mistakes: { ...quote.mistakes, reception: { row: 1, kind: KINDS.tuners } },
    });
    expect([counted[0]!.quantity, counted[0]!.sum, counted[1]!.quantity]).toEqual([3, 300, 4]);
    expect(sumOf(7, { labour: { row: 7, kind: KINDS.sum } })).toMatchObject({ quantity: 7.5, sum: 309 });
    expect(sumOf(8, { labour: { row: 8, kind: KINDS.minutes } })).toMatchObject({ quantity: 180, sum: 7200 });
    const lines = 20_082.8;
    // Without the fitting of the head units, row 8.
    expect(sumOf(10, { totals: { row: 10, kind: KINDS.left } }).sum).toBe(19_962.8);
    expect(sumOf(11, { totals: { row: 11, kind: KINDS.markup } }).sum).toBe(24_099.36);
    expect(sumOf(13, { totals: { row: 13, kind: KINDS.added } }).sum).toBe(27_613.85 + 27);
    expect(sumOf(10, {}).sum).toBe(lines);
  });
  test("plausible where every mistake shows, and a house has two head units", () => {
    expect(plausible(quote)).toBe(true);
    expect(plausible({ ...quote, receivers: 2, recorders: 1 })).toBe(false);
    // Of two head units recorders counted once make none less.
    const hidden = { ...quote.mistakes, reception: { row: 1, kind: KINDS.tuners } };
    expect(plausible({ ...quote, mistakes: hidden })).toBe(false);
    expect(plausible({ ...quote, off: { ...quote.off, reception: 1 } })).toBe(false);
    // The dish for less than nothing.
    expect(plausible({ ...quote, off: { ...quote.off, reception: -300 } })).toBe(false);
  });
  test("the paper: each row with its unit, where it has one, and its figures", () => {
    const { columns, rows, lines } = set.paper!(quote as never);
    expect(columns.map(({ head }) => head)).toEqual(["Row and what", "Quantity", "Price of one", "", "Sum"]);
    expect(rows).toHaveLength(13);
    expect(rows[0]).toEqual(["1  Head unit, pieces", 2, 100, "", 200]);
    expect(rows[3]).toEqual(["4  Drop cable, m", 1000, 1, "", 1000]);
    expect(rows[8]).toEqual(["9  Travel, trips", 2, 40, "", 80]);
    expect(rows[9]).toEqual(["10  Cost, rows 1 to 9", "", "", "", 20_082.8]);
    expect(rows[10]![0]).toBe("11  Price with a margin of 20 % of the price");
    expect(rows[11]![0]).toBe("12  Tax, 10 % of the price");
    expect(rows[12]![0]).toBe("13  Total, price and tax");
    for (const figure of [
      "8 receivers",
      "4 recorders",
      "1000 ft",
      "500 ft",
      "10 outlets at 45 minutes",
      "90 minutes",
    ])
      expect(lines.join(" ")).toContain(figure);
    expect(lines.join(" ")).toContain("Margin 20 % of the price, tax 10 % of the price");
  });
});
