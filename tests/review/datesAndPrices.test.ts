/** The dates of a quote and of its prices, and the prices: each finding whole, and each bound on both sides. */
import type { Finding } from "../../src/review/finding";
import { prices } from "../../src/review/rules/prices";
import { quoteDates } from "../../src/review/rules/quoteDates";
import { DEFAULT_MARGIN_FLOOR, type PriceList } from "../../src/review/rule";
import { sheetDate } from "../../src/workbooks/sheetDate";
import { at, atField, found, smallBook, type Row } from "./smallBook";

const day = (iso: string): number => {
  const [year, month, date] = iso.split("-").map(Number) as [number, number, number];
  return sheetDate(year, month, date);
};
const NOVEMBER = "2026-11-02";
const OCTOBER = "2026-10-01";

describe("the dates of a quote", () => {
  /** @param priced the days of the prices */
  const dates = (date: string | undefined, until: string | undefined, ...priced: string[]): Finding[] =>
    found(
      quoteDates,
      smallBook(
        { cables: priced.map((one, index) => ({ name: `cable ${index + 1}`, priced: day(one) })) },
        { site_date: date && day(date), site_until: until && day(until) },
      ),
    );
  const messages = (...asked: Parameters<typeof dates>) => dates(...asked).map(({ message }) => message);

  describe("that it is valid until", () => {
    const RUN_OUT = {
      weight: "wrong",
      place: atField("site_until"),
      expected: "A day after 2026-11-02.",
      remedy: "Correct the date that is off.",
    };
    const LONG = {
      weight: "doubtful",
      place: atField("site_until"),
      expected: "Some weeks or months, and no longer than its prices.",
      effect: "The firm is bound to this price for so long.",
      remedy: "Correct the year, or say on Log why so long.",
    };
    const of = "The quote of 2026-11-02 is valid until";
    test.each<[string, object]>([
      [
        "2026-01-15",
        {
          ...RUN_OUT,
          message: `${of} 2026-01-15: it has run out before it goes out.`,
          meant: day("2027-01-15"),
        },
      ],
      [
        "2026-11-01",
        {
          ...RUN_OUT,
          message: `${of} 2026-11-01: it has run out before it goes out.`,
          meant: day("2027-11-01"),
        },
      ],
      // A year later it would be the day of the quote itself, or still before it.
      ["2025-11-02", { ...RUN_OUT, message: `${of} 2025-11-02: it has run out before it goes out.` }],
      ["2024-12-24", { ...RUN_OUT, message: `${of} 2024-12-24: it has run out before it goes out.` }],
      ["2027-12-08", { ...LONG, message: `${of} 2027-12-08: for 401 days.`, meant: day("2026-12-08") }],
      // 2028 is a leap year: 730 days to 1 November 2028, and 30 more.
      ["2028-12-01", { ...LONG, message: `${of} 2028-12-01: for 760 days.`, meant: day("2027-12-01") }],
      ["2062-11-02", { ...LONG, message: `${of} 2062-11-02: for 13149 days.` }],
    ])("%s", (until, finding) => expect(dates(NOVEMBER, until)).toStrictEqual([finding]));
    test("the same day, 400 days later, and either date missing: nothing", () => {
      for (const until of [NOVEMBER, "2027-12-07", undefined]) expect(dates(NOVEMBER, until)).toEqual([]);
      expect(dates(undefined, "2026-01-15", OCTOBER, OCTOBER, OCTOBER)).toEqual([]);
    });
  });

  describe("far from those of its prices", () => {
    const FAR = {
      weight: "doubtful",
      place: atField("site_date"),
      effect: "Validity, prices and the compass bearing go by it.",
      remedy: "Correct the date; if it is right, ask for all prices anew.",
    };
    test("another year, told alone", () =>
      expect(dates("2062-11-02", "2026-12-01", OCTOBER, OCTOBER, "2026-09-01")).toStrictEqual([
        {
          ...FAR,
          message: "The quote is of 2062-11-02, its prices of about 2026-10-01.",
          expected: "A date near that of the prices: is the year right?",
        },
      ]));
    test("with day and month exchanged", () =>
      expect(dates("2026-03-10", undefined, OCTOBER, OCTOBER, OCTOBER)).toStrictEqual([
        {
          ...FAR,
          message: "The quote is of 2026-03-10, its prices of about 2026-10-01.",
          expected: "2026-10-03, if day and month were exchanged.",
          meant: day("2026-10-03"),
        },
      ]));
    const meant = (date: string, priced: string) => dates(date, undefined, priced, priced, priced)[0]!.meant;
    test("exchanged into a day on or after the prices, and not long after", () => {
      expect(meant("2026-01-10", "2026-10-01")).toBe(day("2026-10-01"));
      expect(meant("2026-01-10", "2026-10-02")).toBeUndefined();
      // 2025-01-08 and 400 days are 2026-02-12.
      expect(meant("2026-12-02", "2025-01-08")).toBe(day("2026-02-12"));
      expect(meant("2026-12-02", "2025-01-07")).toBeUndefined();
      expect(meant("2026-03-13", "2026-10-01")).toBeUndefined();
      expect(meant("2026-01-12", "2026-10-01")).toBe(day("2026-12-01"));
    });
    test("500 days after the middle, half of them later, and two prices: near enough", () => {
      // 2025-06-20 and 500 days are 2026-11-02.
      const far = /^The quote is of 2026-11-02, its prices of about /;
      expect(messages(NOVEMBER, undefined, "2025-06-20", "2025-06-20", "2025-06-20")).toEqual([]);
      expect(messages(NOVEMBER, undefined, "2025-06-19", "2025-06-19", "2025-06-19")).toEqual([
        expect.stringMatching(far),
      ]);
      expect(messages(NOVEMBER, undefined, "2020-01-01", "2020-01-01")).toEqual([]);
      expect(messages(NOVEMBER, undefined, OCTOBER, OCTOBER, "2026-11-03", "2026-11-03")).toEqual([]);
      expect(messages(NOVEMBER, undefined, OCTOBER, "2026-11-03", "2026-11-03", "2026-11-03")).toEqual([
        expect.stringMatching(far),
      ]);
      expect(messages(NOVEMBER, undefined, NOVEMBER, NOVEMBER, NOVEMBER)).toEqual([]);
    });
  });

  describe("an old price among others", () => {
    test("more than 400 days before the quote", () =>
      expect(dates(NOVEMBER, "2026-11-01", OCTOBER, "2025-09-27", OCTOBER, "2025-09-28")).toStrictEqual([
        {
          weight: "doubtful",
          place: at("cables_priced", 2),
          // The middle of 2025-09-28 and 2026-10-01, 368 days apart.
          message: "The price of cable 2 is of 2025-09-27, the others are of about 2026-03-31.",
          expected: "A price of this year: is the year right?",
          usual: { low: day("2025-09-28"), high: day(NOVEMBER) },
          effect: "It may cost more than was counted.",
          remedy: "Ask the supplier anew, or correct the date.",
        },
        expect.objectContaining({ place: atField("site_until") }),
      ]));
    test("of three; not of two, nor where most are old", () => {
      expect(messages(NOVEMBER, undefined, OCTOBER, "2025-09-27", OCTOBER)).toHaveLength(1);
      expect(messages(NOVEMBER, undefined, OCTOBER, "2025-09-27")).toEqual([]);
      expect(messages(NOVEMBER, undefined, OCTOBER, "2025-09-27", "2025-09-27")).toEqual([]);
    });
  });
});

