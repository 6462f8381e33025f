/**
 * What rules say of one changed cell of the guest house (tests/fixtures/quotes/house.json): the figures are
 * worked out by hand beside each, the sentences are those that a person has to be told of them.
 */
import type { Finding } from "../../src/review/finding";
import { errorWords } from "../../src/review/rules/errorWords";
import { stateOfFile, type StaleCell } from "../../src/review/rules/stateOfFile";
import { stateOfLive } from "../../src/review/stateOfLive";
import { typedOver } from "../../src/review/rules/typedOver";
import type { Book } from "../../src/workbooks/book";
import { bookOf, emptySheet } from "../support/books";
import { GONE, type Changes } from "./thresholds/pair";
import { said } from "./thresholds/said";

type Said = Partial<Finding>;
const CROSS = "figures that cross";
const FAR = "far from neighbours";
const DATES = "dates that do not agree";
const PRICE = "price missing, expired or changed";
const REEL = "run longer than its reel";
const NUMBER = "text that looks like a number";
const UNLIKELY = "unlikely amount";
const OUTSIDE = "input outside its rule";
const labour = "run and terminate a cable";

test.each<[string, Changes, string, Said]>([
  [
    CROSS,
    { "rooms_shortest of G-01": 12 },
    "rooms_run of G-01",
    { weight: "wrong", message: "G-01: 9.5 is under its least of 12.", expected: "Between the two." },
  ],
  [
    CROSS,
    { "rooms_longest of G-01": 9 },
    "rooms_run of G-01",
    { message: "G-01: 9.5 is over its most of 9.", expected: "Between the two." },
  ],
  [
    CROSS,
    { "rooms_shortest of G-01": 5, "rooms_longest of G-01": 9 },
    "rooms_run of G-01",
    { message: "G-01: 9.5 is over its most of 9.", usual: { low: 5, high: 9 } },
  ],
  [
    CROSS,
    // 50 is over five times 9.5; seldom more than half as much again, 14.25.
    { "rooms_longest of G-01": 50 },
    "rooms_longest of G-01",
    {
      weight: "doubtful",
      message: "G-01: the most is 50, 5.263158 times the likely 9.5.",
      expected: "Seldom more than 14.25: is the point in its place?",
      usual: { low: 9.5, high: 14.25 },
    },
  ],
  [
    CROSS,
    { [`labour_low of ${labour}`]: GONE },
    `labour_low of ${labour}`,
    { message: `${labour}: of the least and the most one is blank.`, expected: "Both, or neither." },
  ],
  [
    CROSS,
    { [`labour_low of ${labour}`]: 60 },
    `labour_low of ${labour}`,
    { message: `${labour}: the least is 60 and the most 58.`, expected: "The least first." },
  ],
  [
    CROSS,
    { [`labour_low of ${labour}`]: 30, [`labour_high of ${labour}`]: 20 },
    `labour_high of ${labour}`,
    {
      message: `${labour}: the most is 20, under the least of 30 and the likely 38.`,
      // 38 · 1.5.
      usual: { low: 38, high: 57 },
    },
  ],
  [
    CROSS,
    { "plates_loss_high of single outlet": 0.5 },
    "plates_loss_low of single outlet",
    {
      weight: "doubtful",
      message: "single outlet is said to lose 0.7 dB at the lowest frequency and 0.5 dB at the highest.",
    },
  ],
  [
    CROSS,
    { site_cold: 60 },
    "site_cold",
    {
      message: "Coldest cable is 60 °C, and the hottest cable is 55.",
      expected: "Below it: were the two typed in each other's cell?",
    },
  ],
  [
    FAR,
    // Over the others' middle by more than e^0.875; the middle of an even count of G and F and A runs stands in the job.
    { "rooms_run of G-01": 185 },
    "rooms_run of G-01",
    { weight: "doubtful", effect: "The outlet's level and the cable to buy go by it." },
  ],
  [
    FAR,
    { "branches_length of G1": 0.2 },
    "branches_length of G1",
    // Of 0.2, 2, 2, 4, 5, 8, 14, 16 the middle of the logarithms is the root of 4 · 5.
    {
      message: "A trunk of 0.2, where the middle of the column is 4.472136.",
      effect: "Every outlet behind it goes by it.",
    },
  ],
  [
    DATES,
    // 46,328 is 2026-11-02.
    { site_until: 46_327 },
    "site_until",
    {
      weight: "wrong",
      message: "The quote of 2026-11-02 is valid until 2026-11-01: it has run out before it goes out.",
      expected: "A day after 2026-11-02.",
      // 2027-11-01.
      meant: 46_692,
    },
  ],
  [
    DATES,
    // 401 days on: 2027-12-08; a year earlier it would hold for 36.
    { site_until: 46_729 },
    "site_until",
    {
      weight: "doubtful",
      message: "The quote of 2026-11-02 is valid until 2027-12-08: for 401 days.",
      meant: 46_364,
    },
  ],
  [
    DATES,
    // 1 October 2026 is 46,296, and 2026-02-11 is 46,064, before nearly all prices: day and month in the other order.
    { site_date: 46_064 },
    "site_date",
    {
      message: "The quote is of 2026-02-11, its prices of about 2026-10-01.",
      expected: "2026-11-02, if day and month were exchanged.",
      meant: 46_328,
    },
  ],
  [
    PRICE,
    { "plates_price of single outlet": GONE },
    "plates_price of single outlet",
    { weight: "wrong", message: "single outlet has no price." },
  ],
  [
    PRICE,
    { "plates_until of single outlet": 46_327 },
    "plates_until of single outlet",
    {
      message: "The price of single outlet held until 2026-11-01.",
      expected: "2026-11-02 or later: the date of the quote.",
    },
  ],
  [
    PRICE,
    { "plates_until of single outlet": GONE },
    "plates_until of single outlet",
    { message: "The price of single outlet has no date until which it holds." },
  ],
  [
    PRICE,
    { "plates_priced of single outlet": 46_478 },
    "plates_priced of single outlet",
    // 46,477 is 2027-03-31.
    {
      weight: "wrong",
      message: "The price of single outlet is of 2027-04-01 and held until 2027-03-31.",
    },
  ],
  [
    PRICE,
    { "plates_priced of single outlet": 46_329 },
    "plates_priced of single outlet",
    { weight: "doubtful", message: "The price of single outlet is of 2026-11-03, after the quote." },
  ],
  [
    PRICE,
    { "plates_until of single outlet": 46_386 },
    "plates_until of single outlet",
    // The quote holds until 46,387, 2026-12-31.
    { message: "The price of single outlet holds until 2026-12-30, the quote until 2026-12-31." },
  ],
  [
    REEL,
    // (150 + 2) · 1.05 = 159.6 off a reel of 100; a tenth, 17.85, comes off it.
    { "rooms_run of G-01": 150 },
    "rooms_run of G-01",
    {
      message: "G-01: 150 of indoor drop is cut at 159.6 with slack and waste, and a reel holds 100.",
      meant: 15,
    },
  ],
  [
    REEL,
    // A rest of 160 in stock holds it; 161 would be cut at 171.15.
    { "rooms_run of G-01": 161, "rests_cable free": "INDOOR DROP", "rests_length free": 160 },
    "rooms_run of G-01",
    { message: "G-01: 161 of indoor drop is cut at 171.2 with slack and waste, and a reel holds 160." },
  ],
  [
    NUMBER,
    { "rooms_run of G-01": "12,5 m" },
    "rooms_run of G-01",
    { weight: "wrong", expected: "The number 12.5, if that was meant.", meant: 12.5 },
  ],
  [NUMBER, { site_tax: "20 %" }, "site_tax", { expected: "The number 0.2, if that was meant.", meant: 0.2 }],
  [NUMBER, { "rooms_run of G-01": "1O" }, "rooms_run of G-01", { meant: 10 }],
  [NUMBER, { "rooms_run of G-01": "l2.5" }, "rooms_run of G-01", { meant: 12.5 }],
  [NUMBER, { "rooms_run of G-01": "-4 ft" }, "rooms_run of G-01", { meant: -4 }],
  [NUMBER, { labour_rate: "€ 58" }, "labour_rate", { meant: 58 }],
  [
    UNLIKELY,
    { site_tax: 0.35 },
    "site_tax",
    {
      weight: "doubtful",
      message: "Tax is 35 %.",
      expected: "Usually at most 30 % no country's tax on such work is higher (from memory).",
    },
  ],
  [UNLIKELY, { "rooms_quantity of G-01": 5 }, "rooms_quantity of G-01", { usual: { low: 1, high: 4 } }],
  [
    UNLIKELY,
    { site_level_low: 40 },
    "site_level_low",
    {
      weight: "wrong",
      message: "The limit that all outlets are held to is 40 dBµV.",
      expected: "47 dBµV or more (EN 60728-1, from memory).",
    },
  ],
  [
    OUTSIDE,
    { "rooms_cable of G-01": "indoor dorp" },
    "rooms_cable of G-01",
    { weight: "wrong", message: "Cable is “indoor dorp”." },
  ],
  [
    OUTSIDE,
    { "branches_device of G1": "4-way spliter" },
    "branches_device of G1",
    {
      message: "Part of G1 is “4-way spliter”, which is not on its list.",
      expected: "“4-way splitter”, likely.",
      meant: "4-way splitter",
      isGuess: true,
    },
  ],
  [
    OUTSIDE,
    { "plates_name of single outlet": "single outlet " },
    "plates_name of single outlet",
    { expected: "“single outlet”, without a blank at its end.", meant: "single outlet" },
  ],
  [
    "amount of zero",
    { site_contingency: 0 },
    "site_contingency",
    { weight: "worth knowing", message: "Contingency is 0." },
  ],
  [
    "number left out",
    // The title counts 24; without A-03 23 are left.
    { "rooms_outlet of A-03": GONE },
    "rooms_outlet of A-04",
    {
      message:
        "A-03 is not listed, between A-02 and A-04; the job's title counts 24 outlets, and 23 are listed.",
      expected: "A row for A-03, unless there is no such outlet.",
    },
  ],
  [
    "number left out",
    { site_job: "Hotel, 90 outlets" },
    "site_job",
    {
      weight: "worth knowing",
      message: "The job is called “Hotel, 90 outlets”, and 24 outlets are listed.",
      effect: "It is printed on the quote.",
    },
  ],
  [
    "name says otherwise",
    { "units_bands of head unit, 16 bands": 8 },
    "units_bands of head unit, 16 bands",
    { message: "head unit, 16 bands is entered with 8 user bands.", expected: "16, by its name.", meant: 16 },
  ],
  [
    "name says otherwise",
    { "passives_port_low of tap 12 dB": 15 },
    "passives_port_low of tap 12 dB",
    { message: "tap 12 dB is entered with 15 dB to a port.", meant: 12 },
  ],
  [
    "discount given twice",
    { "provisional_name free": "Discount", "options_name free": "rebate for cash" },
    "provisional_name of Discount",
    { message: "A second discount: Discount. The first is rebate for cash.", isGuess: true },
  ],
])("%s: %j", (rule, changes, at, wanted) => {
  expect(said(rule, changes, at)).toEqual([expect.objectContaining(wanted)]);
});

