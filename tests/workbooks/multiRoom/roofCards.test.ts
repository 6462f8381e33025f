/** The cards of dishes and of head units, line by line, from a few cells. */
import type { Book, BookResult } from "../../../src/workbooks/book";
import { CARD, type Card } from "../../../src/workbooks/multiRoom/cards/cardSheet";
import { cardsOf } from "../../../src/workbooks/multiRoom/cards/cardsOf";
import { dishCards, feedersOf } from "../../../src/workbooks/multiRoom/cards/dishCard";
import { dishesOf, dishInWords } from "../../../src/workbooks/multiRoom/cards/dishesOf";
import { headCards } from "../../../src/workbooks/multiRoom/cards/headCard";
import { pointingPart } from "../../../src/workbooks/multiRoom/cards/pointingPart";
import { estimate } from "../../../src/workbooks/multiRoom/names";
import { peaks } from "../../../src/workbooks/peaking";
import { namedBook } from "../../support/namedBook";

type Columns = Readonly<Record<string, readonly (BookResult | undefined)[]>>;

const DISHES: Columns = {
  site_quote: ["D-24"],
  site_unit: ["m"],
  site_dish: [0.75],
  slots_slot: ["", "19E", "13E", ""],
  aims_dish: ["", "D1", "D2", ""],
  dishes_size: ["", 1.1, "", ""],
  dishes_slots: ["", "97W 113W", "", ""],
  dishes_feed: ["", "wideband feed", "", ""],
  dishes_location: ["", "", "main roof", ""],
  dishes_mounting: ["", "", "mast", ""],
};
const job = (columns: Columns = {}): Book => namedBook({ ...DISHES, ...columns });
/** The left half of a card, or its right, by row. */
const half = (card: Card, isRight = false): Record<number, unknown> =>
  Object.fromEntries(
    card
      .filter(({ column, value }) => value !== undefined && (isRight ? column === 5 : column === 0))
      .map(({ row, value }) => [row, value]),
  );
const row = (value: BookResult) => ["", value, "", ""];

describe("a dish", () => {
  test("of Dishes: its own figures, else those of Site", () => {
    expect(dishesOf(job())).toEqual([
      {
        name: "D1",
        row: 0,
        size: "1.10",
        slots: "97W 113W",
        feed: "wideband feed",
        location: "",
        mounting: "",
        height: "",
        offFocus: "",
        clear: "",
        volts: "",
        conductors: [],
      },
      expect.objectContaining({ name: "D2", row: 1, size: "0.75", slots: "19E 13E", feed: "" }) as unknown,
    ]);
    expect(dishesOf(job({ aims_dish: ["", "", ""] }))).toEqual([]);
  });

  test("in a line: what is not known is left out", () => {
    const [first, second] = dishesOf(job());
    expect(dishInWords(first!)).toBe("D1 1.10 m, 97W 113W");
    expect(dishInWords(second!)).toBe("D2 0.75 m, main roof, mast, 19E 13E");
  });

  describe("its conductors", () => {
    const bonds: Columns = {
      bonds_where: ["", "mast", "block", "rail", ""],
      bonds_size: ["", 16, 4, "", ""],
      bonds_dish: ["", " d1 ", "", "D2", ""],
    };
    const of = (columns: Columns) => dishesOf(job({ ...bonds, ...columns })).map((dish) => dish.conductors);
    test("of several dishes those that name it, whatever the case", () =>
      expect(of({})).toEqual([["mast, 16.0 mm²"], ["rail, ? mm²"]]));
    test("of a single dish those that name none as well", () =>
      expect(of({ aims_dish: ["", "D1 ", ""] })).toEqual([["mast, 16.0 mm²", "block, 4.0 mm²"]]));
  });

  test("has a card where its feed is its own; what is not known is said", () => {
    const cards = dishCards(job());
    expect(cards).toHaveLength(1);
    expect(half(cards[0]!)).toEqual({
      0: "Dish D1",
      1: "1.10 m, for 97W 113W",
      2: "Feed: wideband feed",
      3: "Location: not given",
      4: "Mounting: not given",
      5: "Carrier to noise at its feed: not asked",
      6: "Volts at its feed: not predicted",
      8: "Feeders",
      9: "none on Dishes",
      13: "Bonding conductors",
      14: "none on Bonding: ask before the dish is fitted",
      18: "While aiming",
      19: "The meter powers the feed; the switch's cables are off.",
      21: "Falls: safe footing, the right gear, a second person. Overhead lines: keep mast, ladder and cable well clear. Stop in wind and lightning.",
      22: "Bonding, lightning protection and mains: local code and licensed practice decide. Supply off before it is opened. Not a safety certificate.",
    });
    expect(cards[0]!.find(({ row: at, column }) => at === 0 && column === 8)).toEqual({
      row: 0,
      column: 8,
      value: "D-24",
      look: { ...CARD.quiet, align: "right" },
    });
  });

  test("has all that is known on its card", () => {
    const [card] = dishCards(
      job({
        dishes_location: row("north roof"),
        dishes_mounting: row("mast 48 mm"),
        dishes_height: row(6.25),
        dishes_off_focus: row(1.5),
        dishes_seen_clear: row(14.2),
        dishes_seen_volts: row(13),
      }),
    );
    expect(half(card!)).toMatchObject({
      2: "Feed: wideband feed; 1.5 dB off the focus",
      3: "Location: north roof",
      4: "Mounting: mast 48 mm; 6.3 m above ground",
      5: "Carrier to noise at its feed, clear sky: 14.2 dB",
      6: "Volts at its feed, predicted: 13.0",
    });
  });
});

