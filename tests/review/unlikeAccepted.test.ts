/** What lies beside a firm's accepted quotes: each finding whole, in metres and feet, and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import type { FirmSays } from "../../src/review/ranges/firm";
import type { Learned } from "../../src/review/ranges/learned";
import { DEFAULT_MARGIN_FLOOR, type ReviewOptions } from "../../src/review/rule";
import { unlikeAccepted } from "../../src/review/rules/unlikeAccepted";
import { at, found, smallBook, type Row } from "./smallBook";

type Blocks = Readonly<Record<string, readonly Row[]>>;
const optionsOf = (...learned: Learned[]): ReviewOptions => ({
  marginFloor: DEFAULT_MARGIN_FLOOR,
  standards: { learned } as unknown as FirmSays,
});
const book = (blocks: Blocks, fields: Row = {}) =>
  smallBook({ rooms: [{ outlet: "a" }], ...blocks }, { site_currency: "EUR", ...fields });
const told = (learned: readonly Learned[], ...asked: Parameters<typeof book>): Finding[] =>
  found(unlikeAccepted, book(...asked), { options: optionsOf(...learned) });

/** Nothing is said from 3.2 to 10: a quarter beyond either end. */
const PLATE: Learned = {
  name: "plates_price",
  what: "Price of one",
  of: "flat",
  unit: "EUR",
  low: 4,
  middle: 6,
  high: 8,
  quotes: 5,
};
const plate = (price: number): Blocks => ({ plates: [{ name: "Flat", price }] });
const GOES_BY = "The price or the prediction goes by it.";
const REMEDY =
  "Compare with the plan and the price list; or change the range on the sheet Ranges of the standards.";

describe("a price of one part", () => {
  test("beyond its range", () =>
    expect(told([PLATE], plate(10.5))).toStrictEqual([
      {
        weight: "doubtful",
        place: at("plates_price", 1),
        message: "Price of one of Flat is 10.5 EUR; in 5 accepted quotes it was 4 to 8 EUR.",
        expected: "About 6 EUR (learned from 5 quotes).",
        usual: { low: 4, high: 8 },
        effect: GOES_BY,
        remedy: REMEDY,
      },
    ]));
  test("at either bound, of another part, or without a job: nothing", () => {
    expect(told([PLATE], plate(3.1))).toHaveLength(1);
    for (const price of [3.2, 10]) expect(told([PLATE], plate(price))).toEqual([]);
    expect(told([PLATE], { plates: [{ name: "Deep", price: 99 }] })).toEqual([]);
    expect(told([PLATE], { ...plate(99), rooms: [{ outlet: "" }] })).toEqual([]);
    expect(
      found(unlikeAccepted, book(plate(99)), { options: optionsOf(PLATE), definition: undefined }),
    ).toEqual([]);
  });
  test("on purpose", () => {
    const onpurpose = [{ what: "flat", why: "gilt" }];
    expect(told([PLATE], { ...plate(99), onpurpose })).toEqual([]);
  });
  test("of quotes that all had one price; of four quotes; of two", () => {
    const of = (more: Partial<Learned>) => told([{ ...PLATE, ...more }], plate(99));
    expect(of({ low: 6, high: 6 })[0]!.message).toBe(
      "Price of one of Flat is 99 EUR; in 5 accepted quotes it was 6 EUR.",
    );
    expect(of({ quotes: 4 })[0]!.weight).toBe("worth knowing");
    expect(of({ quotes: 3 })).toHaveLength(1);
    expect(of({ quotes: 2 })).toEqual([]);
  });
});

test("is looked for where enough quotes were learned of", () => {
  const areThere = (options: ReviewOptions) => unlikeAccepted.needs!.areThere({ read: book({}), options });
  expect(areThere(optionsOf(PLATE))).toBe(true);
  expect(areThere(optionsOf({ ...PLATE, quotes: 3 }))).toBe(true);
  expect(areThere(optionsOf({ ...PLATE, quotes: 2 }))).toBe(false);
  expect(areThere({ marginFloor: DEFAULT_MARGIN_FLOOR })).toBe(false);
});