test.each<[string, Changes, string]>([
  [CROSS, { "rooms_shortest of G-01": 9.5, "rooms_longest of G-01": 9.5 }, "rooms_run of G-01"],
  [CROSS, { "rooms_longest of G-01": 47.5 }, "rooms_longest of G-01"],
  [NUMBER, { "rooms_run of G-01": "some" }, "rooms_run of G-01"],
  [NUMBER, { "rooms_outlet of G-01": "101" }, "rooms_outlet of 101"],
  [NUMBER, { "rooms_run of G-01": "oil" }, "rooms_run of G-01"],
  ["number left out", { site_job: "Guest house, 27 outlets" }, "site_job"],
  ["number left out", { site_job: "Guest house" }, "site_job"],
  [
    REEL,
    { "rooms_run of G-01": 150, "rests_cable free": "indoor drop", "rests_length free": 160 },
    "rooms_run of G-01",
  ],
  ["discount given twice", { "provisional_name free": "Discount" }, "provisional_name of Discount"],
])("%s: %j is nothing to be told", (rule, changes, at) => expect(said(rule, changes, at)).toEqual([]));

describe("a remark to a colleague", () => {
  const RULE = "remark to a colleague on the quote";
  const of = (text: string): number =>
    said(RULE, { "assumptions_text free": text }, `assumptions_text of ${text}`).length;
  test.each([
    "Is 58 enough??",
    "Call them!!",
    "price xxx",
    "TODO: route",
    "ask Pat whether it is enough",
    "check with the boss if this holds",
    "remind my office before Monday",
    "look at it before sending",
    "do not print this line",
    "not for the customer",
    "internal only",
    "Internal use only",
  ])("%s", (text) => expect(of(text)).toBe(1));
  test.each([
    "Is a scaffold there?",
    "Call before noon.",
    "Access is given before work begins.",
    "The customer asks the landlord.",
    "Cables are internal.",
    "Size XL",
  ])("%s is none", (text) => expect(of(text)).toBe(0));
  test.each(["xx", "...", "Name", "customer", "n/a", "tbc", "Smith (TBD)", "ask Pat"])(
    "%s for the customer's name",
    (text) =>
      expect(said(RULE, { site_customer: text }, "site_customer")).toMatchObject([
        { message: `Customer is “${text}”.` },
      ]),
  );
  test.each(["Names & Co", "Customer Care Ltd", "Task Pattern Works"])("%s is a name", (text) =>
    expect(said(RULE, { site_customer: text }, "site_customer")).toEqual([]),
  );
});