describe("feeders", () => {
  const many = (to: readonly string[]): Columns => ({
    feeders_from: ["", ...to.map(() => "d1"), ""],
    feeders_to: ["", ...to, ""],
    feeders_slot: ["", "97W", ...to.slice(1).map(() => ""), ""],
    feeders_check_cables: ["", ...to.map(() => 4), ""],
    feeders_cable_used: ["", ...to.map(() => "drop"), ""],
    feeders_length: ["", ...to.map(() => 16), ""],
  });
  const line = (to: string): string => `4 to ${to}: drop, 16.0 m`;

  test("from a dish, and to a switch", () => {
    const book = job(many(["H1", "H2"]));
    expect(feedersOf(book, "D1 ")).toEqual(["4 to H1 for 97W: drop, 16.0 m", line("H2")]);
    expect(feedersOf(book, "h2", "to")).toEqual(["4 from d1: drop, 16.0 m"]);
    expect(feedersOf(book, "H1")).toEqual([]);
  });

  test.each<[string, readonly string[], readonly string[]]>([
    ["three stand there all", ["A", "B", "C"], ["4 to A for 97W: drop, 16.0 m", line("B"), line("C")]],
    [
      "of four two, and how many more",
      ["A", "B", "C", "D"],
      ["4 to A for 97W: drop, 16.0 m", line("B"), "and 2 more"],
    ],
  ])("on a dish's card: %s", (_, to, lines) => {
    const said = half(dishCards(job(many(to)))[0]!);
    expect([9, 10, 11, 12].map((at) => said[at])).toEqual([...lines, undefined]);
  });
});