describe("by the metre", () => {
  const METRE: Learned = {
    ...PLATE,
    name: "cables_price",
    of: "coax",
    unit: "EUR per m",
    low: 0.2,
    middle: 0.3,
    high: 0.4,
  };
  const REEL: Learned = {
    ...METRE,
    name: "cables_reel",
    what: "Reel",
    unit: "m",
    low: 100,
    middle: 100,
    high: 100,
  };
  const cable = (reel: number, price: number): Blocks => ({ cables: [{ name: "Coax", reel, price }] });
  test("a cable, with what its reel should cost", () =>
    expect(told([METRE], cable(100, 60))).toStrictEqual([
      {
        weight: "doubtful",
        place: at("cables_price", 1),
        message:
          "Price of one of Coax is 0.60 EUR a metre; in 5 accepted quotes it was 0.20 to 0.40 EUR a metre.",
        expected: "About 0.30 EUR a metre: 30 in this cell (learned from 5 quotes).",
        usual: { low: 20, high: 40 },
        effect: GOES_BY,
        remedy: REMEDY,
      },
    ]));
  test("in a job in feet by the foot: 0.3048 m", () => {
    const [finding] = told([METRE], cable(100, 60), { site_unit: "ft" });
    expect(finding).toMatchObject({
      // 0.20 and 0.40 a metre are 0.061 and 0.122 a foot; 0.30 are 0.0914, and 9.144 for 100 feet.
      message:
        "Price of one of Coax is 0.60 EUR a foot; in 5 accepted quotes it was 0.06 to 0.12 EUR a foot.",
      expected: "About 0.09 EUR a foot: 9.144 in this cell (learned from 5 quotes).",
    });
  });
  test("of less than a cent two figures, from a cent on two decimals", () => {
    const said = (price: number) => told([METRE], cable(1000, price))[0]!.message;
    expect(said(4.567)).toMatch(/ is 0\.0046 EUR a metre;/);
    expect(said(10)).toMatch(/ is 0\.01 EUR a metre;/);
  });
  test("minutes have three figures", () => {
    const route: Learned = {
      ...METRE,
      name: "routes_minutes",
      what: "Minutes",
      of: "duct",
      unit: "min per m",
    };
    expect(told([route], { routes: [{ name: "Duct", minutes: 1.2345 }] })[0]).toMatchObject({
      message: "Minutes of Duct is 1.23 min a metre; in 5 accepted quotes it was 0.2 to 0.4 min a metre.",
      expected: "About 0.3 min a metre (learned from 5 quotes).",
    });
  });
  const both = (reel: number, price: number, fields: Row = {}) =>
    told([METRE, REEL], cable(reel, price), fields).map(({ place, message, expected }) => [
      place!.sheet,
      message,
      expected,
    ]);
  test("a reel at the price of the usual one is what is off", () => {
    const expected = "About 100 m (learned from 5 quotes).";
    expect(both(500, 30)).toEqual([
      ["cables_reel", "Reel of Coax is 500 m; in 5 accepted quotes it was 100 m.", expected],
    ]);
    // For a usual reel of 100 m: 0.16 and 0.50 a metre, which is just allowed.
    for (const price of [16, 50]) expect(both(500, price)[0]![0]).toBe("cables_reel");
    for (const price of [15, 51]) expect(both(800, price)[0]![0]).toBe("cables_price");
    expect(both(1640.42, 30, { site_unit: "ft" })).toEqual([
      [
        "cables_reel",
        "Reel of Coax is 1640 ft; in 5 accepted quotes it was 328 ft.",
        "About 328 ft: 328.1 in this cell (learned from 5 quotes).",
      ],
    ]);
  });
  test("a reel at its own price is none; at another price it is the price", () => {
    expect(both(500, 150)).toEqual([]);
    expect(both(500, 5).map(([sheet]) => sheet)).toEqual(["cables_price"]);
    expect(both(100, 60).map(([sheet]) => sheet)).toEqual(["cables_price"]);
  });
});

describe("a whole job", () => {
  const JOB = "jobs of 4 to 15 outlets";
  const PRICE: Learned = {
    ...PLATE,
    name: "job_price_per_outlet",
    what: "Price an outlet",
    of: JOB,
    low: 100,
    middle: 150,
    high: 200,
  };
  const LABOUR: Learned = {
    ...PLATE,
    name: "job_labour_share",
    what: "Labour's share",
    of: "",
    unit: "share",
    low: 0.4,
    middle: 0.5,
    high: 0.55,
  };
  const WHOLE = {
    weight: "worth knowing",
    effect: "The whole job is unlike them; nothing by itself is said to be wrong.",
    remedy: REMEDY,
  };
  const job = { count_outlets: 5, price_sell: 2000, price_labour: 900, price_direct: 1000 };
  test("is worth knowing, and has no usual figure of a cell", () =>
    expect(told([PRICE, LABOUR], {}, job)).toStrictEqual([
      {
        ...WHOLE,
        message: `Price an outlet: 400 EUR; in 5 accepted ${JOB} it was 100 to 200 EUR.`,
        expected: "About 150 EUR (learned from 5 quotes).",
      },
      {
        ...WHOLE,
        message: "Labour's share: 90 %; in 5 accepted quotes it was 40 % to 55 %.",
        expected: "About 50 % (learned from 5 quotes).",
      },
    ]));
  test("is not told beside a row that is off, which it follows from", () =>
    expect(told([PRICE, PLATE], plate(99), job).map(({ place }) => place)).toEqual([at("plates_price", 1)]));
  test("may be half as much again, and of any number of outlets", () => {
    expect(told([PRICE], {}, { ...job, price_sell: 1500 })).toEqual([]);
    const outlets: Learned = { ...PLATE, name: "job_outlets", of: "", unit: "pieces", low: 1, high: 2 };
    expect(told([outlets], {}, job)).toEqual([]);
  });
});