describe("the state in which a file was saved", () => {
  const sheet = emptySheet("Price");
  const book = (saved: NonNullable<Book["saved"]> | undefined): Book => ({
    ...bookOf({
      ...sheet,
      cells: { A1: { formula: "RIG.X(1)" }, A2: { formula: "RIG.X(2)" }, A3: { formula: "RIG.X(3)" } },
    }),
    ...(saved && { saved }),
  });
  const cell = (at: string, stored: StaleCell["stored"], anew: StaleCell["anew"] = 5): StaleCell => ({
    sheet: "Price",
    cell: at,
    stored,
    anew,
  });
  const error = (code: string): StaleCell["stored"] => ({ error: code }) as StaleCell["stored"];
  type Saved = NonNullable<Book["saved"]>;
  test.each<[string, Saved | undefined, StaleCell[], RegExp | undefined]>([
    ["as it is", undefined, [], undefined],
    ["old figures without a cause", undefined, [cell("A1", 4)], undefined],
    ["calculated by hand, and nothing old", { manual: true } as Saved, [], undefined],
    [
      "calculated by hand",
      { manual: true } as Saved,
      [cell("A1", 4)],
      /calculate by hand.*old or wrong value: 1\.$/,
    ],
    ["unfinished", { unfinished: true } as Saved, [cell("A1", 4)], /before Excel had finished/],
    ["unfinished, and nothing old", { unfinished: true } as Saved, [], undefined],
    ["figures as displayed", { asDisplayed: true } as Saved, [], /as displayed.* No figure is old yet\.$/],
    [
      "bound elsewhere",
      { boundElsewhere: true, manual: true } as Saved,
      [cell("A1", 4)],
      /another add-in's file/,
    ],
    [
      "no functions",
      undefined,
      [cell("A1", 4), cell("A2", error("#NAME?"))],
      /without our functions: 2 cells/,
    ],
    ["computing", undefined, [cell("A1", error("#BUSY!"))], /still computing/],
    ["getting data", undefined, [cell("A1", error("#GETTING_DATA"))], /still computing/],
    ["refused", undefined, [cell("A1", error("#BLOCKED!"))], /refuses our functions/],
    ["out of reach", undefined, [cell("A1", error("#CONNECT!"))], /could not reach/],
    // More than half of the three calls.
    [
      "not loaded",
      undefined,
      [cell("A1", error("#VALUE!")), cell("A2", error("#N/A"))],
      /had not loaded them/,
    ],
    ["one of three", undefined, [cell("A1", error("#VALUE!"))], undefined],
    [
      "errors that are right",
      undefined,
      [cell("A1", error("#VALUE!"), error("#N/A")), cell("A2", error("#N/A"), error("#VALUE!"))],
      undefined,
    ],
    [
      "of cells without a call",
      undefined,
      [cell("B1", error("#VALUE!")), cell("B2", error("#N/A"))],
      undefined,
    ],
    ["another error", undefined, [cell("A1", error("#REF!")), cell("A2", error("#REF!"))], undefined],
  ])("%s", (_, saved, old, message) => {
    const found = stateOfFile(book(saved), book(saved), old);
    if (message === undefined) expect(found).toBeUndefined();
    else expect(found!.message).toMatch(message);
  });
  test("is told at the first error, else at the first old figure, with what it comes to", () => {
    const saved = { manual: true } as Saved;
    const all = [cell("A1", 4, 1.5), cell("A2", error("#NAME?"), "ok"), cell("A3", error("#NAME?"))];
    expect(stateOfFile(book(saved), book(saved), all)).toMatchObject({
      place: { sheet: "Price", cell: "A2" },
      expected: "ok",
      effect: "The inputs are whole; the figures that it shows are not.",
    });
    expect(stateOfFile(book(saved), book(saved), all.slice(0, 1))).toMatchObject({
      place: { sheet: "Price", cell: "A1" },
      expected: "1.5",
    });
    expect(stateOfFile(book(saved), book(saved), [cell("A1", 4, error("#N/A"))])!.expected).toBe("#N/A");
    expect(stateOfFile(book(saved), book(saved), [{ ...cell("A1", 4), anew: undefined }])!.expected).toBe(
      "nothing",
    );
    expect(stateOfFile(book({ asDisplayed: true } as Saved), book(undefined), [])!.place).toBeUndefined();
  });
  test("with the total that it shows and the one that its inputs come to", () => {
    const total = (value: number): Book => ({
      ...book({ manual: true } as Saved),
      sheets: [{ ...sheet, results: { B1: value } }],
      names: [{ name: "quote_total", sheet: "Price", range: "B1" }],
    });
    expect(stateOfFile(total(100), total(120.5), [cell("A1", 4)])!.effect).toBe(
      "The total shows 100; the inputs come to 120.5.",
    );
    expect(stateOfFile(total(100), total(100), [cell("A1", 4)])!.effect).toMatch(/inputs are whole/);
  });
  test("a live workbook that is bound elsewhere, and one that computes", () => {
    expect(stateOfLive(book({ boundElsewhere: true } as Saved))).toMatchObject({ weight: "doubtful" });
    expect(stateOfLive(book({ boundElsewhere: true } as Saved))!.message).toMatch(/bound to another add-in/);
    expect(
      stateOfLive({ ...book(undefined), sheets: [{ ...sheet, cells: { A1: { value: 3 } } }] }),
    ).toBeUndefined();
  });
});