describe("where a dish points", () => {
  const book = (columns: Columns = {}) =>
    job({
      aimed_a: ["", "97W", "13E", ""],
      aimed_b: ["", "113W", "", ""],
      aimed_azimuth: row(200.05),
      aimed_compass: row(196.5),
      aimed_elevation: row(33),
      aimed_face: row(10),
      aimed_tilt: row(-4.2),
      align_slot: ["", "97W", "13E", "113W", ""],
      align_azimuth: ["", 190, 120, 210, ""],
      align_compass: ["", 186.5, 116.5, 206.5, ""],
      align_elevation: ["", 34, 20, 32, ""],
      align_face: ["", 11, 1, 9, ""],
      align_skew: ["", -5, 30, -12, ""],
      align_declination: [3.5],
      align_date: [46_000],
      ...columns,
    });
  /** Values from the left, row by row. */
  const rows = (...asked: Parameters<typeof pointingPart>): Record<number, unknown[]> => {
    const found: Record<number, unknown[]> = {};
    for (const part of pointingPart(...asked)) (found[part.row] ??= []).push(part.value ?? [part.column]);
    return found;
  };
  const FOOT = {
    9: ["Compass: declination 3.5 deg east on 2025-12-09."],
    10: ["Clockwise: for a person at the dish facing the slots."],
  };

  test("two slots, its aim between them and its tilt", () => {
    expect(rows(book(), 0, false)).toEqual({
      1: ["Alignment"],
      2: ["deg", "97W", "113W", "aim"],
      3: ["azimuth, true", "190.0", "210.0", "200.1"],
      4: ["bearing, compass", "186.5", "206.5", "196.5"],
      5: ["beam elevation", "34.0", "32.0", "33.0"],
      6: ["rim angle", "11.0", "9.0", "10.0"],
      7: ["polarisation skew", "-5.0", "-12.0"],
      8: ["tilt, clockwise", "-4.2"],
      ...FOOT,
    });
    const aim = pointingPart(book(), 0).find(({ value }) => value === "aim")!;
    expect([aim.row, aim.column, aim.look]).toEqual([2, 8, CARD.head]);
  });

  test("one slot has neither aim nor tilt; one that Alignment lacks has no column", () => {
    const single = { 2: ["deg", "13E"], 3: ["azimuth, true", "120.0"], 7: ["polarisation skew", "30.0"] };
    const said = rows(book(), 1, false);
    expect(said).toMatchObject(single);
    expect(said[8]).toBeUndefined();
    expect(rows(book({ align_slot: ["", "97W", "13E", "", ""] }), 0, false)[2]).toEqual([
      "deg",
      "97W",
      "aim",
    ]);
  });

  const lines = (many: number) => ({ peaks_what: Array<string>(many + 2).fill("") });
  const boxes = [[6], [7], [8], [9]];

  test("four lines of its own in the record of peaking", () => {
    const parts = rows(book(lines(8)), 1);
    expect(parts).toMatchObject({
      11: ["Peaking by equal drops"],
      12: ["axis, step in deg", "here, dB", "plus", "minus"],
      17: ["Read dBµV or C/N in dB, never percent. Same step each side."],
      18: ["Turn = step/2 × (plus − minus) / (2·here − plus − minus),"],
      19: ["towards plus. Type into Alignment, lines 5 to 8."],
    });
    expect([13, 14, 15, 16].map((at) => parts[at]!.length)).toEqual(boxes.map(() => 4));
    const into = pointingPart(book(lines(8)), 1).filter((part) => part.into);
    expect(into.slice(0, 5).map((part) => [part.column, part.into])).toEqual([
      [5, { columns: [peaks.axis, peaks.step], row: 4 }],
      [6, { columns: [peaks.here], row: 4 }],
      [7, { columns: [peaks.plus], row: 4 }],
      [8, { columns: [peaks.minus], row: 4 }],
      [5, { columns: [peaks.axis, peaks.step], row: 5 }],
    ]);
  });

  test("a record that is too short: so many lines as there are, or what to do", () => {
    expect(rows(book(lines(6)), 1)[19]).toEqual(["towards plus. Type into Alignment, lines 5 to 6."]);
    const none = rows(book(lines(4)), 1);
    expect([none[11], none[12], none[13]]).toEqual([
      ["Peaking by equal drops"],
      ["Insert lines on Alignment and print again."],
      undefined,
    ]);
  });
});