describe("a price", () => {
  const told = (row: Row, { date = NOVEMBER, until = "" } = {}, list?: PriceList): Finding[] =>
    found(
      prices,
      smallBook(
        { cables: [{ name: "Coax", price: 2, priced: day(OCTOBER), until: day("2026-12-31"), ...row }] },
        { site_date: date && day(date), site_until: until && day(until) },
      ),
      { options: { marginFloor: DEFAULT_MARGIN_FLOOR, prices: list } },
    );
  test("that is fine, and one without a name", () => {
    expect(told({})).toEqual([]);
    expect(told({ name: "", price: "" })).toEqual([]);
  });
  test("that is missing", () =>
    expect(told({ price: " " })).toStrictEqual([
      {
        weight: "wrong",
        place: at("cables_price", 1),
        message: "Coax has no price.",
        effect: "Each piece of it is given away.",
        remedy: "Ask the supplier and enter the price with its date.",
      },
    ]));
  test.each([
    [day("2026-11-01"), "The price of Coax held until 2026-11-01."],
    ["", "The price of Coax has no date until which it holds."],
  ])("that does not hold until the quote: %s", (until, message) =>
    expect(told({ until })).toStrictEqual([
      {
        weight: "doubtful",
        place: at("cables_until", 1),
        message,
        expected: "2026-11-02 or later: the date of the quote.",
        effect: "It may cost more than was counted.",
        remedy: "Ask the supplier anew.",
      },
    ]),
  );
  test("that holds on the day of the quote, or of a quote without a date", () => {
    expect(told({ until: day(NOVEMBER) })).toEqual([]);
    expect(told({ until: "" }, { date: "" })).toEqual([]);
  });
  test("of a day after its last", () => {
    expect(told({ priced: day("2027-01-01") }, { date: "" })).toStrictEqual([
      {
        weight: "wrong",
        place: at("cables_priced", 1),
        message: "The price of Coax is of 2027-01-01 and held until 2026-12-31.",
        expected: "The day of the price first, then its last day.",
        remedy: "Were the two typed in each other's column?",
      },
    ]);
    expect(told({ priced: day("2027-01-01") })).toHaveLength(1);
    expect(told({ priced: day("2026-12-31") }, { date: "" })).toEqual([]);
  });
  test("of a day after the quote", () => {
    expect(told({ priced: day("2026-11-03") })).toStrictEqual([
      {
        weight: "doubtful",
        place: at("cables_priced", 1),
        message: "The price of Coax is of 2026-11-03, after the quote.",
        expected: "2026-11-02 or earlier: the date of the quote.",
        remedy: "Correct the date that is off.",
      },
    ]);
    expect(told({ priced: day(NOVEMBER) })).toEqual([]);
    expect(told({ priced: "" })).toEqual([]);
  });
  test("that holds for less long than the quote", () => {
    expect(told({}, { until: "2027-01-01" })).toStrictEqual([
      {
        weight: "doubtful",
        place: at("cables_until", 1),
        message: "The price of Coax holds until 2026-12-31, the quote until 2027-01-01.",
        expected: "2027-01-01 or later, or a quote that holds no longer than its prices.",
        effect: "A rise in between is at the firm's cost.",
        remedy: "Ask the supplier to hold it, or shorten the quote's validity.",
      },
    ]);
    expect(told({}, { until: "2026-12-31" })).toEqual([]);
    expect(told({ until: day(NOVEMBER) }, { until: "2027-01-01" })).toHaveLength(1);
    // Where the quote has no date, its end alone says nothing.
    expect(told({}, { date: "", until: "2027-01-01" })).toEqual([]);
  });
  test("that is not the list's", () => {
    const list = { cables: { coax: 2.5 } };
    const off = {
      weight: "doubtful",
      place: at("cables_price", 1),
      expected: "2.5",
      remedy: "Take the list's price, or write on Log why not.",
    };
    expect(told({}, {}, list)).toStrictEqual([
      { ...off, message: "Coax is priced at 2, the list says 2.5." },
    ]);
    expect(told({ price: "" }, {}, list)[1]).toStrictEqual({
      ...off,
      message: "Coax is priced at nothing, the list says 2.5.",
    });
    expect(told({}, {}, { cables: { coax: 2 } })).toEqual([]);
    expect(told({}, {}, { plates: { coax: 2.5 } })).toEqual([]);
    // No part of the list, but a word that every object has.
    expect(told({ name: "toString" }, {}, list)).toEqual([]);
  });
  test("of a part whose other columns are not there: nothing", () =>
    expect(found(prices, smallBook({ cables: [{ name: "Coax" }] }, { site_date: day(NOVEMBER) }))).toEqual(
      [],
    ));
  test("a date of the quote that is far from all prices is told once, elsewhere", () => {
    const three = Array.from({ length: 3 }, (_, index) => ({
      name: `cable ${index}`,
      price: 1,
      priced: day(OCTOBER),
      until: day("2026-12-31"),
    }));
    expect(found(prices, smallBook({ cables: three }, { site_date: day("2062-11-02") }))).toEqual([]);
    expect(found(prices, smallBook({ cables: three }, { site_date: day("2027-01-05") }))).toHaveLength(3);
  });
});