describe("formulas turned into values", () => {
  const values = (name: string, count: number) => ({
    ...emptySheet(name),
    cells: Object.fromEntries(Array.from({ length: count }, (_, at) => [`A${at + 1}`, { value: at }])),
    results: Object.fromEntries(Array.from({ length: count }, (_, at) => [`A${at + 1}`, at])),
  });
  const found = (counts: readonly number[], off: readonly string[] = []): Finding[] => {
    const expected = bookOf(...counts.map((count, at) => values(`S${at + 1}`, count)));
    const read: Book = {
      ...expected,
      sheets: expected.sheets.map((sheet) => ({
        ...sheet,
        cells: Object.fromEntries(
          Object.entries(sheet.cells).map(([cell, held]) => [
            cell,
            off.includes(`${sheet.name}!${cell}`) ? { value: 99 } : held,
          ]),
        ),
      })),
    };
    const differences = expected.sheets.flatMap((sheet) =>
      Object.keys(sheet.cells).map((cell) => ({
        weight: "wrong" as const,
        place: { sheet: sheet.name, cell },
        message: "Typed.",
        expected: "=B1",
        remedy: "Look.",
        typedOver: true,
      })),
    );
    return typedOver.find({ read, own: read, computed: read, expected, differences } as unknown as Parameters<
      typeof typedOver.find
    >[0]);
  };
  test("nine are told one by one, with what each comes to; ten are one thing", () => {
    expect(found([9])).toHaveLength(9);
    expect(found([9])[3]).toMatchObject({ place: { sheet: "S1", cell: "A4" }, expected: "3, by =B1" });
    expect(found([10])).toEqual([
      expect.objectContaining({
        weight: "doubtful",
        place: { sheet: "S1", cell: "A1" },
        message: "10 formulas of S1 were turned into values (typed or pasted over).",
      }),
    ]);
  });
  test("one of another value is told beside them", () => {
    expect(found([11], ["S1!A3"]).map(({ place }) => place?.cell)).toEqual(["A1", "A3"]);
    expect(found([10], ["S1!A3"])).toHaveLength(10);
  });
  test("beside a pasted sheet a few of another stay by themselves, up to five sheets", () => {
    expect(found([10, 2]).map(({ place }) => place?.sheet)).toEqual(["S1", "S2", "S2"]);
    expect(found([10, 10])).toMatchObject([
      { message: "20 formulas on 2 sheets were turned into values: S1, S2." },
    ]);
    expect(found([10, 1, 1, 1, 1])).toHaveLength(5);
    expect(found([10, 1, 1, 1, 1, 1])).toMatchObject([
      { message: "15 formulas on 6 sheets were turned into values: S1, S2, S3, S4, S5 and more." },
    ]);
    expect(found([10, 10])[0]!.place).toBeUndefined();
  });
});

test.each(["#NAME?", "#SPILL!", "#REF!", "#DIV/0!", "#N/A", "#BAD_EXPR", "#NUM!", "#VALUE!"])(
  "%s has words and a way out of its own",
  (error) => {
    const others = ["#NAME?", "#SPILL!", "#REF!", "#DIV/0!", "#N/A", "#BAD_EXPR", "#NUM!", "#VALUE!"]
      .filter((one) => one !== error)
      .map((one) => errorWords(one).message);
    expect(others).not.toContain(errorWords(error).message);
    expect(errorWords(error).remedy).toMatch(/^\p{Lu}.{10,}\.$/u);
  },
);