describe("a head unit", () => {
  const HEADS: Columns = {
    commission_tolerance: [3],
    commission_volts_tolerance: [1],
    site_low: [950],
    site_high: [2150],
    heads_id: row("H1"),
    heads_type: row("16 bands"),
    heads_dish: row("d2 "),
    heads_supply: row("inserter"),
    heads_length: row(15),
    heads_cable_used: row("trunk"),
    heads_least: row(10.5),
    heads_check_power: row("ok"),
    heads_fed_tuners: row(8),
    heads_fed_bands: row(16),
    heads_fed_off: row(23.94),
    heads_fed_on: row(23),
    heads_fed_least: row(22),
    heads_fed_alone: row(21),
    heads_fed_amps: row(0.347),
    heads_fed_low_hot: row(80),
    heads_fed_low_cold: row(81),
    heads_fed_high_hot: row(76),
    heads_fed_high_cold: row(78),
    units_name: ["", "16 bands", "switch", ""],
    units_sits: ["", "dish", "fed", ""],
    units_aiming: ["", "", "read at its output.", ""],
    units_onward_low: ["", "", "", ""],
  };
  const cards = (columns: Columns = {}) => headCards(job({ ...HEADS, ...columns }));
  const said = (columns: Columns = {}) => half(cards(columns)[0]!);

  test("on its dish: what feeds it, what is predicted, and the order of work", () => {
    expect(said()).toEqual({
      0: "Head unit H1",
      1: "16 bands; 8 tuners on 16 user bands",
      2: "On dish D2 0.75 m, main roof, mast, 19E 13E",
      3: "Supply inserter; 15.0 m trunk",
      5: "volts, all off",
      6: "volts, all on",
      7: "volts, least in use",
      8: "amperes then",
      9: "dBµV at 950 MHz",
      10: "dBµV at 2150 MHz",
      11: "Minimum 10.5 V; predicted ok. Levels: cable's end",
      12: "While aiming: ask the maker how it is read.",
      13: "",
      14: "Order of work",
      15: "1 Fit and bond: local code, licensed practice.",
      16: "2 Give the head unit its minimum volts before aiming.",
      17: "3 First slot; tilt on the second; then equal drops.",
      18: "4 While aiming, one meter or one receiver commands it.",
      19: "5 Each run: lowest, highest frequency, and volts.",
      20: "6 Feed off before a connector is opened or made.",
      21: expect.stringMatching(/^Falls/) as unknown,
      22: expect.stringMatching(/^Bonding/) as unknown,
    });
    const figures = [4, 5, 6, 7, 8, 9, 10].map((at) =>
      cards()[0]!
        .filter((part) => part.row === at && part.column > 0 && part.column < 5)
        .map(({ value, into }) => value ?? into),
    );
    const { built_volts, built_amps, built_low, built_high } = estimate.heads;
    const into = (column: unknown) => ({ columns: [column], row: 0 });
    expect(figures).toEqual([
      ["predicted", "within ±", "measured"],
      ["23.9"],
      ["23.0"],
      ["22.0", "1.0", into(built_volts)],
      ["0.35", into(built_amps)],
      ["80.0 to 81.0", "3.0", into(built_low)],
      ["76.0 to 78.0", "3.0", into(built_high)],
    ]);
  });

  test("its job stands at the right edge, and nothing is written beside a dish that nobody knows", () => {
    const [card] = cards({ heads_dish: row("D7") });
    expect(card!.find(({ row: at, column }) => at === 0 && column > 0)).toEqual({
      row: 0,
      column: 8,
      value: "D-24",
      look: { ...CARD.quiet, align: "right" },
    });
    expect(half(card!, true)).toEqual({});
    expect([14, 21].map((at) => card!.find((part) => part.row === at)!.look)).toEqual([
      CARD.heading,
      CARD.quiet,
    ]);
  });

  test.each<[string, Columns, Record<number, string>]>([
    [
      "powered by receivers",
      { heads_supply: row(""), heads_fed_off: row(0) },
      { 3: "Powered by its receivers; 15.0 m trunk" },
    ],
    [
      "just so",
      { heads_supply: row(""), heads_fed_off: row(0.99) },
      { 3: "Powered by its receivers; 15.0 m trunk" },
    ],
    [
      "by what nobody knows",
      { heads_supply: row(""), heads_fed_off: row("") },
      { 3: "Powered by its receivers; 15.0 m trunk" },
    ],
    [
      "along its cables",
      { heads_supply: row(""), heads_fed_off: row(1) },
      { 3: "Powered along its cables; 15.0 m trunk" },
    ],
    ["without a lead", { heads_length: row("") }, { 3: "Supply inserter" }],
    ["with one outlet on alone", { heads_fed_outlet: row("G-08") }, { 7: "volts, G-08 on alone" }],
    [
      "without a verdict",
      { heads_check_power: row("") },
      { 11: "Minimum 10.5 V; predicted not found. Levels: cable's end" },
    ],
    ["on a dish that is not there", { heads_dish: row("D7") }, { 2: "On no dish of Dishes" }],
    ["on none of two dishes", { heads_dish: row("") }, { 2: "On no dish of Dishes" }],
    [
      "on the only dish",
      { heads_dish: row(""), aims_dish: ["", "D1", ""] },
      { 2: "On dish D1 1.10 m, 97W 113W" },
    ],
    [
      "a switch",
      { heads_type: row("switch") },
      { 2: "A switch: its feeders stand at the right.", 12: "While aiming: read at its output." },
    ],
  ])("%s", (_, columns, lines) => expect(said(columns)).toMatchObject(lines));

  test("two on one dish: only the first has its record of peaking", () => {
    const both = cards({
      heads_id: ["", "H1", "H2", ""],
      heads_dish: ["", "D1", "D1", ""],
      heads_type: ["", "16 bands", "16 bands", ""],
      peaks_what: ["", "", "", ""],
    });
    expect(both.map((card) => half(card, true)[11])).toEqual(["Peaking by equal drops", undefined]);
  });

  describe("that is a switch", () => {
    const NONE = {
      1: "Feeders that come",
      2: "none on Dishes",
      9: "Feeders that go on",
      10: "none",
      17: "Mark both ends of each feeder before it is connected.",
      18: "Where the dish points, its own card says.",
    };
    const right = (columns: Columns = {}) => half(cards({ heads_type: row("switch"), ...columns })[0]!, true);
    const feeders = (from: string, to: string, many: number): Columns => {
      const all = (value: BookResult): BookResult[] => ["", ...Array<BookResult>(many).fill(value), ""];
      return {
        feeders_from: all(from),
        feeders_to: all(to),
        feeders_check_cables: all(2),
        feeders_cable_used: all("drop"),
        feeders_length: all(9),
      };
    };
    const rows = (from: number, line: string) =>
      Object.fromEntries([0, 1, 2, 3, 4, 5].map((at) => [from + at, line]));

    test("without feeders", () => expect(right()).toEqual(NONE));
    test("with onward ports that nothing hangs on", () =>
      expect(right({ units_onward_low: ["", "", 2, ""] })).toEqual({
        ...NONE,
        10: "none: close each of its onward ports",
      }));
    test("with more than six that come", () =>
      expect(right(feeders("D1", "H1", 7))).toEqual({ ...NONE, ...rows(2, "2 from D1: drop, 9.0 m") }));
    test("with more than six that go on", () =>
      expect(right(feeders("H1", "H2", 7))).toEqual({ ...NONE, ...rows(10, "2 to H2: drop, 9.0 m") }));
  });

  describe("in the workbook of cards", () => {
    const sheets = (columns: Columns) => cardsOf(job(columns))?.sheets.map(({ name }) => name);
    test("a sheet of each kind that there is", () => {
      expect(sheets({ ...HEADS, rooms_outlet: row("G-01") })).toEqual([
        "Dish cards",
        "Head unit cards",
        "Outlet cards",
      ]);
      expect(sheets({ ...HEADS, dishes_feed: row("") })).toEqual(["Head unit cards"]);
      expect(sheets({ dishes_feed: row(""), rooms_outlet: row("G-01") })).toEqual(["Outlet cards"]);
    });
    test("a dish alone makes none", () => expect(sheets({})).toBeUndefined());
    test("it is of no template, and has its title", () =>
      expect(cardsOf(job(HEADS))).toMatchObject({
        template: "",
        templateVersion: "",
        title: "Cards for the crew",
        names: [],
      }));
  });
});
